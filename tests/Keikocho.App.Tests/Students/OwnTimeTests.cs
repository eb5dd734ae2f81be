using System.Globalization;
using Keikocho.App.Tests.Sightings;
using Keikocho.Core.Evening;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Calendar;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Promotion;
using Keikocho.Store.Syllabus;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Students;

/// <summary>
/// What a rank asks of time, from the published edition to the child's page. The child of the clock's example attended 12 of the 17 lessons
/// held by 14 May; where it is promoted on 2 April, 5 of the 7 held since.
/// </summary>
public sealed class OwnTimeTests
{
    private static readonly DateOnly Promotion = new(2026, 4, 2);

    public static TheoryData<string, Minima, string[]> Cases => new()
    {
        { "lessons since the last rank", new Minima(9), ["The rule asks for 9 lessons, 5 attended: 4 of the 4 lessons left before the test on Saturday 30 May 2026 are needed.", "5 of 9 lessons attended"] },
        {
            "over two ranks", new Minima(14, CountedOverTwoRanks: true),
            ["By the rule of this rank lessons count over two ranks: those from Tuesday 3 March 2026 on.", "The rule asks for 14 lessons, 12 attended: 2 of the 4 lessons left", "over two belts", "12 of 14 lessons attended"]
        },
        { "months that are full in time", new Minima(5, Months: 1), ["1 month from 2 April 2026 is full on 2 May 2026, in time for the test on Saturday 30 May 2026.", "Enough lessons"] },
        { "months that are not", new Minima(5, Months: 2), ["2 months from 2 April 2026 are full on 2 June 2026, after the test on Saturday 30 May 2026.", "Not this time"] },
        { "lessons of 75 minutes are long enough", new Minima(9, ShortestLessonMinutes: 75), ["Lessons shorter than 75 minutes do not count for this rank; none was.", "5 attended"] },
        {
            "and are not", new Minima(9, ShortestLessonMinutes: 90),
            ["Lessons shorter than 90 minutes do not count for this rank: in neither count are 21 Apr, 23 Apr, 28 Apr, 30 Apr, 5 May, 12 May and 14 May.", "0 of 9 lessons attended"]
        },
        { "a rank without figures still says which lessons count", new Minima(ShortestLessonMinutes: 90), ["Lessons shorter than 90 minutes do not count for this rank"] },
        { "age by calendar year", new Minima(5, Age: 10, AgeBy: AgeBasis.CalendarYear), ["Age 10 is asked, reckoned by calendar year: 10 at the test on Saturday 30 May 2026, in time."] },
        { "age by birthday", new Minima(5, Age: 10), ["Age 10 is asked, reckoned by birthday: 9 at the test on Saturday 30 May 2026, and 10 only from 20 September 2026.", "Not this time"] },
        { "other figures for an age", new Minima(9, Months: 1, ForAges: [new MinimaForAges(new AgeBand(To: 9), 4, Months: 2)]), ["2 months from 2 April 2026 are full on 2 June 2026, after the test", "5 of 4 lessons attended"] },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public async Task What_a_rank_asks_of_time_is_reckoned_and_said(string what, Minima yellow, string[] said)
    {
        await using var club = await SpringClub.StartAsync();
        var child = await PromotedAsync(club, yellow);
        var words = await club.WordsAsync($"/students/{child}");
        foreach (var sentence in said) Assert.True(words.Contains(sentence, StringComparison.Ordinal), $"{what}: {sentence}\n{words}");
    }

    [Fact]
    public async Task Of_two_lessons_of_one_day_as_many_count_as_the_rank_says()
    {
        foreach (var (aDay, attended) in new[] { (0, "6 of 9 lessons attended"), (1, "5 of 9 lessons attended") })
        {
            await using var club = await SpringClub.StartAsync();
            var child = await PromotedAsync(club, new Minima(9, LessonsADay: aDay));
            using (var db = club.Db())
            {
                var times = new LessonTimes(new TimeOnly(19, 0), new TimeOnly(20, 15), new TimeOnly(19, 10), new TimeOnly(19, 20), new TimeOnly(19, 40));
                await club.House.Calendar.AddHourAsync(new NewHour(club.Programme, db.Halls.Single().Id, DayOfWeek.Tuesday, times, new DateOnly(2026, 5, 5)), club.Head, club.Tablet, SpringClub.Stop);
            }

            Guid second;
            using (var db = club.Db()) second = db.Lessons.Single(l => l.Date == new DateOnly(2026, 5, 5) && l.Start == new TimeOnly(19, 0)).Id;
            await club.House.Marks.TapAsync(
                new Tap(Guid.CreateVersion7(club.Time.GetUtcNow()), club.Tablet, null, second, child, club.Head, club.Time.GetUtcNow(), MarkKind.Present, null), club.Today, new AttendanceRules(), SpringClub.Stop);
            var words = await club.WordsAsync($"/students/{child}");
            Assert.True(words.Contains(attended, StringComparison.Ordinal), words);
            Assert.Equal(aDay == 1, words.Contains("At most 1 lesson of one day counts", StringComparison.Ordinal));
        }
    }

    [Fact, Statement(100)]
    public async Task Time_off_is_an_instructors_decision_with_reason_day_and_name_and_ends_by_a_later_one()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await PromotedAsync(club, new Minima(10, 4, MostReductionPercent: 20));
        var page = $"/students/{child}";
        (string, string)[] Form(string percent, string why) => [("offRank", "yellow"), ("percent", percent), ("offWhy", why), ("offOn", "2026-05-12")];
        Assert.Contains("5 of 10 lessons attended", await club.WordsAsync(page), StringComparison.Ordinal);
        var refused = await club.RefusedAsync(page, $"{page}/time-off", Form("25", ""));
        Assert.Contains("This rank allows 20 % at most. Write 20 or less.", refused, StringComparison.Ordinal);
        Assert.Contains("The reason is missing: it stands with the figures from now on.", refused, StringComparison.Ordinal);
        Assert.Contains("Write how many percent", await club.RefusedAsync(page, $"{page}/time-off", Form("a few", "three years elsewhere")), StringComparison.Ordinal);

        var words = await club.TakenAsync(page, $"{page}/time-off", Form("20", "three years of judo elsewhere."));
        foreach (var said in new[]
        {
            "Decided: 20 % less time for Yellow.",
            "20 % of the least time is taken off, because three years of judo elsewhere, decided by Ruth Aldersey on 12 May 2026: 8 lessons instead of 10 and 4 weeks instead of 4.",
            "The rule asks for 8 lessons, 5 attended: 3 of the 4 lessons left",
            "5 of 8 lessons attended",
            "12 May 2026: 20 % less, because three years of judo elsewhere, decided by Ruth Aldersey.",
        })
            Assert.True(words.Contains(said, StringComparison.Ordinal), $"{said}\n{words}");
        var why = await club.WordsAsync($"/promotion-tests/{TestOf(club)}/children/{child}");
        Assert.Contains("20 % of the least time is taken off, because three years of judo elsewhere, decided by Ruth Aldersey on 12 May 2026.", why, StringComparison.Ordinal);

        // Whoever is no instructor reads it and decides nothing.
        var helper = await club.AddAdultAsync("Piet", "Vos", DutyKind.Assistant);
        await club.ActAsync(helper);
        Assert.Contains("An instructor decides this.", await club.TakenAsync(page, $"{page}/end-time-off", ("offRank", "yellow")), StringComparison.Ordinal);
        await club.ActAsync(club.Head);
        var ended = await club.TakenAsync(page, $"{page}/end-time-off", ("offRank", "yellow"));
        Assert.Contains("5 of 10 lessons attended", ended, StringComparison.Ordinal);
        Assert.Contains("14 May 2026: nothing is taken off any more, decided by Ruth Aldersey.", ended, StringComparison.Ordinal);
        using var db = club.Db();
        Assert.Equal([20, 0], db.TimeOffs.OrderBy(t => t.MadeAt).Select(t => t.Percent).ToList());
    }

    [Fact]
    public async Task An_older_starter_reads_of_the_rank_beyond_at_the_first_test_and_no_more_after_it()
    {
        await using var club = await SpringClub.StartAsync();
        var track = new FastTrack(9, 2, 1);
        await PublishAsync(club, new Minima(9, FastTrack: track), new Minima(30, FastTrack: track));
        var child = await club.JoinOfTheExampleAsync();
        await BornAsync(club, child, new DateOnly(2016, 9, 20));
        var words = await club.WordsAsync($"/students/{child}");
        Assert.Contains("Started at 9, and the rule is from 9: up to 2 ranks at one test, at the first 1 test; promoted at 0 tests before this one.", words, StringComparison.Ordinal);
        Assert.Matches("At the same test, by the rule for older starters Yellow , not this time: 12 of 30 lessons", words);
        await WearAsync(club, child, 1, Promotion);
        words = await club.WordsAsync($"/students/{child}");
        Assert.Contains("promoted at 1 test already, so one rank at a time from now on.", words, StringComparison.Ordinal);
        Assert.DoesNotContain("At the same test", words, StringComparison.Ordinal);
    }

    // Least ages and classes as a club prints them that follows the blocks of a US national body (read: docslib.org/doc/1169208), whose page
    // also gives reductions of up to 30 % of the time in grade. Of a second body's chart (read: usja.net/about/promotion, a note on the senior
    // chart): a class is at least one hour, and at most two a day count.
    private static readonly (string Name, int Age, int Classes)[] Printed =
    [
        ("10th kyu", 5, 7), ("9th kyu", 6, 14), ("8th kyu", 6, 20), ("7th kyu", 7, 20), ("6th kyu", 7, 20),
        ("5th kyu", 8, 32), ("4th kyu", 9, 40), ("3rd kyu", 10, 40), ("2nd kyu", 11, 52), ("1st kyu", 12, 52),
    ];

    [Fact]
    public async Task Printed_promotion_rules_are_reckoned_as_they_are_printed()
    {
        await using var club = await SpringClub.StartAsync();
        var ranks = Printed.Select((p, i) => new LadderRank($"kyu-{10 - i}", p.Name, null, null, 0, new Minima(p.Classes, Age: p.Age, LessonsADay: 2, ShortestLessonMinutes: 60, MostReductionPercent: 30), []));
        var rows = await PublishAsync(club, [new LadderRank("white", "White", null, "white", 0, new Minima(), []), .. ranks]);
        var child = await club.JoinOfTheExampleAsync();
        await BornAsync(club, child, new DateOnly(2016, 9, 20));
        for (var i = 0; i < Printed.Length; i++)
        {
            // Each rank below is known, and not its day: lessons count from the first one.
            if (i > 0) await WearAsync(club, child, rows[$"kyu-{11 - i}"], null);
            var (name, age, classes) = Printed[i];
            var words = await club.WordsAsync($"/students/{child}");
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"12 of {classes} lessons attended"), words, StringComparison.Ordinal);
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"Age {age} is asked, reckoned by birthday: 9 at the test"), words, StringComparison.Ordinal);
            Assert.Contains("Lessons shorter than 60 minutes do not count for this rank; none was.", words, StringComparison.Ordinal);
            Assert.Contains("At most 2 lessons of one day count", words, StringComparison.Ordinal);
            Assert.Equal(age <= 9 && classes <= 16, !words.Contains("Not this time", StringComparison.Ordinal));
            var less = await club.TakenAsync($"/students/{child}", $"/students/{child}/time-off", ("offRank", $"kyu-{10 - i}"), ("percent", "30"), ("offWhy", "a seminar and four contests"), ("offOn", "2026-05-12"));
            // 30 % less, a part of a class is a class.
            var left = (int)Math.Ceiling(classes * 0.7m);
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{left} lessons instead of {classes}."), less, StringComparison.Ordinal);
            Assert.Equal(age <= 9 && left <= 16, !less.Contains("Not this time", StringComparison.Ordinal));
        }
    }

    private static async Task<Guid> PromotedAsync(SpringClub club, Minima yellow)
    {
        await PublishAsync(club, new Minima(5), yellow);
        var child = await club.JoinOfTheExampleAsync();
        await BornAsync(club, child, new DateOnly(2016, 9, 20));
        await WearAsync(club, child, 1, Promotion);
        return child;
    }

    private static Task<Dictionary<string, Guid>> PublishAsync(SpringClub club, Minima first, Minima yellow) => PublishAsync(club,
    [
        new LadderRank("white", "White", null, "white", 0, new Minima(), []),
        new LadderRank("white-1", "White, one red tip", null, "white", 1, first, [], FirstCourse: true),
        new LadderRank("yellow", "Yellow", null, "yellow", 0, yellow, []),
    ]);

    private static async Task<Dictionary<string, Guid>> PublishAsync(SpringClub club, IReadOnlyList<LadderRank> ranks)
    {
        var begun = Assert.IsType<StartOutcome.Begun>(await club.House.Syllabus.StartAsync(
            club.Programme, new Edition("Juniors", "edition 1", null, ranks, [], [], []), "Begun.", club.Head, club.Tablet, SpringClub.Stop));
        var outcome = await club.House.Syllabus.PublishAsync(begun.Draft, 1, "edition 1", SpringClub.FirstLesson, club.Today, club.Head, club.Tablet, SpringClub.Stop);
        Assert.True(outcome is PublishOutcome.Published, (outcome as PublishOutcome.Refused)?.Sentences[0]);
        using var db = club.Db();
        return db.Ranks.ToList().Where(r => r.Position > 0).ToDictionary(r => r.Key, r => r.Id);
    }

    private static Task<RankOutcome> WearAsync(SpringClub club, Guid child, int rank, DateOnly on) =>
        club.House.People.RecordRankAsync(new NewRank(child, club.Ranks[rank].Id, on, AwardSource.Promoted), club.Head, club.Tablet, SpringClub.Stop);

    private static Task<bool> WearAsync(SpringClub club, Guid child, Guid rank, DateOnly? on) => club.House.Writer.RunAsync(session =>
    {
        session.Db.Awards.Add(new AwardRow
        {
            Club = session.Club,
            Id = session.NewId(),
            PersonId = child,
            LadderId = club.Ladder,
            RankId = rank,
            On = on,
            Source = AwardSource.Imported,
            MadeAt = session.Now,
        });
        session.Db.Clubs.Single().PeopleRevision++;
        session.Db.SaveChanges();
        return true;
    }, SpringClub.Stop);

    private static Task<bool> BornAsync(SpringClub club, Guid child, DateOnly day) => club.House.Writer.RunAsync(session =>
    {
        session.Db.People.Single(p => p.Id == child).Born = Seal.Close(day);
        session.Db.Clubs.Single().PeopleRevision++;
        session.Db.SaveChanges();
        return true;
    }, SpringClub.Stop);

    private static Guid TestOf(SpringClub club)
    {
        using var db = club.Db();
        return db.PromotionTests.Single(t => t.Date == SpringClub.Test).Id;
    }
}
