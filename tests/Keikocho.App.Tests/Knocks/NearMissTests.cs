using System.Net;
using Keikocho.App.Tests.Students;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;

namespace Keikocho.App.Tests.Knocks;

public sealed class NearMissTests
{
    private const string Words = "Two ran backwards into the radiator in tag; the line is now 2 m in.";

    [Fact]
    public async Task A_near_miss_needs_no_child_is_shown_with_its_evening_and_counted_apart_by_activity()
    {
        await using var club = await SpringClub.StartAsync();
        await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        var lesson = club.Lesson(5, 14).Id;
        var command = Guid.CreateVersion7().ToString("D");
        for (var twice = 0; twice < 2; twice++)
        {
            using var stored = await club.PostAsync("/knocks", "/knocks/near-miss", ("lesson", lesson.ToString()), ("command", command), ("nearOn", "2026-05-14"), ("nearAt", "17:50"), ("nearActivity", "2"), ("nearWords", Words));
            Assert.Equal(HttpStatusCode.SeeOther, stored.StatusCode);
            Assert.Equal($"/knocks?lesson={lesson:D}#near", stored.Headers.Location!.ToString());
        }

        var page = await club.TextAsync($"/knocks?lesson={lesson}");
        Assert.Contains(Words, page, StringComparison.Ordinal);
        Assert.Contains("14 May 2026, about 17:50, game, written by Ruth Aldersey", page, StringComparison.Ordinal);
        Assert.DoesNotContain(Words, await club.TextAsync($"/knocks?lesson={club.Lesson(5, 12).Id}"), StringComparison.Ordinal);
        var close = await club.TextAsync($"/close?lesson={lesson}");
        Assert.Contains("game: 0 knocks; how many children were there for it is not written down: too few to say. 1 near miss besides.", close, StringComparison.Ordinal);
        using var db = club.Db();
        Assert.Equal(Words, Seal.Open(Assert.Single(db.NearMisses).Words));
        Assert.Single(db.Trail.Where(t => t.Kind == TrailKind.NearMissEntered));
        Assert.Empty(db.Knocks);
        Assert.Empty(db.StandDowns);
    }

    [Fact]
    public async Task What_cannot_be_taken_comes_back_with_what_was_typed()
    {
        await using var club = await SpringClub.StartAsync();
        using var refused = await club.PostAsync("/knocks", "/knocks/near-miss", ("nearOn", "2026-05-15"), ("nearAt", "late"), ("nearActivity", "99"), ("nearWords", ""));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        var text = WebUtility.HtmlDecode(await refused.Content.ReadAsStringAsync(SpringClub.Stop));
        foreach (var said in new[] { "15 May 2026 is still to come", "“late” is no time", "Choose what was going on", "Write what happened, without a name" })
            Assert.Contains(said, text, StringComparison.Ordinal);
        Assert.Contains("value=\"2026-05-15\"", text, StringComparison.Ordinal);
        using var db = club.Db();
        Assert.Empty(db.NearMisses);
    }
}
