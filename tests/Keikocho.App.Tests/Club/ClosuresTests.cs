using Keikocho.Testing;

namespace Keikocho.App.Tests.Club;

public sealed class ClosuresTests
{
    private static readonly (string, string)[] ThisWeek =
        [("closure-name", "Hall lost"), ("closure-from", "2026-11-18"), ("closure-to", "2026-12-02"), ("closure-programme", "")];

    [Fact]
    public async Task A_closure_over_lessons_without_marks_is_saved_at_once_and_removed_by_a_button()
    {
        await using var desk = await ClubDesk.FreshAsync();
        Assert.StartsWith("Hall lost is saved.", await desk.TakenAsync("/club/closures/add", ThisWeek), StringComparison.Ordinal);
        var closure = Assert.Single(desk.Book().Closures);
        Assert.Equal(3, Closed(desk).Count);
        var page = await desk.PageAsync("/club");
        Assert.Contains("3 lessons closed", page, StringComparison.Ordinal);
        await desk.RefusedWithAsync("/club/closures/add", "closure-name", "Hall lost is there already for these days.", [.. ThisWeek]);
        Assert.StartsWith("Hall lost is removed.", await desk.TakenAsync("/club/closures/remove", ("closure", closure.Id.ToString())), StringComparison.Ordinal);
        Assert.Empty(desk.Book().Closures);
        Assert.Empty(Closed(desk));
    }

    [Fact]
    [Statement(2)]
    public async Task Where_children_were_marked_the_page_asks_lesson_by_lesson_and_saves_nothing_before()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var (tonight, child) = await MarkedAsync(desk);
        var lastWeek = desk.Book().LessonsOn(new DateOnly(2026, 11, 18)).Single();
        await desk.TakenAsync("/register/mark", ("lesson", lastWeek.Id.ToString()), ("afterwards", "yes"), ("command", Guid.CreateVersion7(desk.Time.GetUtcNow()).ToString()), ("present", child.ToString()));

        var html = await desk.RefusedAsync("/club/closures/add", ThisWeek);
        Assert.Contains("<h1>Held, or closed?</h1>", html, StringComparison.Ordinal);
        Assert.Contains("Wednesday 18 November 2026, 17:30, Juniors: 1 were here", html, StringComparison.Ordinal);
        Assert.Contains("Wednesday 25 November 2026, 17:30, Juniors: 1 were here", html, StringComparison.Ordinal);
        Assert.DoesNotContain("2 December 2026, 17:30", html, StringComparison.Ordinal);
        Assert.DoesNotContain("Wren", html, StringComparison.Ordinal);

        // One of two is answered: asked again, with that answer kept.
        html = await desk.RefusedAsync("/club/closures/add", [.. ThisWeek, ("asked", "yes"), ($"lesson-{tonight:N}", "held")]);
        Assert.Contains($"name=\"lesson-{tonight:N}\" value=\"held\" checked", html, StringComparison.Ordinal);
        Assert.Contains($"<a href=\"#lesson-{lastWeek.Id:N}\">Wednesday 18 November 2026, Juniors: was it held, or closed?</a>", html, StringComparison.Ordinal);
        Assert.Empty(desk.Book().Closures);

        Assert.Equal("Hall lost is saved. Held after all: 1 lesson, still in every count.",
            await desk.TakenAsync("/club/closures/add", [.. ThisWeek, ("asked", "yes"), ($"lesson-{tonight:N}", "held"), ($"lesson-{lastWeek.Id:N}", "closed")]));
        Assert.Equal([new DateOnly(2026, 11, 18), new DateOnly(2026, 12, 2)], Closed(desk));
        // Out of both counts: the closed evening is no lesson attended, and its mark is still there.
        using var db = desk.Db();
        Assert.Equal([tonight], db.Attendances.Where(a => a.PersonId == child && a.Counts).Select(a => a.LessonId).ToList());
        Assert.Equal(2, db.Marks.Count(m => m.PersonId == child));
    }

    [Fact]
    [Statement(2)]
    public async Task It_was_held_about_every_lesson_saves_no_closure()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var (tonight, child) = await MarkedAsync(desk);
        var said = await desk.TakenAsync("/club/closures/add",
            ("closure-name", "Hall lost"), ("closure-from", "2026-11-25"), ("closure-to", "2026-11-25"), ("closure-programme", ""), ("asked", "yes"), ($"lesson-{tonight:N}", "held"));
        Assert.StartsWith("No closure was saved.", said, StringComparison.Ordinal);
        Assert.Empty(desk.Book().Closures);
        using var db = desk.Db();
        Assert.True(db.Attendances.Single(a => a.PersonId == child).Counts);
    }

    [Theory]
    [InlineData("closure-name", "", "The closure has no name. “Half-term” or “Hall lost” will do.")]
    [InlineData("closure-to", "2026-11-01", "1 November 2026 is before 18 November 2026. Type the last day.")]
    [InlineData("closure-from", "", "Type the first day.")]
    public async Task A_closure_that_cannot_be_is_refused_with_a_sentence(string field, string value, string sentence)
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.RefusedWithAsync("/club/closures/add", field, sentence, [.. ThisWeek.Where(f => f.Item1 != field), (field, value)]);
    }

    [Fact]
    public async Task A_closure_of_one_programme_leaves_the_other_its_lessons()
    {
        await using var desk = await ClubDesk.DemoAsync();
        var teens = desk.Book().Programmes[1];
        await desk.TakenAsync("/club/closures/add",
            ("closure-name", "Teens away"), ("closure-from", "2026-11-25"), ("closure-to", "2026-12-06"), ("closure-programme", teens.Id.ToString()));
        Assert.All(desk.Book().LessonsOn(ClubDesk.Today), l => Assert.Equal(l.ProgrammeId == teens.Id, l.ClosureId is not null));
        Assert.Contains(", Teens only", await desk.PageAsync("/club"), StringComparison.Ordinal);
    }

    private static List<DateOnly> Closed(ClubDesk desk) =>
        [.. desk.Book().LessonsOf(desk.Book().Programmes[0].Id).Where(l => l.ClosureId is not null).Select(l => l.Date)];

    private static async Task<(Guid Lesson, Guid Child)> MarkedAsync(ClubDesk desk)
    {
        var tonight = desk.Book().LessonsOn(ClubDesk.Today).Single().Id;
        return (tonight, await desk.AddChildAsync(tonight, "Wren"));
    }
}
