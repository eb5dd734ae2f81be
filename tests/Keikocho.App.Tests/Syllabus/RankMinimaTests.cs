using Keikocho.App.Club;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Kernel;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Tests.Syllabus;

public sealed class RankMinimaTests
{
    [Fact]
    public async Task Without_an_edition_the_first_course_and_the_settings_hold()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinOfTheExampleAsync();
        Assert.Equal((14, 10), Asked(club, child));
    }

    [Fact]
    public async Task The_rank_that_a_child_is_tested_for_goes_before_the_settings()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinOfTheExampleAsync();
        await PublishAsync(club);
        Assert.Equal((9, 5), Asked(club, child));
        await WearAsync(club, child, 1);
        // Yellow asks 21 lessons and no weeks: what it says goes before the settings, zero too.
        Assert.Equal((21, 0), Asked(club, child));
    }

    [Fact]
    public async Task Figures_for_some_ages_hold_for_who_is_of_that_age_on_the_day_of_the_test()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinOfTheExampleAsync();
        await PublishAsync(club);
        await BornAsync(club, child, SpringClub.Test.AddYears(-10));
        Assert.Equal((6, 5), Asked(club, child));
        await BornAsync(club, child, SpringClub.Test.AddYears(-10).AddDays(1));
        Assert.Equal((9, 5), Asked(club, child));
    }

    [Fact]
    public async Task A_rank_that_says_nothing_of_time_and_the_top_of_the_ladder_leave_it_to_the_settings()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinOfTheExampleAsync();
        await PublishAsync(club, new Minima());
        await WearAsync(club, child, 1);
        Assert.Equal((14, 10), Asked(club, child));
        await WearAsync(club, child, 2);
        Assert.Equal((14, 10), Asked(club, child));
    }

    [Fact]
    public async Task The_first_course_is_that_of_the_rank_that_ends_it_and_the_childs_page_says_its_figures()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinOfTheExampleAsync();
        await PublishAsync(club);
        using (var reading = club.Reading())
        {
            var book = BookStore.Read(reading, new DateOnly(2026, 1, 1));
            Assert.Equal(9, ClubRules.Clock(book, book.Programmes[0], MatEnd.Beginners, club.Today).MinimumLessons);
            Assert.Equal(14, ClubRules.Clock(book, book.Programmes[0], MatEnd.Main, club.Today).MinimumLessons);
        }

        Assert.Contains("9", await club.WordsAsync($"/students/{child}"), StringComparison.Ordinal);
    }

    private static (int Lessons, int Weeks) Asked(SpringClub club, Guid child)
    {
        using var reading = club.Reading();
        var book = BookStore.Read(reading, new DateOnly(2026, 1, 1));
        var (programme, enrolment) = (book.Programmes[0], book.EnrolmentsOfPerson(child)[0]);
        var rule = ChildTime.Of(book, programme, enrolment, book.EditionOn(programme.LadderId, SpringClub.Test), SpringClub.Test, club.Today).Rule;
        return (rule.MinimumLessons, rule.MinimumWeeks);
    }

    private static async Task PublishAsync(SpringClub club, Minima? yellow = null)
    {
        var edition = new Edition(
            "Juniors", "edition 1", null,
            [
                new LadderRank("white", "White", null, "white", 0, new Minima(), []),
                new LadderRank("white-1", "White, one red tip", null, "white", 1, new Minima(9, 5, ForAges: [new MinimaForAges(new AgeBand(10), 6)]), [], FirstCourse: true),
                new LadderRank("yellow", "Yellow", null, "yellow", 0, yellow ?? new Minima(21), []),
            ],
            [], [], []);
        var begun = Assert.IsType<StartOutcome.Begun>(await club.House.Syllabus.StartAsync(club.Programme, edition, "Begun.", club.Head, club.Tablet, SpringClub.Stop));
        var outcome = await club.House.Syllabus.PublishAsync(begun.Draft, 1, "edition 1", SpringClub.FirstLesson, club.Today, club.Head, club.Tablet, SpringClub.Stop);
        Assert.IsType<PublishOutcome.Published>(outcome);
    }

    private static Task<bool> WearAsync(SpringClub club, Guid child, int rank) => club.House.Writer.RunAsync(session =>
    {
        session.Db.Awards.Add(new Keikocho.Store.Promotion.AwardRow
        {
            Club = session.Club,
            Id = session.NewId(),
            PersonId = child,
            LadderId = club.Ladder,
            RankId = club.Ranks[rank].Id,
            On = new DateOnly(2026, 1, rank),
            Source = Keikocho.Store.Promotion.AwardSource.Promoted,
            MadeAt = session.Now,
        });
        session.Db.SaveChanges();
        return true;
    }, SpringClub.Stop);

    private static Task<bool> BornAsync(SpringClub club, Guid child, DateOnly day) => club.House.Writer.RunAsync(session =>
    {
        session.Db.People.Single(p => p.Id == child).Born = Keikocho.Store.Kernel.Seal.Close(day);
        session.Db.SaveChanges();
        return true;
    }, SpringClub.Stop);
}
