using System.Net;
using Keikocho.App.Tests.Sightings;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Syllabus;
using Keikocho.Testing;
using UglyToad.PdfPig;

namespace Keikocho.App.Tests.PromotionTests;

/// <summary>
/// A revision in mid-year: edition 2 takes Uki-goshi out of the first rank, puts Tai-otoshi and Seoi-nage in, and asks a fall sideways at once.
/// Edition 1 may be asked at tests before 25 July; the test is on 30 May.
/// </summary>
public sealed class NearestListTests
{
    private const string ByOlder = "By the older list, edition 1, 2 items are left, by the new one, edition 2, 3: edition 1 is asked, and may be asked at tests before 25 July 2026; from that day on edition 2 holds for everybody.";
    private const string AtOnce = "For safety Fall sideways of edition 2 is asked at once.";

    [Fact, Statement(82)]
    public async Task A_child_needs_the_nearer_complete_set_with_what_is_asked_at_once_and_every_page_says_so()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var ada = await club.AlwaysThereAsync("Ada");
        await club.AllButOnceAsync(ada);
        await ReviseAsync(club, SpringClub.NextTest);
        foreach (var address in new[] { $"/students/{ada}", $"{club.Address()}/children/{ada:D}", $"/students/{ada}/parents-page" })
        {
            var words = await club.WordsAsync(address);
            Assert.True(words.Contains(ByOlder, StringComparison.Ordinal), $"{address}: {words}");
            Assert.Contains(AtOnce, words, StringComparison.Ordinal);
            Assert.Contains("Fall sideways", words, StringComparison.Ordinal);
            Assert.Contains("Uki-goshi", words, StringComparison.Ordinal);
            // On the child's own page it can be chosen as seen, whatever is asked.
            Assert.Equal(address == $"/students/{ada}", words.Contains("Tai-otoshi", StringComparison.Ordinal));
        }

        Assert.Contains("By edition 1", await club.WordsAsync($"/students/{ada}"), StringComparison.Ordinal);
        Assert.DoesNotContain("The list has changed", await club.WordsAsync($"/students/{ada}/parents-page?test={TestOn(club, SpringClub.NextTest):D}"), StringComparison.Ordinal);
        var sheet = await PdfAsync(club, $"/papers/sheet.pdf?test={club.TestId():D}&child={ada:D}");
        foreach (var said in new[] { "edition 1", "Fall sideways", "Uki-goshi", "By the older list" }) Assert.Contains(said, sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("Tai-otoshi", sheet, StringComparison.Ordinal);
    }

    [Fact, Statement(82)]
    public async Task A_tie_goes_to_the_new_list_and_from_the_changeover_on_it_holds_for_everybody()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var bram = await club.AlwaysThereAsync("Bram");
        await club.AllButOnceAsync(bram);
        await ReviseAsync(club, SpringClub.NextTest);
        foreach (var day in new[] { 5, 12 }) await club.SeenAsync(bram, 5, day, SeenWord.Good, "tai-otoshi");
        var words = await club.WordsAsync($"{club.Address()}/children/{bram:D}");
        Assert.Contains("By the older list, edition 1, 2 items are left, by the new one, edition 2, 2: as many by both, so edition 2 is asked.", words, StringComparison.Ordinal);
        Assert.DoesNotContain("Uki-goshi", words, StringComparison.Ordinal);
        var later = await club.WordsAsync($"/promotion-tests/{TestOn(club, SpringClub.NextTest):D}/children/{bram:D}");
        Assert.DoesNotContain("older list", later, StringComparison.Ordinal);
        Assert.Contains("Seoi-nage", later, StringComparison.Ordinal);
        Assert.Contains("By edition 2", later, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_changeover_day_the_edition_of_the_test_day_holds_for_everybody()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var ada = await club.AlwaysThereAsync("Ada");
        await club.AllButOnceAsync(ada);
        await ReviseAsync(club, null);
        var words = await club.WordsAsync($"/students/{ada}");
        Assert.DoesNotContain("older list", words, StringComparison.Ordinal);
        Assert.Contains("Tai-otoshi", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_list_to_come_asks_or_takes_out_at_once_holds_from_its_publication()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var ada = await club.AlwaysThereAsync("Ada");
        await club.AllButOnceAsync(ada);
        await ReviseAsync(club, null, new DateOnly(2026, 6, 2), ["uki-goshi"]);
        var words = await club.WordsAsync($"{club.Address()}/children/{ada:D}");
        foreach (var said in new[]
        {
            "edition 2, the new list, holds from 2 June 2026 on, after the test on 30 May 2026: edition 1, the older list, is asked.",
            AtOnce,
            "For safety Uki-goshi is asked no more by either edition; what was secured stays in the history.",
        })
            Assert.True(words.Contains(said, StringComparison.Ordinal), $"{said}\n{words}");
        Assert.DoesNotContain("Tai-otoshi", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_clock_goes_by_the_list_that_the_child_is_asked_by()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync(new Minima(18));
        var ada = await club.AlwaysThereAsync("Ada");
        await club.AllButOnceAsync(ada);
        await ReviseAsync(club, SpringClub.NextTest, minima: new Minima(25));
        var words = await club.WordsAsync($"/students/{ada}");
        Assert.Contains("17 of 18 lessons attended", words, StringComparison.Ordinal);
        Assert.Contains("The rule asks for 18 lessons, 17 attended: 1 of the 4 lessons left", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_draft_page_asks_for_the_changeover_day_and_refuses_one_that_cannot_be()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var draft = await BeginAsync(club, null, null);
        var page = $"/syllabus/draft?programme={club.Programme}";
        Assert.Contains("At tests before this day a child is asked by the list it is nearer to, edition 1 or this one", await club.WordsAsync(page), StringComparison.Ordinal);
        (string, string)[] Form(string changeover) =>
        [
            ("programme", club.Programme.ToString("D")), ("draft", draft.ToString("D")), ("step", "1"), ("publish-name", "edition 2"),
            ("publish-from", "2026-06-02"), ("publish-changeover", changeover),
        ];
        Assert.Contains("2 June 2026 is not after the day from which it holds", await club.RefusedAsync(page, "/syllabus/draft/publish", Form("2026-06-02")), StringComparison.Ordinal);
        Assert.Contains(
            "It holds from 2 June 2026 on. Tests before 25 July 2026 go by the list that a child is nearer to.",
            await club.TakenAsync(page, "/syllabus/draft/publish", Form("2026-07-25")), StringComparison.Ordinal);
        Assert.Contains("the one before it may be asked at tests before 25 July 2026", await club.WordsAsync("/syllabus"), StringComparison.Ordinal);
    }

    private static async Task ReviseAsync(SpringClub club, DateOnly? changeover, DateOnly? from = null, IReadOnlyList<string>? gone = null, Minima? minima = null)
    {
        var draft = await BeginAsync(club, gone, minima);
        var outcome = await club.House.Syllabus.PublishAsync(draft, 1, "edition 2", from ?? SpringClub.FirstLesson, club.Today, club.Head, club.Tablet, SpringClub.Stop, changeover);
        Assert.True(outcome is PublishOutcome.Published, (outcome as PublishOutcome.Refused)?.Sentences[0]);
    }

    private static async Task<Guid> BeginAsync(SpringClub club, IReadOnlyList<string>? gone, Minima? minima)
    {
        Edition first;
        using (var db = club.Db()) first = EditionDocument.Read(db.Editions.Single(e => e.PublishedAt != null).Document);
        var edition = first with
        {
            Name = "edition 2",
            From = null,
            Ranks =
            [
                first.Ranks[0],
                first.Ranks[1] with
                {
                    Minima = minima ?? first.Ranks[1].Minima,
                    Requirements =
                    [
                        new Requirement("throws", new Ask.AllOf(["o-goshi", "tai-otoshi", "seoi"])), .. first.Ranks[1].Requirements.Skip(1),
                        new Requirement("fall-sideways", new Ask.AllOf(["fall-side"]), Critical: true, AtOnce: true),
                    ],
                },
                first.Ranks[2],
            ],
            Items =
            [
                .. first.Items,
                new Item("tai-otoshi", ItemKind.Throw, "Tai-otoshi", "Tai-otoshi"),
                new Item("seoi", ItemKind.Throw, "Seoi-nage", "Seoi-nage"),
                new Item("fall-side", ItemKind.Fall, "Fall sideways", Fall: new FallForm(Core.Safety.FallDirection.Side, true, 3)),
            ],
            GoneAtOnce = gone,
        };
        return Assert.IsType<StartOutcome.Begun>(await club.House.Syllabus.StartAsync(club.Programme, edition, "Begun.", club.Head, club.Tablet, SpringClub.Stop)).Draft;
    }

    private static Guid TestOn(SpringClub club, DateOnly day)
    {
        using var db = club.Db();
        return db.PromotionTests.Single(t => t.Date == day).Id;
    }

    private static async Task<string> PdfAsync(SpringClub club, string address)
    {
        using var answer = await club.Browser.GetAsync(new Uri(address, UriKind.Relative), SpringClub.Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        using var pdf = PdfDocument.Open(await answer.Content.ReadAsByteArrayAsync(SpringClub.Stop));
        return string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
    }
}
