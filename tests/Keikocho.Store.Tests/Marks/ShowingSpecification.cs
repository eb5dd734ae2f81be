using Keikocho.Store.Evening;
using Keikocho.Store.Keeping;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Marks;

/// <summary>What an end worked on is stored, replaced and taken back the same on both engines.</summary>
public abstract class ShowingSpecification(StoreHost host) : StoreSpecification(host)
{
    [Fact]
    public async Task A_slot_holds_one_item_and_what_stood_there_before_is_taken_back()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var store = new ShowingStore(club.Writer);
        var (first, second) = (club.NewId(), club.NewId());
        Assert.Equal(ShowingOutcome.Stored, await store.ShowAsync(first, club.Lesson(17), 0, 1, club.Items[0], club.Head, club.Device, Cancel));
        Assert.Equal(ShowingOutcome.AlreadyStored, await store.ShowAsync(first, club.Lesson(17), 0, 1, club.Items[0], club.Head, club.Device, Cancel));
        Assert.Equal(ShowingOutcome.AlreadyStored, await store.ShowAsync(club.NewId(), club.Lesson(17), 0, 1, club.Items[0], club.Head, club.Device, Cancel));
        Assert.Equal(ShowingOutcome.Stored, await store.ShowAsync(second, club.Lesson(17), 0, 1, club.Items[1], club.Leader, club.Tablet, Cancel));
        Assert.Equal([(0, club.Items[1], 1)], Held(club));
        using var db = club.Engine.OpenDb();
        Assert.Equal(2, db.Showings.Count());
        Assert.Equal(2, db.Trail.Count(t => t.Kind == TrailKind.ShowingChanged));
    }

    [Fact]
    public async Task Ends_and_slots_are_apart_and_taking_back_leaves_the_row()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var store = new ShowingStore(club.Writer);
        foreach (var (end, slot, item) in new[] { (0, 1, 0), (0, 2, 1), (1, 1, 0) })
            Assert.Equal(ShowingOutcome.Stored, await store.ShowAsync(club.NewId(), club.Lesson(17), end, slot, club.Items[item], club.Head, club.Device, Cancel));
        Assert.Equal(ShowingOutcome.Stored, await store.ShowAsync(club.NewId(), club.Lesson(17), 0, 2, null, club.Head, club.Device, Cancel));
        Assert.Equal(ShowingOutcome.AlreadyStored, await store.ShowAsync(club.NewId(), club.Lesson(17), 0, 2, null, club.Head, club.Device, Cancel));
        Assert.Equal([(0, club.Items[0], 1), (1, club.Items[0], 1)], Held(club));
        using var db = club.Engine.OpenDb();
        Assert.Equal(3, db.Showings.Count());
    }

    [Fact]
    public async Task What_is_not_there_changes_nothing()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var store = new ShowingStore(club.Writer);
        foreach (var (lesson, end, slot, item) in new[] { (club.NewId(), 0, 1, club.Items[0]), (club.Lesson(17), 2, 1, club.Items[0]), (club.Lesson(17), 0, 0, club.Items[0]), (club.Lesson(17), 0, 1, club.NewId()) })
            Assert.Equal(ShowingOutcome.Unknown, await store.ShowAsync(club.NewId(), lesson, end, slot, item, club.Head, club.Device, Cancel));
        using var db = club.Engine.OpenDb();
        Assert.False(db.Showings.Any());
        Assert.Empty(Held(club));
    }

    private static List<(int End, Guid Item, int Slot)> Held(EvidenceClub club)
    {
        Guid programme;
        using (var db = club.Engine.OpenDb()) programme = db.Programmes.Single().Id;
        using var reading = club.Engine.OpenReading();
        var held = ShowingReader.Of(reading, programme, EvidenceClub.First, EvidenceClub.Today);
        Assert.All(held, h => Assert.Equal(new DateOnly(2026, 3, 17), h.On));
        return [.. held.Select(h => (h.End, h.ItemId, h.Slot))];
    }
}

public sealed class ShowingsInSqlite() : ShowingSpecification(new SqliteHost());

public sealed class ShowingsInPostgres(PostgresDatabase database) : ShowingSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;
