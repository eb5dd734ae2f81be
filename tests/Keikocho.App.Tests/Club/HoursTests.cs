namespace Keikocho.App.Tests.Club;

public sealed class HoursTests
{
    private static readonly (string, string)[] Friday =
    [
        ("hour-new-weekday", "Friday"), ("hour-new-start", "18:00"), ("hour-new-end", "19:15"), ("hour-new-from", "2026-11-25"),
        ("hour-new-ukemi-from", ""), ("hour-new-ukemi-to", ""), ("hour-new-half", ""),
    ];

    [Fact]
    public async Task A_new_hour_lays_its_lessons_with_the_proposed_falls_and_half_time()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var said = await desk.TakenAsync("/club/hours/add", With(desk, Friday));
        // Fridays from 27 November to 15 January: 8.
        Assert.Equal("Friday 18:00 to 19:15 is on the week. Falls 18:15 to 18:25, half time 18:37. 8 lessons laid into the terms.", said);
        var fridays = desk.Book().LessonsOf(Programme(desk)).Where(l => l.Date.DayOfWeek == DayOfWeek.Friday).ToList();
        Assert.Equal(8, fridays.Count);
        Assert.All(fridays, l => Assert.Equal((new TimeOnly(18, 15), new TimeOnly(18, 25), new TimeOnly(18, 37)), (l.UkemiFrom, l.UkemiTo, l.HalfTime)));
        Assert.Contains("Friday 18:00 to 19:15", await desk.PageAsync("/club"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Typed_falls_and_half_time_go_before_the_proposal()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var said = await desk.TakenAsync("/club/hours/add", With(desk, Friday, ("hour-new-ukemi-from", "18:20"), ("hour-new-half", "18:40")));
        Assert.StartsWith("Friday 18:00 to 19:15 is on the week. Falls 18:20 to 18:30, half time 18:40.", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("hour-new-end", "18:10", "18:10 is not at least a quarter of an hour after 18:00. Type the time of the bow out.")]
    [InlineData("hour-new-end", "17:00", "17:00 is not at least a quarter of an hour after 18:00. Type the time of the bow out.")]
    [InlineData("hour-new-start", "six", "“six” is no time. Type it like 17:30.")]
    [InlineData("hour-new-from", "soon", "“soon” is no date. Type it like 2026-03-03.")]
    [InlineData("hour-new-from", "1926-11-25", "25 November 1926 is too far away. Type a day from 2000 to 2100.")]
    [InlineData("hour-new-ukemi-from", "17:50", "17:50 is not in the lesson, 18:00 to 19:15.")]
    [InlineData("hour-new-ukemi-to", "18:10", "18:10 is not after 18:15. Type when the falls end.")]
    [InlineData("hour-new-half", "19:15", "19:15 is not in the lesson, 18:00 to 19:15.")]
    public async Task An_hour_that_cannot_be_comes_back_with_one_sentence(string field, string value, string sentence)
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.RefusedWithAsync("/club/hours/add", field, sentence, With(desk, Friday, (field, value)));
    }

    [Fact]
    public async Task An_hour_that_overlaps_another_of_the_programme_is_refused()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.RefusedWithAsync("/club/hours/add", "hour-new-start", "Juniors have Wednesday 17:30 to 18:45 already. End that hour first, or type other times.",
            With(desk, Friday, ("hour-new-weekday", "Wednesday")));
    }

    [Fact]
    public async Task Other_falls_reach_the_lessons_that_nobody_has_marked_and_no_other()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var tonight = desk.Book().LessonsOn(ClubDesk.Today).Single();
        await desk.AddChildAsync(tonight.Id, "Wren");
        var hour = desk.Book().Hours.Single();
        var key = $"hour-{hour.Id:N}-";
        var said = await desk.TakenAsync("/club/hours/change", ("hour", hour.Id.ToString()), (key + "ukemi-from", "17:40"), (key + "ukemi-to", "17:52"), (key + "half", "18:10"));
        Assert.StartsWith("Wednesday 17:30 to 18:45 is saved.", said, StringComparison.Ordinal);
        var lessons = desk.Book().LessonsOf(Programme(desk));
        Assert.Equal(tonight.UkemiFrom, lessons.Single(l => l.Date == ClubDesk.Today).UkemiFrom);
        Assert.All(lessons.Where(l => l.Date < ClubDesk.Today), l => Assert.Equal(tonight.HalfTime, l.HalfTime));
        Assert.All(lessons.Where(l => l.Date > ClubDesk.Today), l => Assert.Equal((new TimeOnly(17, 40), new TimeOnly(17, 52), new TimeOnly(18, 10)), (l.UkemiFrom, l.UkemiTo, l.HalfTime)));

        await desk.RefusedWithAsync("/club/hours/change", key + "half", "17:30 is not in the lesson, 17:30 to 18:45.",
            ("hour", hour.Id.ToString()), (key + "ukemi-from", "17:40"), (key + "ukemi-to", "17:52"), (key + "half", "17:30"));
    }

    [Fact]
    public async Task An_hour_that_ends_takes_up_the_lessons_after_it_that_nobody_has_marked()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var hour = desk.Book().Hours.Single();
        var field = $"hour-{hour.Id:N}-last";
        await desk.RefusedWithAsync("/club/hours/end", field, "It only begins on 28 October 2026. Type that day or a later one.", ("hour", hour.Id.ToString()), (field, "2026-10-01"));
        var said = await desk.TakenAsync("/club/hours/end", ("hour", hour.Id.ToString()), (field, "2026-12-02"));
        Assert.StartsWith("Wednesday 17:30 to 18:45 ends on 2 December 2026.", said, StringComparison.Ordinal);
        Assert.Equal(new DateOnly(2026, 12, 2), desk.Book().LessonsOf(Programme(desk)).Max(l => l.Date));
        Assert.Contains("ends 2 December 2026", await desk.PageAsync("/club"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_about_an_hour_that_is_gone_changes_nothing_and_says_so()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var said = await desk.TakenAsync("/club/hours/end", ("hour", "01a03524-d028-7f56-b029-6a708f6b0604"), ("last", "2026-12-02"));
        Assert.StartsWith("Nothing was changed.", said, StringComparison.Ordinal);
    }

    private static Guid Programme(ClubDesk desk) => desk.Book().Programmes[0].Id;

    private static (string, string)[] With(ClubDesk desk, (string Name, string Value)[] form, params (string Name, string Value)[] other) =>
        [("hour-new-programme", Programme(desk).ToString()), .. form.Where(f => other.All(o => o.Name != f.Name)), .. other];
}
