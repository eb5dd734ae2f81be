using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Calendar;
using Keikocho.Store.Evening;
using Keikocho.Store.Keeping;
using Keikocho.Store.Marks;
using Keikocho.Store.Safety;
using Keikocho.Store.Tests.Marks;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Calendar;

/// <summary>Closing an evening, what stands at a mat, and child-evenings, the same on both engines.</summary>
public abstract class ClosingSpecification(StoreHost host) : StoreSpecification(host)
{
    private static readonly DateOnly Today = EvidenceClub.Today;

    [Fact, Statement(25)]
    public async Task An_evening_is_not_closed_while_the_slip_of_a_knock_has_not_gone_home()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var closing = new ClosingStore(club.Writer);
        var evening = await EveningAsync(club, 24);
        var knock = await KnockAsync(club, 24);
        Assert.True(Assert.Single(Slips(club)).IsOpen);
        Assert.Equal(ClosingOutcome.SlipOpen, await closing.CloseAsync(evening, Today, club.Head, club.Device, Cancel));
        await LineAsync(club, knock, KnockLine.Seen);
        Assert.Equal(ClosingOutcome.SlipOpen, await closing.CloseAsync(evening, Today, club.Head, club.Device, Cancel));
        await LineAsync(club, knock, KnockLine.ToldByPhone);
        Assert.False(Assert.Single(Slips(club)).IsOpen);
        Assert.Equal(ClosingOutcome.Done, await closing.CloseAsync(evening, Today, club.Head, club.Device, Cancel));
        Assert.Equal(ClosingOutcome.AlreadySo, await closing.CloseAsync(evening, Today, club.Head, club.Device, Cancel));
    }

    [Fact]
    public async Task A_near_miss_a_knock_of_another_evening_and_one_of_the_wrong_child_keep_nothing_open()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        await KnockAsync(club, 24, nearMiss: true);
        await KnockAsync(club, 19);
        await LineAsync(club, await KnockAsync(club, 24), KnockLine.WrongChild);
        Assert.Equal(ClosingOutcome.Done, await new ClosingStore(club.Writer).CloseAsync(await EveningAsync(club, 24), Today, club.Head, club.Device, Cancel));
    }

    [Fact]
    public async Task An_evening_is_opened_again_with_trace_and_a_leader_does_neither()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var closing = new ClosingStore(club.Writer);
        var evening = await EveningAsync(club, 24);
        Assert.Equal(ClosingOutcome.NoAdult, await closing.CloseAsync(evening, Today, club.Leader, club.Device, Cancel));
        Assert.Equal(ClosingOutcome.AlreadySo, await closing.OpenAsync(evening, Today, club.Head, club.Device, Cancel));
        Assert.Equal(ClosingOutcome.Unknown, await closing.CloseAsync(evening, Today.AddDays(-1), club.Head, club.Device, Cancel));
        Assert.Equal(ClosingOutcome.Done, await closing.CloseAsync(evening, Today, club.Head, club.Device, Cancel));
        Assert.Equal(ClosingOutcome.NoAdult, await closing.OpenAsync(evening, Today, club.Leader, club.Device, Cancel));
        Assert.Equal(ClosingOutcome.Done, await closing.OpenAsync(evening, Today, club.Head, club.Device, Cancel));
        using var db = club.Engine.OpenDb();
        Assert.Null(db.Evenings.Single(e => e.Id == evening).ClosedAt);
        Assert.Equal([TrailKind.EveningClosed, TrailKind.EveningOpened], db.Trail.Where(t => t.SubjectId == evening).OrderBy(t => t.Number).Select(t => t.Kind).ToList());
    }

    [Fact]
    public async Task Marks_that_come_after_closing_are_taken()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        await new ClosingStore(club.Writer).CloseAsync(await EveningAsync(club, 24), Today, club.Head, club.Device, Cancel);
        Assert.Equal(EvidenceOutcome.Stored, (await club.SeeAsync(24, SeenWord.Good)).Outcome);
        using var reading = club.Engine.OpenReading();
        Assert.Contains(MarksOfLessons.Of(reading, [club.Lesson(24)]), m => m.Kind == MarkKind.Sighting && m.PersonId == club.Wren);
    }

    [Fact]
    public async Task What_stands_at_a_mat_is_added_once_and_removed()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var store = new ObstacleStore(club.Writer);
        Guid hall;
        using (var db = club.Engine.OpenDb()) hall = db.Halls.Single().Id;
        var pillar = new NewObstacle(club.NewId(), hall, " pillar ", 300, -50, 40, 60);
        Assert.True(await store.AddAsync(pillar, club.Head, club.Device, Cancel));
        Assert.True(await store.AddAsync(pillar with { Name = "else" }, club.Head, club.Device, Cancel));
        Assert.False(await store.AddAsync(pillar with { Id = club.NewId(), HallId = club.NewId() }, club.Head, club.Device, Cancel));
        using (var reading = club.Engine.OpenReading())
        {
            var row = Assert.Single(ObstacleReader.Of(reading, hall));
            Assert.Equal(("pillar", 300, -50, 40, 60), (row.Name, row.FromLengthCm, row.FromWidthCm, row.LengthCm, row.WidthCm));
        }

        Assert.True(await store.RemoveAsync(pillar.Id, club.Head, club.Device, Cancel));
        Assert.False(await store.RemoveAsync(pillar.Id, club.Head, club.Device, Cancel));
        using var again = club.Engine.OpenReading();
        Assert.Empty(ObstacleReader.Of(again, null));
    }

    [Fact]
    public async Task A_child_counts_once_an_evening_among_the_child_evenings()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        using var reading = club.Engine.OpenReading();
        using var db = club.Engine.OpenDb();
        var there = db.Attendances.Where(a => a.Word == AttendanceWord.Present || a.Word == AttendanceWord.Left).ToList();
        Assert.Equal(
            there.Where(a => db.Enrolments.Any(e => e.PersonId == a.PersonId)).Select(a => (a.PersonId, a.Date)).Distinct().Count(),
            PastStates.ChildEvenings(reading, new DateOnly(2026, 1, 1), Today));
    }

    [Fact]
    public async Task Whoever_marked_others_at_a_lesson_had_a_hand_in_it()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        await club.SeeAsync(24, SeenWord.Good, by: club.Leader);
        using var reading = club.Engine.OpenReading();
        Assert.Equal([(club.Leader, club.Lesson(24))], MarksOfLessons.HandsAt(reading, [club.Leader], Today, Today));
        Assert.Empty(MarksOfLessons.HandsAt(reading, [club.Leader], Today.AddDays(1), Today.AddDays(9)));
        Assert.Empty(MarksOfLessons.HandsAt(reading, [], Today, Today));
    }

    private static async Task<Guid> EveningAsync(EvidenceClub club, int day)
    {
        await using var db = club.Engine.OpenDb();
        var lesson = club.Lesson(day);
        return db.Lessons.Single(l => l.Id == lesson).EveningId;
    }

    private static async Task<Guid> KnockAsync(EvidenceClub club, int day, bool nearMiss = false)
    {
        var id = club.NewId();
        await club.Writer.RunAsync(session =>
        {
            session.Db.Knocks.Add(new KnockRow
            {
                Club = session.Club,
                Id = id,
                PersonId = club.Wren,
                LessonId = club.Lesson(day),
                On = new DateOnly(2026, 3, day),
                Activity = (int)KnockActivity.Game,
                NearMiss = nearMiss,
                MadeAt = session.Now,
            });
            session.Db.SaveChanges();
            return true;
        }, Cancel);
        return id;
    }

    private static Task<bool> LineAsync(EvidenceClub club, Guid knock, KnockLine kind) => club.Writer.RunAsync(session =>
    {
        session.Db.KnockLines.Add(new KnockLineRow { Club = session.Club, Id = club.NewId(), KnockId = knock, Kind = kind, ById = club.Head, DeviceId = club.Device, MadeAt = session.Now });
        session.Db.SaveChanges();
        return true;
    }, Cancel);

    private static IReadOnlyList<KnockSlip> Slips(EvidenceClub club)
    {
        using var reading = club.Engine.OpenReading();
        return KnockSlips.Between(reading, Today, Today);
    }
}

public sealed class ClosingInSqlite() : ClosingSpecification(new SqliteHost());

public sealed class ClosingInPostgres(PostgresDatabase database) : ClosingSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;
