using Keikocho.Core.Safety;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Keikocho.Store.Safety;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Marks;

/// <summary>Near misses: added, never changed, the same on both engines.</summary>
public abstract class NearMissSpecification(StoreHost host) : StoreSpecification(host)
{
    private static readonly DateOnly Day = new(2026, 3, 3);
    private static readonly Guid By = Guid.CreateVersion7(Now);

    [Fact]
    public async Task They_are_read_by_day_newest_first_and_the_same_id_again_changes_nothing()
    {
        var engine = await Host.EmptyAsync();
        await using var writer = new WriterQueue(engine, new FixedTime(Now));
        var store = new NearMissStore(writer);
        var first = new NewNearMiss(Guid.CreateVersion7(Now), Day, new TimeOnly(17, 50), KnockActivity.Game, " Ran into the radiator. ");
        Assert.Equal(KnockOutcome.Stored, await store.EnterAsync(first, Day, By, By, Cancel));
        Assert.Equal(KnockOutcome.AlreadyStored, await store.EnterAsync(first with { Words = "something else" }, Day, By, By, Cancel));
        Assert.Equal(KnockOutcome.Stored, await store.EnterAsync(new NewNearMiss(Guid.CreateVersion7(Now), Day.AddDays(-1), null, KnockActivity.Other, "Wet stairs."), Day, By, By, Cancel));
        foreach (var wrong in new[] { first with { Words = "  " }, first with { On = Day.AddDays(1) }, first with { Activity = (KnockActivity)77 }, first with { Words = new string('a', NearMissStore.LongestWords + 1) } })
            Assert.Equal(KnockOutcome.NotSaid, await store.EnterAsync(wrong with { Id = Guid.CreateVersion7(Now) }, Day, By, By, Cancel));
        using var reading = engine.OpenReading();
        Assert.Equal(["Ran into the radiator.", "Wet stairs."], NearMissReader.Between(reading, Day.AddDays(-1), Day).Select(n => n.Words));
        Assert.Equal((new TimeOnly(17, 50), KnockActivity.Game, By), NearMissReader.Between(reading, Day, Day).Select(n => (n.At!.Value, n.Activity, n.ById)).Single());
        Assert.Empty(NearMissReader.Between(reading, Day.AddDays(1), Day.AddDays(9)));
    }

    [Fact]
    public async Task The_database_refuses_to_change_one_or_to_take_it_out()
    {
        var engine = await Host.EmptyAsync();
        await using var writer = new WriterQueue(engine, new FixedTime(Now));
        await new NearMissStore(writer).EnterAsync(new NewNearMiss(Guid.CreateVersion7(Now), Day, null, KnockActivity.Game, "Ran into the radiator."), Day, By, By, Cancel);
        using (var db = engine.OpenDb())
        {
            db.NearMisses.Single().Words = Seal.Close("nothing happened");
            await Assert.ThrowsAnyAsync<Exception>(() => db.SaveChangesAsync(Cancel));
        }

        using (var db = engine.OpenDb())
        {
            db.NearMisses.Remove(db.NearMisses.Single());
            await Assert.ThrowsAnyAsync<Exception>(() => db.SaveChangesAsync(Cancel));
        }

        using var reading = engine.OpenReading();
        Assert.Equal("Ran into the radiator.", Assert.Single(NearMissReader.Between(reading, Day, Day)).Words);
    }
}

public sealed class NearMissesOnSqlite() : NearMissSpecification(new SqliteHost());

public sealed class NearMissesOnPostgres(PostgresDatabase database) : NearMissSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;
