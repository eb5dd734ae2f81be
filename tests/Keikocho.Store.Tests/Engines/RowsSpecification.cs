using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Marks;
using Keikocho.Testing;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Tests.Engines;

/// <summary>What goes in comes out, on both engines.</summary>
public abstract class RowsSpecification(StoreHost host) : StoreSpecification(host)
{
    [Fact]
    public async Task Every_row_type_gives_back_every_property()
    {
        var engine = await FilledAsync();
        using var db = engine.OpenDb();
        var wanted = FilledRows.Of(db, engine.Club).Select(FilledRows.Said).Order(StringComparer.Ordinal);
        var found = new List<string>();
        foreach (var type in db.Model.GetEntityTypes()) found.AddRange(AllOf(db, type.ClrType).Select(FilledRows.Said));
        Assert.Equal(wanted, found.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Every_property_of_a_filled_row_holds_something()
    {
        var engine = await Host.EmptyAsync();
        using var db = engine.OpenDb();
        var types = db.Model.GetEntityTypes().Count();
        foreach (var row in FilledRows.Of(db, engine.Club).Take(types))
        {
            var mapped = db.Model.FindEntityType(row.GetType())!.GetProperties().Select(p => p.Name).Order(StringComparer.Ordinal);
            Assert.Equal(FilledRows.Properties(row.GetType()).Select(p => p.Name).Order(StringComparer.Ordinal), mapped);
            foreach (var property in FilledRows.Properties(row.GetType()))
            {
                var empty = property.PropertyType.IsValueType ? Activator.CreateInstance(property.PropertyType) : null;
                Assert.False(Equals(property.GetValue(row), empty), $"{row.GetType().Name}.{property.Name} was left empty.");
            }
        }
    }

    [Fact]
    public async Task Instants_are_kept_to_the_millisecond_and_in_UTC()
    {
        var engine = await Host.EmptyAsync();
        var instant = new DateTimeOffset(2026, 3, 3, 18, 30, 0, 123, TimeSpan.FromHours(1)).AddTicks(4567);
        using (var db = engine.OpenDb())
        {
            db.Devices.Add(new DeviceRow { Club = 1, Id = Guid.CreateVersion7(Now), FirstSeenAt = instant });
            await db.SaveChangesAsync(Cancel);
        }

        using var again = engine.OpenDb();
        var read = (await again.Devices.SingleAsync(Cancel)).FirstSeenAt;
        Assert.Equal(new DateTimeOffset(2026, 3, 3, 17, 30, 0, 123, TimeSpan.Zero), read);
        Assert.Equal(TimeSpan.Zero, read.Offset);
        // The same instant said with another offset is found.
        Assert.Equal(1, await again.Devices.CountAsync(d => d.FirstSeenAt == read.ToOffset(TimeSpan.FromHours(-5)), Cancel));
    }

    [Fact]
    public async Task Times_are_kept_to_the_minute()
    {
        var engine = await FilledAsync();
        using var db = engine.OpenDb();
        var lesson = await db.Lessons.FirstAsync(Cancel);
        lesson.Start = new TimeOnly(23, 59, 59);
        lesson.End = new TimeOnly(0, 0);
        await db.SaveChangesAsync(Cancel);
        using var again = engine.OpenDb();
        var read = await again.Lessons.SingleAsync(l => l.Id == lesson.Id, Cancel);
        Assert.Equal(new TimeOnly(23, 59), read.Start);
        Assert.Equal(new TimeOnly(0, 0), read.End);
    }

    [Fact]
    public async Task Ids_are_ordered_as_their_text()
    {
        var engine = await Host.EmptyAsync();
        // The halves that a mixed-endian order would turn round.
        Guid[] ids = [.. new[] { "01000000-0200-7300-8000-000000000000", "00000001-0000-7000-8000-000000000000", "00000000-0100-7000-bfff-000000000000", "00000000-0001-7000-8000-ffffffffffff" }.Select(Guid.Parse)];
        using (var db = engine.OpenDb())
        {
            db.Devices.AddRange(ids.Select(id => new DeviceRow { Club = 1, Id = id, FirstSeenAt = Now }));
            await db.SaveChangesAsync(Cancel);
        }

        using var again = engine.OpenDb();
        Assert.Equal(ids.Select(i => i.ToString()).Order(StringComparer.Ordinal), (await again.Devices.OrderBy(d => d.Id).Select(d => d.Id).ToListAsync(Cancel)).Select(i => i.ToString()));
    }

    [Fact]
    public async Task A_row_that_points_to_nothing_is_refused()
    {
        var engine = await FilledAsync();
        using var db = engine.OpenDb();
        db.Evenings.Add(new EveningRow { Club = 1, Id = Guid.CreateVersion7(Now), Date = new DateOnly(2026, 3, 3), HallId = Guid.CreateVersion7(Now) });
        await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync(Cancel));
    }

    [Fact]
    public async Task A_row_that_another_points_to_is_not_deleted()
    {
        var engine = await FilledAsync();
        using var db = engine.OpenDb();
        db.Halls.Remove(await db.Halls.FirstAsync(h => db.Evenings.Any(e => e.HallId == h.Id), Cancel));
        await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync(Cancel));
    }

    [Fact]
    public async Task A_device_counts_each_mark_once()
    {
        var engine = await FilledAsync();
        using var db = engine.OpenDb();
        var mark = await db.Marks.AsNoTracking().FirstAsync(Cancel);
        db.Marks.Add(new MarkRow { Club = 1, Id = Guid.CreateVersion7(Now), DeviceId = mark.DeviceId, Sequence = mark.Sequence, LessonId = mark.LessonId, PersonId = mark.PersonId });
        await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync(Cancel));
    }

    [Theory]
    [InlineData("UPDATE \"Marks\" SET \"Code\" = 7")]
    [InlineData("DELETE FROM \"Marks\"")]
    [InlineData("UPDATE \"Trail\" SET \"Kind\" = 1")]
    [InlineData("DELETE FROM \"Trail\"")]
    public async Task Marks_and_the_trail_refuse_change_and_deletion(string statement)
    {
        var engine = await FilledAsync();
        var refusal = Assert.ThrowsAny<System.Data.Common.DbException>(() => Execute(engine, statement));
        Assert.Contains("append-only", refusal.Message, StringComparison.Ordinal);
        using var db = engine.OpenDb();
        Assert.Equal(2, await db.Marks.CountAsync(Cancel));
        Assert.Equal(2, await db.Trail.CountAsync(Cancel));
    }

    [Fact]
    public async Task Marks_and_the_trail_refuse_change_through_the_context_too()
    {
        var engine = await FilledAsync();
        using var db = engine.OpenDb();
        (await db.Marks.FirstAsync(Cancel)).Code = 99;
        await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync(Cancel));
        db.ChangeTracker.Clear();
        db.Trail.Remove(await db.Trail.FirstAsync(Cancel));
        await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync(Cancel));
    }

    [Fact]
    public async Task A_newer_database_is_refused_and_not_touched()
    {
        var engine = await Host.EmptyAsync();
        Execute(engine, "INSERT INTO \"__EFMigrationsHistory\" VALUES ('29991231000000_FromTheFuture', '99.0')");
        var refusal = await Assert.ThrowsAsync<StoreRefusal>(() => engine.UpgradeAsync(Now, Cancel));
        Assert.Contains("newer version (29991231000000_FromTheFuture)", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_upgrade_with_nothing_to_do_does_nothing()
    {
        var engine = await FilledAsync();
        Assert.Null(await engine.UpgradeAsync(Now, Cancel));
        Assert.Null(await engine.UpgradeAsync(Now, Cancel));
    }

    internal static IEnumerable<object> AllOf(KeikochoDb db, Type row)
    {
        var set = typeof(DbContext).GetMethod(nameof(DbContext.Set), 1, [])!.MakeGenericMethod(row).Invoke(db, null)!;
        return ((IEnumerable<object>)set).ToList();
    }
}

public sealed class RowsOnSqlite() : RowsSpecification(new SqliteHost());

public sealed class RowsOnPostgres(PostgresDatabase database) : RowsSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;
