using System.Net;
using Keikocho.Core.Evening;
using Keikocho.Store.People;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Students;

/// <summary>Every mark of one child at one lesson, and its correction.</summary>
public sealed class LessonMarksTests
{
    private static readonly DateOnly Day = new(2026, 5, 14);

    [Fact]
    [Statement(6)]
    public async Task A_register_begun_by_one_adult_and_finished_by_another_has_both_names()
    {
        await using var club = await SpringClub.StartAsync();
        var tom = await club.AddAdultAsync("Tom", "Reed", DutyKind.Instructor);
        var child = await club.JoinAsync("Wren", "Hollis", new DateOnly(2026, 5, 12));
        await club.MarkAsync(child, Day, MarkKind.Present);
        await club.MarkAsync(child, Day, MarkKind.Left, new TimeOnly(18, 30), by: tom);
        var page = await club.WordsAsync($"/students/{child}/lessons/{club.Lesson(Day).Id}");
        Assert.Contains("The register of this lesson was taken by Ruth Aldersey and Tom Reed.", page, StringComparison.Ordinal);
        Assert.Contains("present from the bow Ruth Aldersey", page, StringComparison.Ordinal);
        Assert.Contains("left 18:30 Tom Reed", page, StringComparison.Ordinal);
    }

    [Fact]
    [Statement(7)]
    public async Task A_present_in_error_stays_visible_with_who_and_when_after_its_correction()
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T16:31");
        var tom = await club.AddAdultAsync("Tom", "Reed", DutyKind.Instructor);
        var child = await club.JoinAsync("Wren", "Hollis", new DateOnly(2026, 5, 12));
        await club.MarkAsync(child, Day, MarkKind.Present, by: tom);
        club.Time.Set(new DateTimeOffset(2026, 5, 16, 9, 5, 0, TimeSpan.Zero));
        var address = $"/students/{child}/lessons/{club.Lesson(Day).Id}";
        Assert.Contains($"href=\"{address}\"", await club.TextAsync($"/students/{child}"), StringComparison.Ordinal);

        using var answer = await club.PostAsync(address, address, ("command", Id(club)), ("to", "absent"));
        Assert.Equal((HttpStatusCode.SeeOther, address), (answer.StatusCode, answer.Headers.Location?.ToString()));
        var page = await club.WordsAsync(address);
        Assert.Contains("As it stands absent", page, StringComparison.Ordinal);
        // 16:31 UTC is 17:31 in London in May.
        Assert.Contains("17:31 present from the bow Tom Reed another device corrected by Ruth Aldersey, 16 May 2026, 10:05", page, StringComparison.Ordinal);
        Assert.Contains("16 May 2026, 10:05 corrected to: absent Ruth Aldersey this device stands", page, StringComparison.Ordinal);
        Assert.Contains("Wren", await club.WordsAsync("/students"), StringComparison.Ordinal);
        Assert.Contains("1 of 2", await club.WordsAsync("/students"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bow", "", "As it stands present ", true, true)]
    [InlineData("came", "17:50", "As it stands came 17:50 ", true, false)]
    [InlineData("came", "18:07", "As it stands came 18:07 ", false, false)]
    [InlineData("left", "18:30", "As it stands left 18:30 ", true, true)]
    [InlineData("told", "", "As it stands absent, told us ", false, false)]
    [InlineData("absent", "", "As it stands absent ", false, false)]
    [InlineData("nothing", "", "As it stands not marked ", false, false)]
    public async Task A_correction_says_what_holds(string to, string at, string words, bool counts, bool ukemi)
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", new DateOnly(2026, 5, 12));
        await club.MarkAsync(child, Day, MarkKind.Absent);
        var address = $"/students/{child}/lessons/{club.Lesson(Day).Id}";
        (string, string)[] fields = [("command", Id(club)), ("to", to), ("at", at)];
        for (var sent = 0; sent < 2; sent++)
        {
            using var answer = await club.PostAsync(address, address, fields);
            Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        }

        Assert.Contains(words, await club.WordsAsync(address), StringComparison.Ordinal);
        using var db = club.Db();
        var state = db.Attendances.Single(a => a.PersonId == child && a.Date == Day);
        Assert.Equal((counts, ukemi), (state.Counts, state.Ukemi));
        Assert.Contains(db.Marks.ToList(), m => m.LessonId == state.LessonId && m.Kind == MarkKind.Absent && m.Replaces is null);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_leaving_corrected_keeps_the_late_arrival_and_opens_no_fall(bool hadLeft)
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", new DateOnly(2026, 5, 12));
        await club.MarkAsync(child, Day, MarkKind.Present, new TimeOnly(17, 56));
        if (hadLeft) await club.MarkAsync(child, Day, MarkKind.Left, new TimeOnly(18, 20));
        var address = $"/students/{child}/lessons/{club.Lesson(Day).Id}";
        using var answer = await club.PostAsync(address, address, ("command", Id(club)), ("to", "left"), ("at", "18:35"));
        using var db = club.Db();
        var state = db.Attendances.Single(a => a.PersonId == child && a.Date == Day);
        Assert.Equal((AttendanceWord.Left, new TimeOnly(17, 56), new TimeOnly(18, 35), true, false), (state.Word, state.Arrived, state.LeftAt, state.Counts, state.Ukemi));
    }

    [Theory]
    [InlineData("left", "", "The time is missing.")]
    [InlineData("came", "half six", "“half six” is not a time of day.")]
    [InlineData("came", "18:50", "18:50 is after the bow out at 18:45.")]
    [InlineData("left", "17:20", "17:20 is before the bow at 17:30.")]
    [InlineData("left", "17:40", "17:40 is before the arrival at 17:56.")]
    [InlineData("", "", "Say where the child was.")]
    public async Task A_correction_that_cannot_be_is_refused_in_a_sentence_and_keeps_what_was_typed(string to, string at, string sentence)
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", new DateOnly(2026, 5, 12));
        await club.MarkAsync(child, Day, MarkKind.Present, new TimeOnly(17, 56));
        var address = $"/students/{child}/lessons/{club.Lesson(Day).Id}";
        using var answer = await club.PostAsync(address, address, ("command", Id(club)), ("to", to), ("at", at));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var html = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(SpringClub.Stop));
        Assert.Contains(sentence, html, StringComparison.Ordinal);
        if (at.Length > 0) Assert.Contains($"value=\"{at}\"", html, StringComparison.Ordinal);
        if (to.Length > 0) Assert.Matches($"value=\"{to}\" checked", html);
        using var db = club.Db();
        Assert.Equal(2, db.Marks.Count());
    }

    [Fact]
    public async Task Two_devices_that_disagree_are_said_to_and_both_marks_stand()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", new DateOnly(2026, 5, 12));
        await club.MarkAsync(child, Day, MarkKind.Present);
        await club.MarkAsync(child, Day, MarkKind.Absent, device: await club.AddTabletAsync());
        var page = await club.WordsAsync($"/students/{child}/lessons/{club.Lesson(Day).Id}");
        Assert.Contains("Two devices disagree. One device says here, another says away: here stands, and both are kept.", page, StringComparison.Ordinal);
        Assert.Contains("present from the bow Ruth Aldersey another device stands", page, StringComparison.Ordinal);
        Assert.Contains("absent Ruth Aldersey a tablet stands", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ahead_of_a_lesson_only_told_us_can_be_marked()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", new DateOnly(2026, 5, 12));
        var address = $"/students/{child}/lessons/{club.Lesson(5, 19).Id}";
        using var refused = await club.PostAsync(address, address, ("command", Id(club)), ("to", "bow"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        using var taken = await club.PostAsync(address, address, ("command", Id(club)), ("to", "told"));
        Assert.Equal(HttpStatusCode.SeeOther, taken.StatusCode);
        Assert.Contains("19 May 届 absent, told us", await club.WordsAsync($"/students/{child}"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lesson_or_child_that_nobody_knows_is_not_found()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", new DateOnly(2026, 5, 12));
        foreach (var address in new[] { $"/students/{child}/lessons/{club.Head}", $"/students/{club.Head}/lessons/{club.Lesson(Day).Id}", $"/students/{club.Head}", "/students/x", $"/students?programme={child}" })
        {
            using var answer = await club.Browser.GetAsync(address, SpringClub.Stop);
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }
    }

    private static string Id(SpringClub club) => Guid.CreateVersion7(club.Time.GetUtcNow()).ToString("D");
}
