using Keikocho.Core.Safety;
using Keikocho.Store.Keeping;
using Keikocho.Store.Safety;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Marks;

/// <summary>A stand-down is entered, moved and lifted the same on both engines; none goes away.</summary>
public abstract class StandDownSpecification(StoreHost host) : StoreSpecification(host)
{
    private static readonly DateOnly Today = EvidenceClub.Today;

    [Fact, Statement(19)]
    public async Task Lifting_keeps_adult_day_and_reason_and_the_old_one_in_the_history()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var id = club.NewId();
        var asked = new NewStandDown(id, club.Wren, StandDownScope.NoFalls, new DateOnly(2026, 3, 10), new DateOnly(2026, 3, 17), "the family’s word");
        Assert.Equal(StandDownOutcome.Stored, await club.StandDowns.EnterAsync(asked, club.Head, club.Device, Cancel));
        Assert.Equal(StandDownOutcome.AlreadyStored, await club.StandDowns.EnterAsync(asked with { Scope = StandDownScope.OffTheMat }, club.Head, club.Device, Cancel));
        foreach (var (by, on, why, outcome) in new[]
        {
            (club.Leader, Today, "shown again", StandDownOutcome.NoAdult),
            (club.Bram, Today, "shown again", StandDownOutcome.NoAdult),
            (club.Head, Today, " ", StandDownOutcome.NotSaid),
            (club.Head, new DateOnly(2026, 3, 9), "shown again", StandDownOutcome.NotSaid),
        })
            Assert.Equal(outcome, await club.StandDowns.LiftAsync(id, club.Wren, by, on, why, Today, club.Head, club.Device, Cancel));
        Assert.Equal(StandDownOutcome.Unknown, await club.StandDowns.LiftAsync(id, club.Bram, club.Head, Today, "shown again", Today, club.Head, club.Device, Cancel));
        // Who enters it is an adult too: a teenager who holds the device does not lift in an adult's name.
        foreach (var hand in new[] { club.Leader, club.Bram })
            Assert.Equal(StandDownOutcome.NoAdult, await club.StandDowns.LiftAsync(id, club.Wren, club.Head, Today, "shown again", Today, hand, club.Device, Cancel));
        Assert.Null(Assert.Single(club.Evidence().StandDowns).LiftedOn);
        for (var sent = 0; sent < 2; sent++)
            Assert.Equal(sent == 0 ? StandDownOutcome.Stored : StandDownOutcome.AlreadyStored, await club.StandDowns.LiftAsync(id, club.Wren, club.Head, Today, " letter seen ", Today.AddDays(sent), club.Head, club.Device, Cancel));
        var kept = Assert.Single(club.Evidence().StandDowns);
        Assert.Equal(
            (StandDownScope.NoFalls, new DateOnly(2026, 3, 10), (DateOnly?)new DateOnly(2026, 3, 17), "the family’s word", (DateOnly?)Today, (Guid?)club.Head, "letter seen", (DateOnly?)Today),
            (kept.Scope, kept.From, kept.ReviewOn, kept.WhoseWord, kept.LiftedOn, kept.LiftedById, kept.LiftedWhy, kept.LiftEnteredOn));
        Assert.Equal(StandDownOutcome.Unknown, await club.StandDowns.MoveReviewAsync(id, club.Wren, Today.AddDays(9), club.Head, club.Device, Cancel));
        using var db = club.Engine.OpenDb();
        Assert.Equal([TrailKind.StandDownMade, TrailKind.StandDownChanged], db.Trail.Where(t => t.SubjectId == club.Wren && t.Kind != TrailKind.PersonAdded).OrderBy(t => t.Number).Select(t => t.Kind).ToList());
    }

    [Fact]
    public async Task Falls_done_while_it_stood_do_not_count_as_shown_again_by_a_lifting_entered_for_an_earlier_day()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        foreach (var day in new[] { 17, 19 })
            foreach (var stage in new[] { 1, 2, 3 }) await club.FallAsync(day, true, stage: stage);
        var id = club.NewId();
        await club.StandDowns.EnterAsync(new NewStandDown(id, club.Wren, StandDownScope.NoFalls, new DateOnly(2026, 3, 17), null, null), club.Head, club.Device, Cancel);
        Assert.Equal(StandDownOutcome.Stored, await club.StandDowns.LiftAsync(id, club.Wren, club.Head, new DateOnly(2026, 3, 17), "letter seen", Today, club.Head, club.Device, Cancel));
        Assert.Equal(0, club.Gates().Of(EvidenceClub.Back).OpenTo);

        // One that was entered before the day of entering was kept: the day of lifting is used as it is.
        using (var db = club.Engine.OpenDb())
        {
            db.StandDowns.Single().LiftEnteredOn = null;
            db.SaveChanges();
        }

        Assert.Equal(3, club.Gates().Of(EvidenceClub.Back).OpenTo);
    }

    [Fact, Statement(21)]
    public async Task A_review_day_that_has_passed_opens_nothing()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        await club.FallAsync(17, true, stage: 4);
        await club.FallAsync(19, true, stage: 4);
        Assert.Equal(4, club.Gates().Of(EvidenceClub.Back).OpenTo);
        var id = club.NewId();
        await club.StandDowns.EnterAsync(new NewStandDown(id, club.Wren, StandDownScope.NoFalls, new DateOnly(2026, 3, 12), new DateOnly(2026, 3, 19), null), club.Head, club.Device, Cancel);
        foreach (var tonight in new[] { Today, Today.AddYears(1) })
        {
            var held = Assert.Single(club.Evidence().StandDowns).ToStandDown(_ => null);
            var stands = StandDowns.Read(new StandDownsSnapshot(tonight, [held]));
            Assert.Equal((false, 1, 1), (stands.MayFall, stands.Standing.Count, stands.ForReview.Count));
            Assert.Equal(0, club.Gates(tonight: tonight).Of(EvidenceClub.Back).OpenTo);
        }

        Assert.Equal(StandDownOutcome.NotSaid, await club.StandDowns.MoveReviewAsync(id, club.Wren, new DateOnly(2026, 3, 1), club.Head, club.Device, Cancel));
        Assert.Equal(StandDownOutcome.Stored, await club.StandDowns.MoveReviewAsync(id, club.Wren, Today.AddDays(7), club.Head, club.Device, Cancel));
        Assert.Equal(Today.AddDays(7), Assert.Single(club.Evidence().StandDowns).ReviewOn);
    }
}

public sealed class StandDownsInSqlite() : StandDownSpecification(new SqliteHost());

public sealed class StandDownsInPostgres(PostgresDatabase database) : StandDownSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;
