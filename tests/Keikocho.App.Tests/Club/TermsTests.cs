namespace Keikocho.App.Tests.Club;

public sealed class TermsTests
{
    [Fact]
    public async Task A_new_term_gets_its_lessons()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var said = await desk.TakenAsync("/club/terms/add", ("term-name", "Spring 2027"), ("term-from", "2027-02-01"), ("term-to", "2027-03-31"));
        Assert.Equal("Spring 2027 is on the calendar. Its lessons are laid from the weekly hours.", said);
        // Wednesdays 3 February to 31 March.
        Assert.Equal(9, desk.Book().LessonsOf(desk.Book().Programmes[0].Id).Count(l => l.Date.Year == 2027 && l.Date.Month is 2 or 3));
        Assert.Contains("1 February 2027 to 31 March 2027", await desk.PageAsync("/club"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2027-01-20", "2027-03-31", "term-from", "These days overlap Autumn 2026, 28 October 2026 to 20 January 2027. A day lies in one term only.")]
    [InlineData("2027-03-31", "2027-02-01", "term-to", "1 February 2027 is before 31 March 2027. Type the last day.")]
    [InlineData("2027-02-01", "2028-03-31", "term-to", "That term is longer than a year. Type the last day of one term.")]
    [InlineData("2027-02-30", "2027-03-31", "term-from", "“2027-02-30” is no date. Type it like 2026-03-03.")]
    public async Task A_term_that_cannot_be_is_refused_with_a_sentence(string from, string to, string field, string sentence)
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.RefusedWithAsync("/club/terms/add", field, sentence, ("term-name", "Spring 2027"), ("term-from", from), ("term-to", to));
        Assert.Single(desk.Book().Terms);
    }

    [Fact]
    public async Task A_programme_is_added_and_told_its_first_course()
    {
        await using var desk = await ClubDesk.FreshAsync();
        Assert.StartsWith("Teens is a programme of the club.", await desk.TakenAsync("/club/programmes/add", ("programme-new-name", "Teens")), StringComparison.Ordinal);
        var teens = desk.Book().Programmes[1];
        var key = $"programme-{teens.Id:N}-";
        await desk.TakenAsync("/club/programmes/change", ("programme", teens.Id.ToString()), (key + "name", "Teens"), (key + "lessons", "14"), (key + "weeks", "10"), (key + "trials", "3"));
        teens = desk.Book().Programmes[1];
        Assert.Equal((14, 10, 3), (teens.FirstCourseLessons, teens.FirstCourseWeeks, teens.TrialLessons));

        await desk.RefusedWithAsync("/club/programmes/change", key + "lessons", "Lessons of the first course: type a whole number from 1 to 200, or nothing.",
            ("programme", teens.Id.ToString()), (key + "name", "Teens"), (key + "lessons", "14.5"), (key + "weeks", "10"), (key + "trials", ""));
        await desk.RefusedWithAsync("/club/programmes/add", "programme-new-name", "There is a programme called teens already. Type another name.", ("programme-new-name", "teens"));
    }

    [Fact]
    public async Task A_promotion_test_is_set_and_removed()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var juniors = desk.Book().Programmes[0].Id.ToString();
        Assert.Equal("Promotion test of Juniors on Saturday 5 December 2026.", await desk.TakenAsync("/club/tests/add", ("test-programme", juniors), ("test-date", "2026-12-05")));
        await desk.RefusedWithAsync("/club/tests/add", "test-date", "Juniors have a test on 5 December 2026 already.", ("test-programme", juniors), ("test-date", "2026-12-05"));
        await desk.RefusedWithAsync("/club/tests/add", "test-date", "24 November 2026 is over. Type a day to come.", ("test-programme", juniors), ("test-date", "2026-11-24"));
        var test = Assert.Single(desk.Book().Tests);
        Assert.Equal("The test on 5 December 2026 is removed.", await desk.TakenAsync("/club/tests/remove", ("test", test.Id.ToString())));
        Assert.Empty(desk.Book().Tests);
    }
}
