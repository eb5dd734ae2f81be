using Keikocho.Store.Book;
using Keikocho.Store.Keeping;
using Keikocho.Store.Promotion;
using Keikocho.Store.Syllabus;
using Keikocho.Store.Tests.Marks;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Promotion;

/// <summary>Time taken off for one child and one rank: rows are only added and the newest holds, the same on both engines.</summary>
public abstract class TimeOffSpecification(StoreHost host) : StoreSpecification(host)
{
    private static readonly DateOnly On = new(2026, 3, 20);

    [Fact]
    public async Task The_newest_decision_of_a_child_and_a_rank_holds_and_a_later_one_ends_it()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var store = new TimeOffStore(club.Writer);
        var (ladder, yellow, orange) = await RanksAsync(club);
        var id = club.NewId();
        Task<TestOutcome> Decide(Guid command, Guid rank, int percent, string? why) => store.DecideAsync(command, club.Wren, rank, percent, why, On, club.Head, club.Device, Cancel);
        Assert.Equal(TestOutcome.Unknown, await Decide(club.NewId(), yellow, 0, null));
        Assert.Equal(TestOutcome.Stored, await Decide(id, yellow, 10, " a summer school "));
        Assert.Equal(TestOutcome.AlreadyStored, await Decide(id, yellow, 20, "twice"));
        // Two of one moment are in the order in which they were stored.
        Assert.Equal(TestOutcome.Stored, await Decide(club.NewId(), yellow, 20, "three years elsewhere"));
        var book = Book(club);
        var held = book.TimeOffOf(club.Wren, ladder, "yellow")!;
        Assert.Equal((20, "three years elsewhere", On, club.Head), (held.Percent, held.Why, held.On, held.ById));
        Assert.Equal(["a summer school", "three years elsewhere"], book.TimeOffsOf(club.Wren).Select(t => t.Why));
        Assert.Null(book.TimeOffOf(club.Wren, ladder, "orange"));
        Assert.Null(book.TimeOffOf(club.Bram, ladder, "yellow"));
        Assert.Equal(TestOutcome.Stored, await Decide(club.NewId(), orange, 5, "a contest"));
        Assert.Equal(TestOutcome.Stored, await Decide(club.NewId(), yellow, 0, null));
        Assert.Equal(TestOutcome.Unknown, await Decide(club.NewId(), yellow, 0, null));
        book = Book(club);
        Assert.Null(book.TimeOffOf(club.Wren, ladder, "yellow"));
        Assert.Equal(5, book.TimeOffOf(club.Wren, ladder, "orange")!.Percent);
        using var db = club.Engine.OpenDb();
        Assert.Equal([0, 5, 10, 20], db.TimeOffs.Select(t => t.Percent).ToList().Order());
        Assert.Equal(4, db.Trail.Count(t => t.Kind == TrailKind.TimeTakenOff && t.SubjectId == club.Wren && t.ById == club.Head));
    }

    [Fact]
    public async Task Without_a_reason_a_share_a_child_or_a_rank_nothing_is_stored()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var store = new TimeOffStore(club.Writer);
        var (_, yellow, _) = await RanksAsync(club);
        foreach (var (person, rank, percent, why, outcome) in new[]
        {
            (club.Wren, yellow, 10, " ", TestOutcome.NotSaid),
            (club.Wren, yellow, 101, "much", TestOutcome.NotSaid),
            (club.Wren, yellow, -1, "less than nothing", TestOutcome.NotSaid),
            (club.Device, yellow, 10, "nobody", TestOutcome.Unknown),
            (club.Wren, club.Device, 10, "no rank", TestOutcome.Unknown),
        })
            Assert.Equal(outcome, await store.DecideAsync(club.NewId(), person, rank, percent, why, On, club.Head, club.Device, Cancel));
        using var db = club.Engine.OpenDb();
        Assert.Empty(db.TimeOffs);
    }

    private static ClubBook Book(EvidenceClub club)
    {
        using var reading = club.Engine.OpenReading();
        return BookStore.Read(reading, EvidenceClub.First);
    }

    private static Task<(Guid Ladder, Guid Yellow, Guid Orange)> RanksAsync(EvidenceClub club) => club.Writer.RunAsync(session =>
    {
        var ladder = new LadderRow { Club = session.Club, Id = club.NewId(), Name = "Juniors" };
        session.Db.Ladders.Add(ladder);
        session.Db.SaveChanges();
        var ranks = new[] { "yellow", "orange" }.Select((key, i) => new RankRow { Club = session.Club, Id = club.NewId(), LadderId = ladder.Id, Key = key, Name = key, Position = i + 2 }).ToList();
        session.Db.Ranks.AddRange(ranks);
        session.Db.SaveChanges();
        return (ladder.Id, ranks[0].Id, ranks[1].Id);
    }, EvidenceClub.Cancel);
}

public sealed class TimeOffInSqlite() : TimeOffSpecification(new SqliteHost());

public sealed class TimeOffInPostgres(PostgresDatabase database) : TimeOffSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;
