using Keikocho.Core.Evening;
using Keikocho.Store.People;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Students;

/// <summary>The child's own clock as the pages say it; the figures are those of the worked example, by hand.</summary>
public sealed class ClockOnPagesTests
{
    [Fact]
    [Statement(4)]
    public async Task Twelve_of_fourteen_and_four_left_says_2_of_the_4_lessons_left()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinOfTheExampleAsync();
        var list = await club.WordsAsync("/students");
        Assert.Contains("Wren 2 of the 4 lessons left 12 of 17 White", list, StringComparison.Ordinal);
        var page = await club.WordsAsync($"/students/{child}");
        Assert.Contains("If Wren comes to 2 of the 4 lessons left.", page, StringComparison.Ordinal);
        Assert.Contains("4 lessons are left: 19 May, 21 May, 26 May and 28 May.", page, StringComparison.Ordinal);
    }

    [Fact]
    [Statement(1)]
    public async Task Who_joined_three_weeks_late_is_counted_from_the_own_first_lesson()
    {
        await using var club = await SpringClub.StartAsync();
        await club.JoinOfTheExampleAsync();
        var late = await club.JoinAsync("Bram", "Oke", new DateOnly(2026, 3, 24));
        var page = await club.WordsAsync($"/students/{late}");
        // 17 held from 3 March, 6 of them before 24 March.
        Assert.Contains("Lessons since the first lesson 1 of 11", page, StringComparison.Ordinal);
        Assert.Contains("Counted from this child's first lesson on Tuesday 24 March 2026.", page, StringComparison.Ordinal);
        Assert.Contains("10 weeks from 24 March 2026 are full on 2 June 2026", page, StringComparison.Ordinal);
    }

    [Fact]
    [Statement(2)]
    public async Task A_closure_entered_after_the_fact_leaves_nobody_worse_off()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinOfTheExampleAsync();
        var other = await club.JoinAsync("Bram", "Oke", new DateOnly(2026, 3, 24));
        // On 12 May the hall was shut: somebody marked all absent at home.
        var day = new DateOnly(2026, 5, 12);
        await club.MarkAsync(other, day, MarkKind.Absent);
        var before = await club.WordsAsync("/students");
        Assert.Contains("Bram newcomer; away since 24 March 2026 not this time; next test 25 July 2026 1 of 11", before, StringComparison.Ordinal);
        await club.CloseAsync("Burst pipe", day, day);

        var after = await club.WordsAsync("/students");
        Assert.Contains("Wren 2 of the 4 lessons left 12 of 16", after, StringComparison.Ordinal);
        Assert.Contains("Bram newcomer; away since 24 March 2026 not this time; next test 25 July 2026 1 of 10", after, StringComparison.Ordinal);
        var page = await club.WordsAsync($"/students/{child}");
        Assert.Contains("Burst pipe took out 1 lesson (12 May): in neither count. The marks of 12 May are kept and not counted.", page, StringComparison.Ordinal);
        Assert.Contains("12 May closed: Burst pipe", page, StringComparison.Ordinal);
    }

    [Fact]
    [Statement(3)]
    public async Task Late_after_the_falls_is_a_lesson_but_not_an_ukemi_evening()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", new DateOnly(2026, 5, 12));
        await club.MarkAsync(child, new DateOnly(2026, 5, 14), MarkKind.Present, new TimeOnly(17, 56));
        var page = await club.WordsAsync($"/students/{child}");
        Assert.Contains("Attended 2 of the 2 lessons held by 14 May 2026, which is 100 %; there for the falls on 1 evening.", page, StringComparison.Ordinal);
        Assert.Contains("14 May 遅 came 17:56", page, StringComparison.Ordinal);
        var lesson = await club.WordsAsync($"/students/{child}/lessons/{club.Lesson(5, 14).Id}");
        Assert.Contains("A lesson: here at 17:56, before half time at 18:07.", lesson, StringComparison.Ordinal);
        Assert.Contains("Not an ukemi evening: not known to be here for all of the falls from 17:45 to 17:55.", lesson, StringComparison.Ordinal);
    }

    [Fact]
    [Statement(5)]
    public async Task One_lesson_left_and_two_needed_says_not_this_time_and_names_the_next_test()
    {
        // Tuesday 26 May after the lesson: only 28 May is left.
        await using var club = await SpringClub.StartAsync("2026-05-26T20:00");
        var child = await club.JoinOfTheExampleAsync();
        foreach (var day in new[] { 19, 21, 26 }) await club.MarkAsync(child, new DateOnly(2026, 5, day), MarkKind.Absent);
        Assert.Contains("Wren not this time; next test 25 July 2026 12 of 20", await club.WordsAsync("/students"), StringComparison.Ordinal);
        var page = await club.WordsAsync($"/students/{child}");
        Assert.Contains("Not this time; next test 25 July 2026.", page, StringComparison.Ordinal);
        Assert.Contains("One lesson is left: 28 May.", page, StringComparison.Ordinal);
        Assert.Contains("The rule asks for 14 lessons, 12 attended: 2 more are needed and 1 is left before the test on Saturday 30 May 2026.", page, StringComparison.Ordinal);
    }

    [Fact]
    [Statement(100)]
    public async Task Every_rule_figure_and_date_of_the_verdict_stands_on_the_page()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinOfTheExampleAsync();
        var page = await club.WordsAsync($"/students/{child}");
        foreach (var sentence in new[]
        {
            "Counted from this child's first lesson on Tuesday 3 March 2026.",
            "Attended 12 of the 17 lessons held by 14 May 2026, which is 71 %; there for the falls on 12 evenings.",
            "Spring holiday took out 4 lessons (7 Apr, 9 Apr, 14 Apr and 16 Apr): in neither count.",
            "Hall lost took out 1 lesson (7 May): in neither count.",
            "10 weeks from 3 March 2026 are full on 12 May 2026, in time for the test on Saturday 30 May 2026.",
            "The rule asks for 14 lessons, 12 attended: 2 of the 4 lessons left before the test on Saturday 30 May 2026 are needed.",
            "At the child's own 71 % about 2.8 of the 4 lessons left would be attended.",
            "Lessons attended before a test: 14 lessons (proposed value: ours, no source)",
            "Weeks that are full on the day of the test: 10 weeks",
        })
            Assert.Contains(sentence, page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_chance_is_read_by_an_instructor_alone_and_is_on_no_list()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinOfTheExampleAsync();
        var assistant = await club.AddAdultAsync("Tom", "Reed", DutyKind.Assistant);
        Assert.Contains("to attend enough lessons, from the register; it says nothing about the items.", await club.WordsAsync($"/students/{child}"), StringComparison.Ordinal);
        Assert.DoesNotContain(" in 10", await club.WordsAsync("/students"), StringComparison.Ordinal);
        await club.ActAsync(assistant);
        var page = await club.WordsAsync($"/students/{child}");
        Assert.DoesNotContain("Instructor only", page, StringComparison.Ordinal);
        Assert.DoesNotContain(" in 10", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task After_three_weeks_away_the_falls_are_seen_again_first()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", new DateOnly(2026, 4, 23));
        Assert.Contains("away since 23 April 2026", await club.WordsAsync("/students"), StringComparison.Ordinal);
        var page = await club.WordsAsync($"/students/{child}");
        Assert.Contains("After the break 21 days away", page, StringComparison.Ordinal);
        Assert.Contains("falls: one clean a stage lower, then one at the stage; until then not thrown", page, StringComparison.Ordinal);
        Assert.DoesNotContain("holds before throws", page, StringComparison.Ordinal);
    }

    [Fact]
    [Statement(79)]
    public async Task Thirteen_on_14_September_leaves_two_of_the_three_tests()
    {
        // Tests on 28 March, 25 July and 28 November; asked after the first.
        await using var club = await SpringClub.StartAsync();
        await club.House.Calendar.RemoveTestAsync(Test(club, SpringClub.Test), club.Head, club.Tablet, SpringClub.Stop);
        foreach (var day in new[] { new DateOnly(2026, 3, 28), new DateOnly(2026, 11, 28) })
            await club.House.Calendar.AddTestAsync(club.Programme, day, club.Head, club.Tablet, SpringClub.Stop);
        var child = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        await club.House.People.ChangeDetailsAsync(child, new PersonDetails("Wren", "Hollis", null, new DateOnly(2013, 9, 14)), club.Head, club.Tablet, SpringClub.Stop);
        Assert.DoesNotContain("Leaving for age", await club.WordsAsync($"/students/{child}"), StringComparison.Ordinal);
        await club.SetAsync("ageOut.leavingAge", "13");

        // After 28 March only July is left of the three; on 1 March, as the statement has it, two are.
        Assert.Contains("1 of the 3 tests set is left by 14 September 2026 (25 Jul)", await club.WordsAsync($"/students/{child}"), StringComparison.Ordinal);
        club.Time.Set(new DateTimeOffset(2026, 3, 5, 21, 0, 0, TimeSpan.Zero));
        var page = await club.WordsAsync($"/students/{child}");
        Assert.Contains("2 of the 3 tests set are left by 14 September 2026 (28 Mar and 25 Jul)", page, StringComparison.Ordinal);
        Assert.Contains("Turns 13 on 14 September 2026 and leaves on that day.", page, StringComparison.Ordinal);
    }

    [Theory]
    [Statement(81)]
    [InlineData("28 February", 28, "9 years old")]
    [InlineData("1 March", 28, "8 years old")]
    [InlineData("1 March", 1, "9 years old")]
    public async Task A_birthday_on_29_February_follows_the_clubs_setting_in_common_years(string setting, int day, string age)
    {
        // 2025 is a common year; born on 29 February 2016.
        await using var club = await SpringClub.StartAsync(day == 28 ? "2025-02-28T12:00" : "2025-03-01T12:00");
        await club.House.Club.SetAsync("ageOut.leapBirthday", setting, new DateOnly(2025, 1, 1), null, club.Head, club.Tablet, SpringClub.Stop);
        await club.House.Club.SetAsync("ageOut.leavingAge", "13", new DateOnly(2025, 1, 1), null, club.Head, club.Tablet, SpringClub.Stop);
        var child = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        await club.House.Writer.RunAsync(s => { s.Db.Enrolments.Single().From = new DateOnly(2025, 1, 1); s.Db.Enrolments.Single().CountsFrom = new DateOnly(2025, 1, 1); s.Db.SaveChanges(); return true; }, SpringClub.Stop);
        await club.House.People.ChangeDetailsAsync(child, new PersonDetails("Wren", "Hollis", null, new DateOnly(2016, 2, 29)), club.Head, club.Tablet, SpringClub.Stop);
        var page = await club.WordsAsync($"/students/{child}");
        Assert.Contains(age, page, StringComparison.Ordinal);
        Assert.Contains(setting == "1 March" ? "Turns 13 on 1 March 2029" : "Turns 13 on 28 February 2029", page, StringComparison.Ordinal);
    }

    private static Guid Test(SpringClub club, DateOnly day)
    {
        using var db = club.Db();
        return db.PromotionTests.Single(t => t.Date == day).Id;
    }

    [Fact]
    public async Task The_day_of_joining_from_a_list_is_not_called_the_first_lesson_until_a_mark_says_so()
    {
        await using var club = await SpringClub.StartAsync();
        var walk = new Import.ImportWalk(club.Browser);
        await walk.ReadAsync("roster.csv", System.Text.Encoding.UTF8.GetBytes("Given name,Family name,Date of birth,Joined\nIvo,Marsh,2016-04-12,2026-03-10\n"), "roster");
        await walk.SettleAsync();
        await walk.PostAsync("save");
        Guid child;
        using (var db = club.Db()) child = db.Enrolments.Single().PersonId;
        var words = await club.WordsAsync($"/students/{child}");
        Assert.Contains("Counted from the day of joining: joined on Tuesday 10 March 2026 by the list that was read in; no mark says which lesson was the first.", words, StringComparison.Ordinal);
        Assert.Contains("since joining", words, StringComparison.Ordinal);
        Assert.DoesNotContain("first lesson on", words, StringComparison.Ordinal);
        await club.MarkAsync(child, new DateOnly(2026, 3, 10), MarkKind.Present);
        words = await club.WordsAsync($"/students/{child}");
        Assert.Contains("Counted from this child's first lesson on Tuesday 10 March 2026.", words, StringComparison.Ordinal);
    }
}
