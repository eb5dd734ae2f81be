using System.Net;
using Keikocho.App.Mat;
using Keikocho.Store.People;

namespace Keikocho.App.Tests.Hall;

/// <summary>A tablet that is not heard any more, and one whose marks were not taken.</summary>
public sealed class SilentTabletTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_tablet_in_the_hall_that_is_silent_for_over_two_minutes_is_named_and_stops_nobody()
    {
        await using var hall = await HallDoorOpen.StartAsync("2026-11-24T18:30");
        using var one = new TabletOfTests(await hall.TabletOfAsync(DutyKind.HeadInstructor));
        using var two = new TabletOfTests(await hall.TabletOfAsync(DutyKind.Instructor));
        await one.AskAsync();
        await two.AskAsync();
        using var laptop = hall.App.Browser();
        hall.Time.Step(TimeSpan.FromMinutes(2));
        Assert.DoesNotContain("last heard", await TextAsync(laptop, "/tablets"), StringComparison.Ordinal);
        await one.AskAsync();
        hall.Time.Step(TimeSpan.FromSeconds(1));
        foreach (var page in new[] { "/tablets", $"/close?lesson={two.LessonId}" })
        {
            var text = await TextAsync(laptop, page);
            Assert.Contains("Tablet 2 was last heard at 18:30; marks may wait on it.", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Tablet 1 was last heard", text, StringComparison.Ordinal);
        }

        Assert.Contains("Close the evening</button>", await TextAsync(laptop, $"/close?lesson={two.LessonId}"), StringComparison.Ordinal);
        await two.AskAsync();
        Assert.DoesNotContain("last heard", await TextAsync(laptop, "/tablets"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_tablet_said_of_its_marks_is_said_on()
    {
        await using var hall = await HallDoorOpen.StartAsync("2026-11-24T18:30");
        using var tablet = new TabletOfTests(await hall.TabletOfAsync(DutyKind.Instructor));
        await tablet.AskAsync();
        using (var asked = new HttpRequestMessage(HttpMethod.Get, MatAddress.Evening))
        {
            asked.Headers.Add("Marks-Waiting", "3");
            asked.Headers.Add("Marks-Refused", "2");
            using var answer = await tablet.Http.SendAsync(asked, Cancel);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }

        using var laptop = hall.App.Browser();
        Assert.Contains("Tablet 1: 2 marks were not taken; its view Waiting says why.", await TextAsync(laptop, "/tablets"), StringComparison.Ordinal);
        hall.Time.Step(TimeSpan.FromMinutes(12));
        Assert.Contains("Tablet 1 was last heard at 18:30; 3 marks waited on it then.", await TextAsync(laptop, $"/close?lesson={tablet.LessonId}"), StringComparison.Ordinal);
        // Its time in the hall is over, and what waited is still named.
        hall.Time.Step(TimeSpan.FromHours(5));
        Assert.Contains("3 marks waited on it then.", await TextAsync(laptop, $"/close?lesson={tablet.LessonId}"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("x")]
    [InlineData("-4")]
    [InlineData("99999999999999")]
    public async Task A_count_that_is_none_is_read_as_none(string count)
    {
        await using var hall = await HallDoorOpen.StartAsync("2026-11-24T18:30");
        using var tablet = new TabletOfTests(await hall.TabletOfAsync(DutyKind.Instructor));
        await tablet.AskAsync();
        using var asked = new HttpRequestMessage(HttpMethod.Get, MatAddress.Evening);
        asked.Headers.TryAddWithoutValidation("Marks-Refused", count);
        using var answer = await tablet.Http.SendAsync(asked, Cancel);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        using var laptop = hall.App.Browser();
        Assert.DoesNotContain("not taken;", await TextAsync(laptop, "/tablets"), StringComparison.Ordinal);
    }

    private static async Task<string> TextAsync(HttpClient browser, string address) => WebUtility.HtmlDecode(await browser.GetStringAsync(address, Cancel));
}
