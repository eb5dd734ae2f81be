using System.Net;
using System.Text.RegularExpressions;
using Keikocho.App.Tests.Shell;
using Keikocho.Store.People;
using Keikocho.Store.Starter;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Hall;

/// <summary>Notes by ready phrases: from a tablet's thumb to the child's page and the page of closing.</summary>
public sealed partial class NotesFromTheMatTests
{
    private static readonly StarterPhrase Courage = StarterPhrases.Of("courage")!;
    private static readonly StarterPhrase Grip = StarterPhrases.Of("grip-kept")!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_note_is_read_on_the_childs_page_and_when_the_evening_is_closed_in_register_order()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = await TabletAsync(hall, DutyKind.Instructor);
        var (third, second) = (tablet.Child(3), tablet.Child(2));
        Assert.All(await tablet.HandInAsync(tablet.Note(third, "courage"), tablet.Note(second, "grip-kept")), a => Assert.Equal("taken", a));
        hall.Time.Step(TimeSpan.FromHours(3));
        using var laptop = hall.App.Browser();
        var page = await TextAsync(laptop, $"/students/{third}");
        Assert.Contains($"{Courage.Seen} {Courage.Next}", page, StringComparison.Ordinal);
        Assert.DoesNotContain(Grip.Seen, page, StringComparison.Ordinal);
        var close = await TextAsync(laptop, $"/close?lesson={tablet.LessonId}");
        Assert.True(close.IndexOf(Grip.Seen, StringComparison.Ordinal) is > 0 and var first && first < close.IndexOf(Courage.Seen, StringComparison.Ordinal));
        using var db = hall.House.Engine.OpenDb();
        var other = db.Lessons.Where(l => l.Date < new DateOnly(2026, 11, 24) && l.ClosureId == null).OrderByDescending(l => l.Date).Select(l => l.Id).First();
        Assert.DoesNotContain(Grip.Seen, await TextAsync(laptop, $"/close?lesson={other}"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_laptop_takes_a_note_back()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = await TabletAsync(hall, DutyKind.Instructor);
        var note = tablet.Note(tablet.Child(3), "courage");
        await tablet.HandInAsync(note);
        using var laptop = hall.App.Browser();
        using (var db = hall.House.Engine.OpenDb())
        {
            var head = db.Duties.Where(d => d.Kind == DutyKind.HeadInstructor && d.To == null).Select(d => d.PersonId).First();
            var acting = await RunningApp.TokenAsync(laptop, "/acting");
            await RunningApp.PostAsync(laptop, "/acting", ("page-token", acting), ("adult", head.ToString("D")), ("from", "/tonight"));
        }

        var address = $"/students/{tablet.Child(3)}";
        var token = await RunningApp.TokenAsync(laptop, address);
        using var answer = await RunningApp.PostAsync(laptop, $"{address}/note-back", ("page-token", token), ("note", note["id"]!.GetValue<Guid>().ToString("D")));
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        Assert.DoesNotContain(Courage.Seen, await TextAsync(laptop, address), StringComparison.Ordinal);
        using var after = hall.House.Engine.OpenDb();
        Assert.NotNull(after.PhraseNotes.Single().TakenBackAt);
    }

    [Fact, Statement(86)]
    public async Task A_junior_leaders_tablet_hands_no_note_in_and_is_told_none()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var adult = await TabletAsync(hall, DutyKind.Instructor);
        using var leader = await TabletAsync(hall, DutyKind.JuniorLeader);
        await adult.HandInAsync(adult.Note(adult.Child(3), "courage"));
        Assert.Equal(["A note on a child is an adult’s."], await leader.HandInAsync(leader.Note(leader.Child(3), "courage")));
        Assert.DoesNotContain("courage", (await leader.AskAsync()).ToJsonString(), StringComparison.Ordinal);
        Assert.DoesNotContain(Courage.Seen, (await leader.AskAsync()).ToJsonString(), StringComparison.Ordinal);
        using var db = hall.House.Engine.OpenDb();
        Assert.Equal(1, db.PhraseNotes.Count());
    }

    private static async Task<TabletOfTests> TabletAsync(HallDoorOpen hall, DutyKind duty)
    {
        var tablet = new TabletOfTests(await hall.TabletOfAsync(duty));
        await tablet.AskAsync();
        return tablet;
    }

    private static async Task<string> TextAsync(HttpClient browser, string address) =>
        Spaces().Replace(WebUtility.HtmlDecode(await browser.GetStringAsync(address, Cancel)), " ");

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
