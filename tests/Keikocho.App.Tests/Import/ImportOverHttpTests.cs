using System.Net;
using System.Text;
using Keikocho.App.Club;
using Keikocho.App.Tests.Shell;
using Keikocho.Testing;
using Microsoft.Extensions.DependencyInjection;

namespace Keikocho.App.Tests.Import;

/// <summary>Reading in over HTTP, without a script.</summary>
public sealed class ImportOverHttpTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Statement(98), Statement(99)]
    public async Task A_messy_roster_is_asked_about_settled_saved_read_again_and_taken_back()
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        var walk = new ImportWalk(browser);
        var before = Counts(app);

        await walk.ReadFixtureAsync("messy-roster.xlsx");
        // Day and month are asked for with one of the file's own dates read both ways, before anything about single lines.
        Assert.Contains("4 November 2019 with the day first, or 11 April 2019 with the month first", walk.Words, StringComparison.Ordinal);
        Assert.False(walk.CanSave);
        Assert.DoesNotContain("asthma", walk.Html, StringComparison.Ordinal);
        Assert.Contains("medical (set aside)", walk.Words, StringComparison.Ordinal);
        await walk.PostAsync("save");
        Assert.Contains("Nothing was saved", walk.Words, StringComparison.Ordinal);
        Assert.Equal(before, Counts(app));

        await walk.PostAsync("keep", [("a:order:4", "day-first"), ("t:order:4", "")]);
        await walk.PostAsync("proposed");
        Assert.Contains("proposed answers were taken", walk.Words, StringComparison.Ordinal);
        // What was typed and is no answer stands there again.
        var date = walk.Open().First(q => q.Key.EndsWith(":birth", StringComparison.Ordinal)).Key;
        await walk.PostAsync("keep", [("a:" + date, "="), ("t:" + date, "31 June")]);
        Assert.Contains("value=\"31 June\"", walk.Html, StringComparison.Ordinal);
        Assert.Contains("'31 June' is not an answer to this", walk.Words, StringComparison.Ordinal);
        await walk.PostAsync("keep", [("a:" + date, "="), ("t:" + date, "2015-03-01")]);
        await walk.SettleAsync();
        Assert.Equal(before, Counts(app));
        Assert.Contains("61 children are new", walk.Words, StringComparison.Ordinal);

        await walk.PostAsync("save");
        Assert.Contains("61 children are new and stand at the end of the register", walk.Words, StringComparison.Ordinal);
        var saved = Counts(app);
        Assert.Equal(before.People + 61, saved.People);
        var first = walk.Address;

        await walk.ReadFixtureAsync("messy-roster.xlsx");
        await walk.SettleAsync();
        Assert.DoesNotContain("are new", walk.Words, StringComparison.Ordinal);
        await walk.PostAsync("save");
        Assert.Contains("here already", walk.Words, StringComparison.Ordinal);
        Assert.Equal(saved, Counts(app));

        await walk.GoAsync(first);
        await walk.UndoAsync();
        Assert.Contains("61 children whom it had added were taken out", walk.Words, StringComparison.Ordinal);
        Assert.Equal(before, Counts(app));
        await walk.GoAsync("/club/import");
        Assert.Contains("taken back", walk.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_messy_register_is_guessed_to_be_one_asked_about_saved_and_taken_back()
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        var walk = new ImportWalk(browser);
        await walk.ReadFixtureAsync("messy-register.xlsx");
        Assert.Contains("The register so far", walk.Words, StringComparison.Ordinal);
        Assert.Contains("was the hall closed, or was the register forgotten?", walk.Words, StringComparison.Ordinal);
        var before = Counts(app);
        await walk.SettleAsync();
        await walk.PostAsync("save");
        Assert.Contains("marks are new", walk.Words, StringComparison.Ordinal);
        Assert.True(Counts(app).Marks > before.Marks + 800);
        await walk.UndoAsync();
        Assert.Contains("taken out", walk.Words, StringComparison.Ordinal);
        Assert.Equal(before.People, Counts(app).People);
    }

    [Fact]
    public async Task Columns_are_changed_lines_are_set_aside_and_the_file_is_dropped()
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        var walk = new ImportWalk(browser);
        await walk.ReadAsync("list.csv", Encoding.UTF8.GetBytes("First name,Surname,Locker\nAda,Brook,Addie\n\"=HYPERLINK(\"\"http://example.org\"\")\",Cole,Bo\n"));
        await walk.PostAsync("keep", [("c:3", "CalledName"), ("was-c:3", "NotRead")]);
        Assert.Contains("you said so", walk.Words, StringComparison.Ordinal);
        await walk.SendAsync(walk.Address + "/answers", [("page-token", Between(walk.Html, "name=\"page-token\" value=\"")), ("aside", "row:2")]);
        Assert.Contains("set aside: you set it aside", walk.Words, StringComparison.Ordinal);
        await walk.SettleAsync();
        await walk.PostAsync("drop");
        Assert.Contains("Nothing of it is kept", walk.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("accents.pdf", "is a PDF document")]
    [InlineData("accents.xls", "an old or protected office file")]
    public async Task A_file_that_cannot_be_read_says_so_in_one_sentence(string fixture, string words)
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        var walk = new ImportWalk(browser);
        await walk.ReadFixtureAsync(fixture);
        Assert.Contains(words, walk.Words, StringComparison.Ordinal);
        Assert.Contains("Choose a file", walk.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Fifty_megabytes_are_taken_and_refused_in_one_sentence_and_more_is_never_a_broken_connection()
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        var walk = new ImportWalk(browser);
        var line = Encoding.ASCII.GetBytes("a,b,c,d,e,f,g,h\n");
        var bytes = new byte[50 << 20];
        for (var i = 0; i + line.Length <= bytes.Length; i += line.Length) line.CopyTo(bytes, i);
        bytes.AsSpan(bytes.Length / line.Length * line.Length).Fill((byte)'x');
        await walk.ReadAsync("large.csv", bytes);
        Assert.Contains("The file could not be read.", walk.Words, StringComparison.Ordinal);
        Assert.Contains("'large.csv'", walk.Words, StringComparison.Ordinal);

        using var answer = await walk.SendFileAsync("huge.csv", new byte[90 << 20]);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        var said = await answer.Content.ReadAsStringAsync(Stop);
        Assert.Contains("up to 64 MB are read", said, StringComparison.Ordinal);
        Assert.True(answer.Headers.CacheControl?.NoStore);
    }

    [Fact]
    public async Task Without_a_file_the_page_comes_back_and_a_reading_that_is_not_there_is_not_found()
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        using var answer = await new ImportWalk(browser).SendFileAsync("none.csv", []);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("No file was chosen", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        using var nothing = await browser.GetAsync("/club/import/019cb2a0-0000-7000-8000-000000000001", Stop);
        Assert.Equal(HttpStatusCode.NotFound, nothing.StatusCode);
    }

    [Fact]
    public async Task Five_thousand_rows_make_a_page_of_bounded_size()
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        var walk = new ImportWalk(browser);
        await walk.ReadAsync("many.csv", Many.Roster(5_000));
        await walk.SettleAsync();
        Assert.Contains("Page 1 of 100", walk.Words, StringComparison.Ordinal);
        Assert.True(walk.Html.Length < 150_000, $"{walk.Html.Length} characters");
        await walk.GoAsync(walk.Address + "?lines=100");
        Assert.Contains("Lines 4951 to 5000", walk.Words, StringComparison.Ordinal);
    }

    private static (int People, int Enrolments, int Contacts, int Marks) Counts(RunningApp app)
    {
        using var db = app.App.Services.GetRequiredService<ClubHouse>().Engine.OpenDb();
        return (db.People.Count(), db.Enrolments.Count(), db.Contacts.Count(), db.Marks.Count());
    }

    private static string Between(string html, string start)
    {
        var from = html.IndexOf(start, StringComparison.Ordinal) + start.Length;
        return html[from..html.IndexOf('"', from)];
    }
}
