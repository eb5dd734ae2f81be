using System.Net;
using Keikocho.App.Tests.Papers;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Store.Keeping;
using Keikocho.Testing;

namespace Keikocho.App.Tests.ParentsPages;

/// <summary>What a family is told, and that it stays as it was told.</summary>
public sealed class ParentsPageTests
{
    private static readonly string[] Forbidden = ["fail", "score", "average", "chance", "likely", "percent", "ranking", " in 10"];

    [Fact]
    public async Task The_page_tells_facts_of_this_child_only()
    {
        await using var club = await ReadyAsync();
        var wren = await club.JoinOfTheExampleAsync();
        await club.JoinAsync("Anselm", "Bracken", SpringClub.FirstLesson);
        await club.SeenAsync(wren, "kesa", SeenWord.Good, (5, 5), (5, 12));
        await club.SeenAsync(wren, "belt", SeenWord.NotYet, (5, 12));
        Assert.Contains("Parent’s page and requirement sheet", await club.WordsAsync($"/students/{wren}"), StringComparison.Ordinal);
        var page = await club.WordsAsync($"/students/{wren}/parents-page");
        Has(page, "Parent’s page for the test on Saturday 30 May 2026", "After Thursday 14 May 2026", "Wren attended 12 of the 17 lessons held this term by 14 May 2026.",
            "What is secure", "Kesa-gatame", "What is not yet", "Tying your own belt", "What would change it", "Ruth Aldersey will gladly talk about it", "Keep as told");
        var (paper, answer) = await club.PdfAsync($"/papers/parents-page.pdf?child={wren}");
        Has(paper, "Wren: White, one red tip", "Wren attended 12 of the 17 lessons", "Larkwater Lock", "Page 1 of 1");
        Assert.Equal("inline; filename=\"parents-page-2026-05-30.pdf\"", answer.Content.Headers.ContentDisposition?.ToString());
        Assert.True(answer.Headers.CacheControl?.NoStore);
        foreach (var text in new[] { page, paper })
        {
            Assert.DoesNotContain("Anselm", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Bracken", text, StringComparison.Ordinal);
            Assert.All(Forbidden, word => Assert.DoesNotContain(word, text, StringComparison.OrdinalIgnoreCase));
        }
    }

    [Fact]
    public async Task A_page_kept_as_told_reads_and_prints_the_same_after_new_sightings()
    {
        await using var club = await ReadyAsync();
        var wren = await club.JoinOfTheExampleAsync();
        var page = $"/students/{wren}/parents-page";
        var test = club.Test(SpringClub.Test).ToString();
        Assert.Contains("Kept as told to the family of Wren.", await club.KeepAsync(wren, test), StringComparison.Ordinal);
        Guid kept;
        using (var db = club.Db())
        {
            var row = db.KeptAnswers.Single();
            Assert.Equal(("parents-page", wren, "parents-page 1", club.Head, 32), (row.Kind, row.SubjectId, row.SumVersion, row.ById, row.InputHash.Length));
            Assert.Equal(TrailKind.AnswerKept, db.Trail.OrderByDescending(t => t.Number).First().Kind);
            kept = row.Id;
        }

        var before = await club.WordsAsync($"{page}/{kept}");
        var printed = (await club.PdfAsync($"/papers/kept/{kept}")).Text;
        Has(before, "Told on 14 May 2026", "Kesa-gatame: not yet seen");
        // The same facts again are the same page.
        Assert.Contains("It is kept already.", await club.KeepAsync(wren, test), StringComparison.Ordinal);

        await club.SeenAsync(wren, "kesa", SeenWord.Good, (5, 5), (5, 12));
        club.Time.Set(new(2026, 5, 20, 9, 0, 0, TimeSpan.Zero));
        Assert.DoesNotContain("Kesa-gatame: not yet seen", await club.WordsAsync(page), StringComparison.Ordinal);
        Assert.Equal(before, await club.WordsAsync($"{page}/{kept}"));
        Assert.Equal(printed, (await club.PdfAsync($"/papers/kept/{kept}")).Text);
        Has(printed, "Printed 14 May 2026", "Kesa-gatame: not yet seen");

        Assert.Contains("Kept as told", await club.KeepAsync(wren, test), StringComparison.Ordinal);
        Has(await club.WordsAsync(page), "20 May 2026, 10:00 parent’s page for the test on 30 May 2026, by Ruth Aldersey", "14 May 2026, 21:00 parent’s page", "2, newest first");
    }

    [Fact]
    public async Task The_same_form_sent_twice_keeps_one_page_and_a_kept_page_is_on_no_other_childs_address()
    {
        await using var club = await ReadyAsync();
        var wren = await club.JoinOfTheExampleAsync();
        var other = await club.JoinAsync("Anselm", "Bracken", SpringClub.FirstLesson);
        (string, string)[] fields = [("test", club.Test(SpringClub.Test).ToString()), ("command", Guid.CreateVersion7().ToString())];
        foreach (var _ in new[] { 1, 2 })
        {
            using var answer = await club.PostAsync($"/students/{wren}/parents-page", $"/students/{wren}/parents-page/keep", fields);
            Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        }

        Guid kept;
        using (var db = club.Db()) kept = db.KeptAnswers.Single().Id;
        using var elsewhere = await club.Browser.GetAsync($"/students/{other}/parents-page/{kept}", SpringClub.Stop);
        Assert.Equal(HttpStatusCode.NotFound, elsewhere.StatusCode);
        using var nowhere = await club.Browser.GetAsync($"/papers/kept/{Guid.CreateVersion7()}", SpringClub.Stop);
        Assert.Equal(HttpStatusCode.NotFound, nowhere.StatusCode);
    }

    [Fact]
    public async Task Reading_and_printing_writes_nothing()
    {
        await using var club = await ReadyAsync();
        var wren = await club.JoinOfTheExampleAsync();
        await club.WordsAsync("/papers");
        var before = Trail(club);
        await club.WordsAsync($"/students/{wren}/parents-page");
        await club.PdfAsync($"/papers/parents-page.pdf?child={wren}");
        await club.PdfAsync($"/papers/sheet.pdf?child={wren}");
        Assert.Equal(before, Trail(club));
    }

    [Fact]
    [Statement(52)]
    public async Task A_term_that_was_missed_whole_names_its_unit_and_the_term_in_which_it_returns()
    {
        await using var club = await SpringClub.StartAsync("2026-09-10T20:00");
        await club.House.Calendar.AddTermAsync("Autumn 2026", new DateOnly(2026, 9, 1), new DateOnly(2026, 11, 28), club.Head, club.Tablet, SpringClub.Stop);
        await club.House.Calendar.AddTermAsync("Winter 2027", new DateOnly(2027, 1, 12), new DateOnly(2027, 3, 27), club.Head, club.Tablet, SpringClub.Stop);
        await club.House.Calendar.AddTestAsync(club.Programme, new DateOnly(2026, 11, 28), club.Head, club.Tablet, SpringClub.Stop);
        await club.PublishAsync(SheetDesk.Edition);
        foreach (var (term, unit) in new[] { ("Spring 2026", "hips"), ("Summer 2026", "sweeps"), ("Autumn 2026", "hips"), ("Winter 2027", "sweeps") })
            await club.SetUnitAsync(term, unit);
        var wren = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        var there = await club.JoinAsync("Anselm", "Bracken", SpringClub.FirstLesson);
        await club.MarkAsync(there, new DateOnly(2026, 6, 4), MarkKind.Present);
        await club.MarkAsync(there, new DateOnly(2026, 9, 8), MarkKind.Present);
        Has(await club.WordsAsync($"/students/{wren}/parents-page"), "Taught while away", "Sweeps, taught in Summer 2026: not met yet; it comes back in Winter 2027.");
        Assert.DoesNotContain("Taught while away", await club.WordsAsync($"/students/{there}/parents-page"), StringComparison.Ordinal);
        // One lesson of that term is enough to have met it.
        await club.MarkAsync(wren, new DateOnly(2026, 6, 9), MarkKind.Present);
        Assert.DoesNotContain("Taught while away", await club.WordsAsync($"/students/{wren}/parents-page"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_anything_to_tell_the_page_says_why_and_keeps_nothing()
    {
        await using var club = await SpringClub.StartAsync();
        var wren = await club.JoinOfTheExampleAsync();
        Has(await club.WordsAsync($"/students/{wren}/parents-page"), "Juniors have no syllabus that holds on 30 May 2026", "Nothing about Wren was kept yet.");
        Assert.Contains("Nothing was kept.", await club.KeepAsync(wren, club.Test(SpringClub.Test).ToString()), StringComparison.Ordinal);
        using var db = club.Db();
        Assert.False(db.KeptAnswers.Any());
    }

    private static async Task<SpringClub> ReadyAsync()
    {
        var club = await SpringClub.StartAsync();
        await club.PublishAsync(SheetDesk.Edition);
        await club.SetUnitAsync("Spring 2026", "hips");
        return club;
    }

    private static int Trail(SpringClub club)
    {
        using var db = club.Db();
        return db.Trail.Count() + db.KeptAnswers.Count();
    }

    private static void Has(string text, params string[] all) => Assert.All(all, words => Assert.Contains(words, text, StringComparison.Ordinal));
}

file static class Keeping
{
    public static async Task<string> KeepAsync(this SpringClub club, Guid child, string test)
    {
        // A page without anything to tell has no form; its token is that of any page.
        using var answer = await club.PostAsync($"/students/{child}", $"/students/{child}/parents-page/keep", ("test", test), ("command", Guid.CreateVersion7().ToString()));
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        return await club.WordsAsync(answer.Headers.Location!.ToString());
    }
}
