using System.Collections.Frozen;
using System.Net;
using Keikocho.App.Sightings;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Book;
using Keikocho.Store.Marks;

namespace Keikocho.App.Tests.Sightings;

/// <summary>The evening's grids: what they show, take, refuse and undo.</summary>
public sealed class SightingsTests
{
    private static readonly DateOnly Evening = new(2026, 5, 14);

    [Fact]
    public async Task All_good_but_fills_those_who_were_here_and_never_a_critical_item()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var (wren, bram, ada) = (await HereAsync(club, "Wren"), await HereAsync(club, "Bram"), await HereAsync(club, "Ada"));
        var away = await club.JoinAsync("Tove", "Hollis", SpringClub.FirstLesson);
        var lesson = club.Lesson(5, 14).Id;
        var page = await club.TextAsync("/sightings");
        Assert.Contains("O-goshi", page, StringComparison.Ordinal);
        Assert.Contains("name=\"all\" value=\"o-goshi\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("name=\"all\" value=\"stop\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Fall backward", page, StringComparison.Ordinal);
        Assert.Contains("Not here that evening: Tove", SpringClub.Plain(page), StringComparison.Ordinal);
        var goshi = club.Item("o-goshi");
        (string, string)[] form =
        [
            ("lesson", lesson.ToString("D")), ("command", Guid.CreateVersion7().ToString("D")), ("from", ""),
            ("item", "o-goshi"), ("item", "uki-goshi"), ("item", "stop"), ("all", "o-goshi"),
            (SightingsForm.Cell(bram, goshi), "prompted"), (SightingsForm.Cell(ada, goshi), "nothing"), (SightingsForm.Cell(wren, goshi), ""),
        ];
        var said = await club.TakenAsync("/sightings", "/sightings/set", form);
        Assert.Contains("Stored: 2 marks.", said, StringComparison.Ordinal);
        Assert.Contains("It stands so already", await club.TakenAsync("/sightings", "/sightings/set", form), StringComparison.Ordinal);
        Assert.Equal([(wren, 1), (bram, 2)], Marks(club).OrderBy(m => m.Code).Select(m => (m.PersonId, m.Code & MarkCode.SeenMask)));
        Assert.All(Marks(club), m => Assert.Equal((club.Head, lesson), (m.ById, m.LessonId)));
        Assert.DoesNotContain(Marks(club), m => m.PersonId == away);
        Assert.Contains("Taken back: the last entry, for 2 children.", await club.TakenAsync("/sightings", "/sightings/undo", ("lesson", lesson.ToString("D")), ("command", Guid.CreateVersion7().ToString("D")), ("back", "/sightings")), StringComparison.Ordinal);
        using var reading = club.Reading();
        Assert.Empty(EvidenceReader.Of(reading, [wren], null, Evening)[wren].Items);
    }

    // Away for 510 days, then one clean fall: with the days before the last 500 cut off, no absence would be seen and the gate would open.
    [Fact]
    public async Task A_gate_is_not_reckoned_from_days_on_the_mat_that_were_cut()
    {
        await using var club = await SpringClub.StartAsync();
        using var reading = club.Reading();
        var book = BookStore.Read(reading, Evening.AddDays(-550));
        var fall = new FallMark(Evening, FallDirection.Back, FallSide.None, 3, true);
        var back = new ChildEvidence(
            Guid.CreateVersion7(), FrozenDictionary<Guid, IReadOnlyList<SeenEvening>>.Empty,
            [fall with { On = Evening.AddDays(-515) }, fall with { On = Evening.AddDays(-510) }, fall], [Evening.AddDays(-515), Evening.AddDays(-510), Evening], [], [], []);
        // Lying or sitting one fall shows it again; every stage above asks one stage lower first.
        Assert.Equal(1, ChildGates.Of(book, back, Evening).Of(new FallWay(FallDirection.Back, FallSide.None)).OpenTo);
        Assert.Throws<ArgumentException>(() => ChildGates.Of(book, back with { OnTheMat = [Evening], MatCutAt = Evening.AddDays(-500) }, Evening));
    }

    [Fact]
    public async Task What_the_page_did_not_offer_stores_nothing_at_all()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var wren = await HereAsync(club, "Wren");
        var away = await club.JoinAsync("Tove", "Hollis", SpringClub.FirstLesson);
        var (goshi, stop, fall) = (club.Item("o-goshi"), club.Item("stop"), club.Item("fall-back"));
        var good = (SightingsForm.Cell(wren, goshi), "good");
        foreach (var bad in new[]
        {
            (SightingsForm.Cell(wren, stop), "splendid"),
            (SightingsForm.Cell(away, goshi), "good"),
            (SightingsForm.Cell(wren, fall), "good"),
            (SightingsForm.Cell(wren, Guid.CreateVersion7()), "good"),
            ("s.nobody", "good"),
            ("all", "stop"),
            ("all", "fall-back"),
        })
        {
            using var answer = await club.PostAsync("/sightings", "/sightings/set", ("lesson", club.Lesson(5, 14).Id.ToString("D")), ("command", Guid.CreateVersion7().ToString("D")), ("item", "o-goshi"), ("item", "stop"), good, bad);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        }

        foreach (var lesson in new[] { club.Lesson(5, 19).Id, club.Lesson(5, 7).Id, Guid.CreateVersion7() })
            Assert.Contains("Not stored.", await club.TakenAsync("/sightings", "/sightings/set", ("lesson", lesson.ToString("D")), ("command", Guid.CreateVersion7().ToString("D")), ("item", "o-goshi"), good), StringComparison.Ordinal);
        foreach (var (way, stage, mark) in new[] { ("front", "6", "clean"), ("sideways", "3", "clean"), ("back", "9", "clean"), ("back", "3", "good") })
        {
            using var answer = await club.PostAsync("/sightings/falls", "/sightings/falls/set", ("lesson", club.Lesson(5, 14).Id.ToString("D")), ("command", Guid.CreateVersion7().ToString("D")), ("way", way), ("stage", stage), (SightingsForm.Fall(wren), mark));
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        }

        Assert.Empty(Marks(club));
    }

    [Fact]
    public async Task Falls_of_an_evening_are_stored_shown_and_shut_the_gate()
    {
        await using var club = await SpringClub.StartAsync();
        var (wren, bram) = (await HereAsync(club, "Wren"), await HereAsync(club, "Bram"));
        (string, string)[] head = [("lesson", club.Lesson(5, 14).Id.ToString("D")), ("way", "back"), ("stage", "3")];
        var said = await club.TakenAsync("/sightings/falls", "/sightings/falls/set", [.. head, ("command", Guid.CreateVersion7().ToString("D")), (SightingsForm.Fall(wren), "clean"), (SightingsForm.Fall(bram), "touched")]);
        Assert.Contains("Stored: 2 marks.", said, StringComparison.Ordinal);
        Assert.Contains("Bram head touched", said, StringComparison.Ordinal);
        Assert.Contains("Wren clean", said, StringComparison.Ordinal);
        await club.TakenAsync("/sightings/falls", "/sightings/falls/set", [.. head, ("command", Guid.CreateVersion7().ToString("D")), (SightingsForm.Fall(bram), "clean")]);
        Assert.Contains("Bram head touched", await club.WordsAsync(SightingsAddress.OfFalls(club.Lesson(5, 14).Id, Core.Safety.FallWay.All[0], 3)), StringComparison.Ordinal);
        var tonight = await club.WordsAsync($"/tonight?lesson={club.Lesson(5, 14).Id}");
        Assert.Contains("Throw tonight, are not thrown.", tonight, StringComparison.Ordinal);
        Assert.DoesNotContain("head touched", tonight, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_club_without_a_syllabus_is_told_and_nobody_in_the_future_is_marked()
    {
        await using var club = await SpringClub.StartAsync();
        await HereAsync(club, "Wren");
        Assert.Contains("No syllabus yet", await club.WordsAsync("/sightings"), StringComparison.Ordinal);
        using var answer = await club.Browser.GetAsync($"/sightings?lesson={club.Lesson(5, 19).Id}", SpringClub.Stop);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task Each_end_has_its_own_grid_with_what_it_is_going_for_and_words_stand_apart()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var (wren, bram) = (await HereAsync(club, "Wren"), await HereAsync(club, "Bram"));
        await club.House.People.CrossAsync(bram, club.Programme, Core.Kernel.MatEnd.Main, Evening, null, club.Head, club.Tablet, SpringClub.Stop);
        await club.House.Writer.RunAsync(session =>
        {
            session.Db.Awards.Add(new Store.Promotion.AwardRow
            {
                Club = session.Club,
                Id = session.NewId(),
                PersonId = bram,
                LadderId = club.Ladder,
                RankId = club.Ranks[1].Id,
                On = new DateOnly(2026, 5, 5),
                Source = Store.Promotion.AwardSource.Promoted,
                MadeAt = session.Now,
            });
            session.Db.Clubs.Single().PeopleRevision++;
            session.Db.SaveChanges();
            return true;
        }, SpringClub.Stop);
        var beginners = await club.TextAsync("/sightings");
        Assert.Contains($"{wren:N}.{club.Item("o-goshi"):N}", beginners, StringComparison.Ordinal);
        Assert.Contains($"{club.Item("uki-goshi"):N}", beginners, StringComparison.Ordinal);
        Assert.DoesNotContain($"{bram:N}", beginners, StringComparison.Ordinal);
        // The first course goes first, then the rest of the sheet; a hold of another rank is not asked.
        Assert.True(beginners.IndexOf($"{club.Item("o-goshi"):N}", StringComparison.Ordinal) < beginners.IndexOf($"{club.Item("uki-goshi"):N}", StringComparison.Ordinal));
        Assert.DoesNotContain($"{club.Item("kesa"):N}", beginners, StringComparison.Ordinal);
        Assert.DoesNotContain($"{club.Item("stop"):N}", beginners, StringComparison.Ordinal);
        var main = await club.TextAsync("/sightings?end=main");
        Assert.Contains($"{bram:N}.{club.Item("kesa"):N}", main, StringComparison.Ordinal);
        Assert.DoesNotContain($"{wren:N}", main, StringComparison.Ordinal);
        var words = await club.TextAsync("/sightings/words");
        Assert.Contains($"{wren:N}.{club.Item("stop"):N}", words, StringComparison.Ordinal);
        Assert.Contains(">with help<", words, StringComparison.Ordinal);
        Assert.DoesNotContain($"{club.Item("o-goshi"):N}", words, StringComparison.Ordinal);
        (string, string)[] form = [("lesson", club.Lesson(5, 14).Id.ToString("D")), ("end", "beginners"), ("words", "yes"), ("from", ""), ("item", "stop")];
        var said = await club.TakenAsync("/sightings/words", "/sightings/set", [.. form, ("command", Guid.CreateVersion7().ToString("D")), (SightingsForm.Cell(wren, club.Item("stop")), "not-yet")]);
        Assert.Contains("Stored: 1 mark.", said, StringComparison.Ordinal);
        Assert.Contains("Words and questions", said, StringComparison.Ordinal);
        var mark = Assert.Single(Marks(club));
        Assert.Equal((MarkKind.Words, wren), (mark.Kind, mark.PersonId));
        // A cell of the other end or of the other grid is nothing that this form offered.
        foreach (var bad in new[] { SightingsForm.Cell(bram, club.Item("stop")), SightingsForm.Cell(wren, club.Item("o-goshi")) })
        {
            using var answer = await club.PostAsync("/sightings/words", "/sightings/set", [.. form, ("command", Guid.CreateVersion7().ToString("D")), (bad, "good")]);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        }
    }

    private static async Task<Guid> HereAsync(SpringClub club, string given)
    {
        var child = await club.JoinAsync(given, "Hollis", SpringClub.FirstLesson);
        await club.MarkAsync(child, Evening, MarkKind.Present);
        return child;
    }

    private static List<MarkRow> Marks(SpringClub club)
    {
        using var db = club.Db();
        return [.. db.Marks.Where(m => m.ItemId != null)];
    }
}
