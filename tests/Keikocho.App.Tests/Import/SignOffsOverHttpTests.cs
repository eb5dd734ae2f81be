using System.Text;
using Keikocho.App.Tests.Sightings;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Import;

/// <summary>A sign-off grid over HTTP, without a script.</summary>
public sealed class SignOffsOverHttpTests
{
    private const string Grid = "Larkwater signed off\nName;Belt;Oogoshi;Uki goshi;Kesa;Ukemi;Handstand\nWren Hollis;white;10/3/2026;✓;RA;✓;x\nNell Visitor;;✓;;;;\n";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Statement(98), Statement(99)]
    public async Task A_sign_off_grid_is_guessed_asked_about_saved_read_again_and_taken_back()
    {
        await using var club = await SpringClub.StartAsync();
        var wren = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        await club.PublishAsync();
        var walk = new ImportWalk(club.Browser);
        await walk.ReadAsync("signed.csv", Encoding.UTF8.GetBytes(Grid));
        Assert.Contains("What was signed off", walk.Words, StringComparison.Ordinal);
        Assert.Contains("was not read: falls are seen again on the mat", walk.Words, StringComparison.Ordinal);
        Assert.Contains("'Handstand' is no item of the syllabus", walk.Words, StringComparison.Ordinal);
        Assert.Contains("10 March 2026 with the day first, or 3 October 2026 with the month first", walk.Words, StringComparison.Ordinal);
        Assert.Contains("Say what a sign-off in this grid is worth", walk.Words, StringComparison.Ordinal);
        Assert.False(walk.CanSave);
        await walk.PostAsync("save");
        Assert.Contains("Nothing was saved", walk.Words, StringComparison.Ordinal);
        Assert.Equal(0, Sightings(club));

        await walk.PostAsync("keep", [("a:item:7", "="), ("t:item:7", "Cartwheel")]);
        Assert.Contains("'Cartwheel' is not an answer to this", walk.Words, StringComparison.Ordinal);
        await walk.PostAsync("proposed");
        await walk.SettleAsync(key => key switch { "tick:date" => "last", "order" => "day-first", "sign:ra" => "good", "item:5" => "item:kesa", _ => null });
        Assert.Contains("3 sightings are new.", walk.Words, StringComparison.Ordinal);
        Assert.Contains("set aside: you set it aside", walk.Words, StringComparison.Ordinal);
        await walk.PostAsync("save");
        Assert.Contains("3 sightings are new.", walk.Words, StringComparison.Ordinal);
        Assert.Contains("1 heading of falls was not read", walk.Words, StringComparison.Ordinal);
        Assert.Contains("To the students", walk.Words, StringComparison.Ordinal);
        Assert.Equal((3, 3), (Sightings(club), States(club, wren)));
        var first = walk.Address;

        await walk.ReadAsync("signed.csv", Encoding.UTF8.GetBytes(Grid));
        Assert.True(walk.CanSave, walk.Words);
        Assert.Contains("3 sightings are here already.", walk.Words, StringComparison.Ordinal);
        await walk.PostAsync("save");
        Assert.Equal((3, 3), (Sightings(club), States(club, wren)));

        await walk.GoAsync("/club/import");
        Assert.Contains("sign-offs", walk.Words, StringComparison.Ordinal);
        await walk.GoAsync(first);
        await walk.UndoAsync();
        Assert.Contains("3 marks were voided and stay to be seen.", walk.Words, StringComparison.Ordinal);
        Assert.Equal(0, States(club, wren));
    }

    [Fact]
    public async Task A_file_that_was_taken_for_a_grid_is_read_as_something_else_and_a_line_is_set_aside()
    {
        await using var club = await SpringClub.StartAsync();
        await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        await club.PublishAsync();
        var walk = new ImportWalk(club.Browser);
        await walk.ReadAsync("signed.csv", Encoding.UTF8.GetBytes(Grid));
        var token = System.Text.RegularExpressions.Regex.Match(walk.Html, "name=\"page-token\" value=\"([^\"]*)\"").Groups[1].Value;
        await walk.SendAsync(walk.Address + "/answers", [("page-token", token), ("aside", "line:3")]);
        Assert.Contains("Take back in", walk.Words, StringComparison.Ordinal);
        await walk.PostAsync("keep", [("kind", "roster")]);
        Assert.Contains("The children", walk.Words, StringComparison.Ordinal);
        await walk.PostAsync("keep", [("kind", "sign-offs")]);
        Assert.Contains("What was signed off", walk.Words, StringComparison.Ordinal);
        await walk.PostAsync("drop");
        Assert.Equal(0, Sightings(club));
    }

    private static int Sightings(SpringClub club)
    {
        using var db = club.Db();
        return db.Marks.Count(m => m.ItemId != null && m.Kind != MarkKind.Cleared);
    }

    private static int States(SpringClub club, Guid child)
    {
        using var db = club.Db();
        return db.ItemStates.Count(s => s.PersonId == child);
    }
}
