using System.Net;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Store.Marks;

namespace Keikocho.App.Tests.Register;

/// <summary>The register's forms as a browser without a script sends them: what is said to be stored is stored.</summary>
public sealed class RegisterOverHttpTests
{
    private static readonly DateOnly Evening = new(2026, 5, 14);
    private static readonly DateOnly Before = new(2026, 5, 12);

    [Fact]
    public async Task A_page_gone_back_to_marks_the_second_child_as_well_as_the_first()
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T16:31");
        var wren = await club.JoinAsync("Wren", "Hollis", Before);
        var bram = await club.JoinAsync("Bram", "Oakes", Before);
        // One page, one id in its form: "back" and a second tap send the same id about another child.
        var command = Guid.CreateVersion7(club.Time.GetUtcNow());
        await TapAsync(club, command, "present", wren);
        await TapAsync(club, command, "present", bram);
        await TapAsync(club, command, "left", wren);
        await TapAsync(club, command, "left", wren);
        var states = States(club, Evening);
        Assert.Equal((AttendanceWord.Left, AttendanceWord.Present), (states[wren].Word, states[bram].Word));
        using var db = club.Db();
        Assert.Equal(3, db.Marks.Count(m => m.LessonId == club.Lesson(Evening).Id));
    }

    [Fact]
    public async Task From_the_bow_for_two_children_of_one_page_is_stored_for_both()
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T17:20");
        var wren = await club.JoinAsync("Wren", "Hollis", Before);
        var bram = await club.JoinAsync("Bram", "Oakes", Before);
        var command = Guid.CreateVersion7(club.Time.GetUtcNow());
        await TapAsync(club, command, "bow", wren);
        await TapAsync(club, command, "bow", bram);
        var states = States(club, Evening);
        Assert.True(states[wren].Counts);
        Assert.True(states[bram].Counts);
    }

    [Fact]
    public async Task The_form_of_a_new_child_sent_twice_adds_one_and_with_another_name_adds_another()
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T16:31");
        var id = Guid.CreateVersion7(club.Time.GetUtcNow());
        foreach (var given in new[] { "Wilf", "Wilf", "Anna", "Anna" })
        {
            using var answer = await club.PostAsync("/register", "/register/new", ("lesson", Lesson(club, Evening)), ("person", $"{id}"), ("given", given), ("initial", "T"));
            Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        }

        using var db = club.Db();
        Assert.Equal(2, States(club, Evening).Count(s => s.Value.Word == AttendanceWord.Present));
        Assert.Equal(2, db.Enrolments.Count());
    }

    [Theory]
    [InlineData("present")]
    [InlineData("left")]
    [InlineData("bow")]
    public async Task A_lesson_to_come_takes_no_presence(string word)
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T16:31");
        var wren = await club.JoinAsync("Wren", "Hollis", Before);
        var next = new DateOnly(2026, 5, 19);
        await TapAsync(club, Guid.CreateVersion7(club.Time.GetUtcNow()), word, wren, next);
        Assert.Empty(States(club, next));
        var page = await club.WordsAsync($"/register?lesson={Lesson(club, next)}");
        Assert.Contains("is not marked present before it", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lesson_to_come_takes_absent_told_us_and_nothing_for_the_rest()
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T16:31");
        var wren = await club.JoinAsync("Wren", "Hollis", Before);
        await club.JoinAsync("Bram", "Oakes", Before);
        var next = new DateOnly(2026, 5, 19);
        await TapAsync(club, Guid.CreateVersion7(club.Time.GetUtcNow()), "told", wren, next);
        using (await club.PostAsync("/register", "/register/rest-absent", ("lesson", Lesson(club, next)))) { }
        using (await club.PostAsync("/register", "/register/new", ("lesson", Lesson(club, next)), ("person", $"{Guid.CreateVersion7(club.Time.GetUtcNow())}"), ("given", "Wilf"))) { }
        Assert.Equal(AttendanceWord.Excused, Assert.Single(States(club, next)).Value.Word);
        Assert.DoesNotContain("Wilf", await club.WordsAsync("/register"), StringComparison.Ordinal);
        Assert.DoesNotContain("Rest are absent", await club.WordsAsync($"/register?lesson={Lesson(club, next)}"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Undo_sent_twice_by_one_page_takes_back_one_mark()
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T16:31");
        var wren = await club.JoinAsync("Wren", "Hollis", Before);
        var bram = await club.JoinAsync("Bram", "Oakes", Before);
        await TapAsync(club, Guid.CreateVersion7(club.Time.GetUtcNow()), "present", wren);
        club.Time.Set(club.Time.GetUtcNow().AddSeconds(3));
        await TapAsync(club, Guid.CreateVersion7(club.Time.GetUtcNow()), "present", bram);
        var undo = $"{Guid.CreateVersion7(club.Time.GetUtcNow())}";
        for (var sent = 0; sent < 2; sent++)
        {
            using var answer = await club.PostAsync("/register", "/register/undo", ("lesson", Lesson(club, Evening)), ("command", undo));
            Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
            var states = States(club, Evening);
            Assert.Equal((AttendanceWord.Present, AttendanceWord.Untouched), (states[wren].Word, states[bram].Word));
        }

        using (await club.PostAsync("/register", "/register/undo", ("lesson", Lesson(club, Evening)), ("command", $"{Guid.CreateVersion7(club.Time.GetUtcNow())}"))) { }
        Assert.Equal(AttendanceWord.Untouched, States(club, Evening)[wren].Word);
    }

    [Fact]
    public async Task Nobody_marks_a_person_who_was_erased()
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T16:31");
        var wren = await club.JoinAsync("Wren", "Hollis", Before);
        await club.House.Writer.RunAsync(session =>
        {
            session.Db.People.Single(p => p.Id == wren).ErasedAt = session.Now;
            session.Db.SaveChanges();
            return true;
        }, SpringClub.Stop);
        foreach (var word in new[] { "present", "bow" })
        {
            await TapAsync(club, Guid.CreateVersion7(club.Time.GetUtcNow()), word, wren);
            Assert.Empty(States(club, Evening));
        }
    }

    [Fact]
    public async Task A_register_filled_in_after_the_bow_out_is_in_the_count_at_once()
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T18:30");
        var wren = await club.JoinAsync("Wren", "Hollis", Before);
        Assert.Contains("1 of 1", await club.WordsAsync("/students"), StringComparison.Ordinal);
        await TapAsync(club, Guid.CreateVersion7(club.Time.GetUtcNow()), "present", wren);
        Assert.Contains("2 of 2", await club.WordsAsync("/students"), StringComparison.Ordinal);
        using (await club.PostAsync("/register", "/register/undo", ("lesson", Lesson(club, Evening)))) { }
        Assert.Contains("1 of 1", await club.WordsAsync("/students"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Tonights_lesson_keeps_its_number_after_the_bow_out()
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T16:31");
        await club.SetAsync("clock.minimumLessons", "14");
        var wren = await club.JoinAsync("Wren", "Hollis", Before);
        await TapAsync(club, Guid.CreateVersion7(club.Time.GetUtcNow()), "present", wren);
        Assert.Contains("lesson 2 of", await club.WordsAsync("/tonight"), StringComparison.Ordinal);
        club.Time.Set(new DateTimeOffset(2026, 5, 14, 18, 30, 0, TimeSpan.Zero));
        Assert.Contains("lesson 2 of", await club.WordsAsync("/tonight"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lesson_that_is_not_on_the_calendar_is_not_called_a_day_without_one()
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T16:31");
        var page = await club.WordsAsync($"/register?lesson={Guid.CreateVersion7(club.Time.GetUtcNow())}");
        Assert.Contains("That lesson is not on the calendar", page, StringComparison.Ordinal);
        Assert.DoesNotContain("No lesson today", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_roll_of_another_evening_says_the_hour_that_it_is_of()
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T16:31");
        Assert.Contains("Tuesday 12 May 2026, at 18:45", await club.WordsAsync($"/roll?lesson={Lesson(club, Before)}"), StringComparison.Ordinal);
        Assert.Contains("Thursday 14 May 2026, at 17:31", await club.WordsAsync("/roll"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_roll_names_those_whom_nobody_has_marked()
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T16:31");
        await club.JoinAsync("Wren", "Hollis", Before);
        var bram = await club.JoinAsync("Bram", "Oakes", Before);
        await TapAsync(club, Guid.CreateVersion7(club.Time.GetUtcNow()), "present", bram);
        var page = await club.WordsAsync("/roll");
        Assert.Contains("Not marked 2 to look for Ruth Aldersey Wren Hollis", page, StringComparison.Ordinal);
    }

    private static string Lesson(SpringClub club, DateOnly day) => club.Lesson(day).Id.ToString("D");

    private static Dictionary<Guid, AttendanceRow> States(SpringClub club, DateOnly day)
    {
        using var db = club.Db();
        var lesson = club.Lesson(day).Id;
        return db.Attendances.Where(a => a.LessonId == lesson).ToDictionary(a => a.PersonId);
    }

    private static async Task TapAsync(SpringClub club, Guid command, string word, Guid child, DateOnly? day = null)
    {
        using var answer = await club.PostAsync("/register", "/register/mark", ("lesson", Lesson(club, day ?? Evening)), ("command", $"{command}"), (word, $"{child}"));
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
    }
}
