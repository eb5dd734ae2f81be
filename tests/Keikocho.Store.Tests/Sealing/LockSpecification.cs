using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;
using Keikocho.Store.Sealing;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Sealing;

/// <summary>The club's lock and what it closes, the same on both engines.</summary>
public abstract class LockSpecification(StoreHost host) : StoreSpecification(host)
{
    protected const string Passphrase = "four plain words here";
    protected static readonly DateOnly Day = new(2026, 3, 3);

    private readonly FixedTime time = new(Now);
    private readonly TempFolder folder = new();

    protected override void Ending() => folder.Dispose();

    [Fact]
    public async Task A_lock_opens_by_its_passphrase_and_by_its_recovery_key_and_by_nothing_else()
    {
        var (engine, _) = await WithChildAsync();
        await using var writer = new WriterQueue(engine, time);
        using var locks = new LockStore(writer, engine, time);
        using var reading = engine.OpenReading();
        Assert.Equal(LockState.None, locks.Now(reading).State);
        var made = await locks.MakeAsync(Passphrase, null, Guid.CreateVersion7(Now), Cancel);
        Assert.Equal(LockOutcome.Done, made.Outcome);
        Assert.Equal(LockState.Open, locks.Now(reading).State);
        Assert.Equal(LockOutcome.NotNow, (await locks.MakeAsync("another good passphrase", null, Guid.CreateVersion7(Now), Cancel)).Outcome);
        Assert.Equal(LockState.Open, locks.Now(reading).State);

        locks.Shut();
        Assert.Equal((LockState.Locked, null), locks.Now(reading));
        Assert.Equal(LockOutcome.Done, (await locks.OpenAsync($" {Passphrase} ", Cancel)).Outcome);
        Assert.Equal(LockState.Open, locks.Now(reading).State);
        locks.Shut();
        Assert.Equal(LockOutcome.Done, (await locks.OpenAsync(made.RecoveryKey!.ToLowerInvariant().Replace('-', ' '), Cancel)).Outcome);
        Assert.Equal(LockState.Open, locks.Now(reading).State);
        locks.Shut();
        Assert.Equal(LockOutcome.Wrong, (await locks.OpenAsync("four plain words there", Cancel)).Outcome);
        time.Step(TimeSpan.FromSeconds(1));
        // A well-formed recovery key of somebody else.
        Assert.Equal(LockOutcome.Wrong, (await locks.OpenAsync(RecoveryKey.Make(), Cancel)).Outcome);
        Assert.Equal(LockState.Locked, locks.Now(reading).State);
        using var db = engine.OpenDb();
        var row = Assert.Single(db.Locks);
        Assert.Equal((1, 65_536, 3, 16, 16, 60, 60), (row.Form, row.MemoryKib, row.Passes, row.Salt.Length, row.RecoverySalt.Length, row.ByPassphrase.Length, row.ByRecovery.Length));
        Assert.NotEqual(row.Salt, row.RecoverySalt);
    }

    [Fact]
    public async Task After_each_wrong_one_the_wait_doubles_and_the_right_one_ends_it()
    {
        var (engine, _) = await WithChildAsync();
        await using var writer = new WriterQueue(engine, time);
        using var locks = new LockStore(writer, engine, time);
        await locks.MakeAsync(Passphrase, null, Guid.CreateVersion7(Now), Cancel);
        locks.Shut();
        for (var wait = 1; wait <= 4; wait *= 2)
        {
            var wrong = await locks.OpenAsync("not this one at all", Cancel);
            Assert.Equal((LockOutcome.Wrong, time.GetUtcNow().AddSeconds(wait)), (wrong.Outcome, wrong.NextAt));
            // Even the right one is not looked at before.
            Assert.Equal(LockOutcome.TooSoon, (await locks.OpenAsync(Passphrase, Cancel)).Outcome);
            time.Step(TimeSpan.FromSeconds(wait));
        }

        var two = await Task.WhenAll(locks.OpenAsync(Passphrase, Cancel), locks.OpenAsync(Passphrase, Cancel));
        Assert.Equal([LockOutcome.Done, LockOutcome.TooSoon], two.Select(a => a.Outcome));
        Assert.Equal(time.GetUtcNow().AddSeconds(1), (await locks.OpenAsync("wrong once more", Cancel)).NextAt);
    }

    [Fact]
    public async Task Another_passphrase_leaves_the_sizes_and_the_recovery_key_as_they_are()
    {
        var (engine, child) = await WithChildAsync();
        await using var writer = new WriterQueue(engine, time);
        using var locks = new LockStore(writer, engine, time);
        using var reading = engine.OpenReading();
        var made = await locks.MakeAsync(Passphrase, null, child, Cancel);
        await new SizeStore(writer).EnterAsync([new NewSize(child, Day, 24_500)], locks.Now(reading).Key!, child, child, Cancel);
        Assert.Equal(LockOutcome.NotLongEnough, (await locks.ChangeAsync(Passphrase, "short", null, child, Cancel)).Outcome);
        Assert.Equal(LockOutcome.Done, (await locks.ChangeAsync(made.RecoveryKey!, "quite another passphrase", null, child, Cancel)).Outcome);
        locks.Shut();
        Assert.Equal(LockOutcome.Wrong, (await locks.OpenAsync(Passphrase, Cancel)).Outcome);
        time.Step(TimeSpan.FromSeconds(1));
        Assert.Equal(LockOutcome.Done, (await locks.OpenAsync("quite another passphrase", Cancel)).Outcome);
        Assert.Equal(24_500, SizeReader.Newest(reading, [child], Day, locks.Now(reading).Key!)[child].Grams);
        locks.Shut();
        Assert.Equal(LockOutcome.Done, (await locks.OpenAsync(made.RecoveryKey!, Cancel)).Outcome);
    }

    [Fact]
    public async Task A_size_opens_only_with_its_own_key_for_its_own_child_and_row()
    {
        var (engine, child) = await WithChildAsync();
        await using var writer = new WriterQueue(engine, time);
        using var locks = new LockStore(writer, engine, time);
        using var reading = engine.OpenReading();
        await locks.MakeAsync(Passphrase, null, child, Cancel);
        var key = locks.Now(reading).Key!;
        var sizes = new SizeStore(writer);
        Assert.Equal(1, await sizes.EnterAsync([new NewSize(child, Day.AddDays(-9), 24_500), new NewSize(Guid.CreateVersion7(Now), Day, 1)], key, child, child, Cancel));
        await sizes.EnterAsync([new NewSize(child, Day, 25_000)], key, child, child, Cancel);
        // The same day again takes its place.
        await sizes.EnterAsync([new NewSize(child, Day, 25_250)], key, child, child, Cancel);
        Assert.Equal(new HeldSize(child, Day, 25_250), SizeReader.Newest(reading, [child], Day, key)[child]);
        Assert.Equal(new HeldSize(child, Day.AddDays(-9), 24_500), SizeReader.Newest(reading, [child], Day.AddDays(-1), key)[child]);

        using (var other = new OpenedLock(key.Id, key.ClubId, new byte[32])) Assert.Null(SizeReader.Newest(reading, [child], Day, other)[child].Grams);
        using (var db = engine.OpenDb())
        {
            var rows = db.Sizes.OrderBy(s => s.On).ToList();
            Assert.All(rows, r => Assert.Equal((1, 33), (r.Grams.Bytes[0], r.Grams.Bytes.Length)));
            Assert.Throws<InvalidDataException>(() => Seal.Open(rows[0].Grams));
            // Yesterday's bytes in today's row.
            rows[1].Grams = rows[0].Grams;
            await db.SaveChangesAsync(Cancel);
        }

        Assert.Equal(new HeldSize(child, Day, null), SizeReader.Newest(reading, [child], Day, key)[child]);
        locks.Shut();
        Assert.Throws<ObjectDisposedException>(() => SizeReader.Newest(reading, [child], Day, key));
        await Assert.ThrowsAsync<ObjectDisposedException>(() => sizes.EnterAsync([new NewSize(child, Day, 26_000)], key, child, child, Cancel));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task An_archive_carries_sealed_sizes_as_they_are_and_says_so_and_they_open_where_it_is_read_in(bool toOther)
    {
        var (engine, child) = await WithChildAsync();
        await using var writer = new WriterQueue(engine, time);
        using var locks = new LockStore(writer, engine, time);
        using var reading = engine.OpenReading();
        await locks.MakeAsync(Passphrase, null, child, Cancel);
        Assert.DoesNotContain("closed by the club's lock", (await Archive.WriteAsync(engine, folder.File("before"), Now, Cancel)).Note, StringComparison.Ordinal);
        await new SizeStore(writer).EnterAsync([new NewSize(child, Day, 24_500)], locks.Now(reading).Key!, child, child, Cancel);
        Assert.DoesNotContain((await CheckClub.RunAsync(engine, _ => new(), cancel: Cancel)).Problems, p => p.Part == CheckPart.Sealed);
        var manifest = await Archive.WriteAsync(engine, folder.File("club"), Now, Cancel);
        Assert.EndsWith("closed by the club's lock and are carried so, as \"sealed:\" with hexadecimal bytes: they open only with the club's passphrase or recovery key.", manifest.Note, StringComparison.Ordinal);
        var cell = (await File.ReadAllLinesAsync(folder.File("club/tables/Sizes.csv"), Cancel))[1];
        Assert.Matches(",sealed:01[0-9a-f]{64},", $",{cell},");
        Assert.DoesNotContain("24500", cell, StringComparison.Ordinal);

        await using var other = new SqliteHost();
        var to = toOther ? await other.EmptyAsync() : await Host.EmptyAsync();
        await Archive.ReadAsync(to, folder.File("club"), null, Cancel);
        Assert.DoesNotContain((await CheckClub.RunAsync(to, _ => new(), cancel: Cancel)).Problems, p => p.Part == CheckPart.Sealed);
        await using var there = new WriterQueue(to, time);
        using var lockThere = new LockStore(there, to, time);
        using var readingThere = to.OpenReading();
        Assert.Equal(LockState.Locked, lockThere.Now(readingThere).State);
        Assert.Equal(LockOutcome.Done, (await lockThere.OpenAsync(Passphrase, Cancel)).Outcome);
        Assert.Equal(24_500, SizeReader.Newest(readingThere, [child], Day, lockThere.Now(readingThere).Key!)[child].Grams);
    }

    protected async Task<(Engine Engine, Guid Child)> WithChildAsync()
    {
        var engine = await Host.EmptyAsync();
        await using var writer = new WriterQueue(engine, time);
        return (engine, await writer.RunAsync(s =>
        {
            s.Db.Clubs.Add(new Keikocho.Store.Club.ClubRow { Club = s.Club, Id = s.NewId(), Name = "Osier Quay", Zone = "Europe/London" });
            var child = new PersonRow { Club = s.Club, Id = s.NewId(), Given = Seal.Close("Wren"), MadeAt = s.Now };
            s.Db.People.Add(child);
            s.Db.SaveChanges();
            return child.Id;
        }, Cancel));
    }
}

public sealed class LockOnSqlite() : LockSpecification(new SqliteHost());

public sealed class LockOnPostgres(PostgresDatabase database) : LockSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>
{
    [Fact]
    public async Task Sizes_open_under_another_number_of_the_club_too()
    {
        using var folder = new TempFolder();
        var time = new FixedTime(Now);
        var (engine, child) = await WithChildAsync();
        await using var writer = new WriterQueue(engine, time);
        using var locks = new LockStore(writer, engine, time);
        using var reading = engine.OpenReading();
        await locks.MakeAsync(Passphrase, null, child, Cancel);
        await new SizeStore(writer).EnterAsync([new NewSize(child, Day, 24_500)], locks.Now(reading).Key!, child, child, Cancel);
        await Archive.WriteAsync(engine, folder.File("club.zip"), Now, Cancel);
        var text = ((Npgsql.NpgsqlConnection)((PostgresEngine)await Host.EmptyAsync()).OpenConnection()).ConnectionString;
        await using var seventh = new PostgresEngine(text, club: 7);
        await Archive.ReadAsync(seventh, folder.File("club.zip"), null, Cancel);
        await using var there = new WriterQueue(seventh, time);
        using var lockThere = new LockStore(there, seventh, time);
        using var readingThere = seventh.OpenReading();
        Assert.Equal(LockOutcome.Done, (await lockThere.OpenAsync(Passphrase, Cancel)).Outcome);
        Assert.Equal(24_500, SizeReader.Newest(readingThere, [child], Day, lockThere.Now(readingThere).Key!)[child].Grams);
    }
}
