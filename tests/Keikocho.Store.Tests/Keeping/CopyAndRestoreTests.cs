using Keikocho.Core.Evening;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Testing;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Tests.Keeping;

public sealed class CopyAndRestoreTests : StoreSpecification
{
    private readonly TempFolder folder;

    public CopyAndRestoreTests() : base(new SqliteHost()) => folder = ((SqliteHost)Host).Folder;

    [Fact, Statement(97)]
    public async Task A_copy_that_is_restored_matches_to_the_mark()
    {
        var club = (SqliteEngine)await FilledAsync();
        // Still open, with much of it only in the log beside the file.
        using var open = club.OpenDb();
        await open.Database.OpenConnectionAsync(Cancel);
        var made = await ClubCopy.MakeAsync(club, folder.File("copy"), Now, Cancel);
        Assert.Equal(new FileInfo(made.File).Length, made.Bytes);

        var restored = await RestoreClub.RunAsync(made.File, folder.File("new/again.keikocho"), Now.AddHours(1), Cancel);
        Assert.Null(restored.KeptFile);
        var again = new SqliteEngine(restored.File);
        AllRows.AssertEqual(club, again, but: typeof(TrailRow));
        using var before = club.OpenDb();
        using var after = again.OpenDb();
        Assert.Equal(
            (await before.Trail.Where(t => t.Kind != TrailKind.CopyMade || t.Number <= 2).OrderBy(t => t.Number).ToListAsync(Cancel)).Select(FilledRows.Said),
            (await after.Trail.Where(t => t.Number <= 2).OrderBy(t => t.Number).ToListAsync(Cancel)).Select(FilledRows.Said));
        Assert.Equal([TrailKind.Restored], await after.Trail.Where(t => t.Number > 2).Select(t => t.Kind).ToListAsync(Cancel));
        Assert.DoesNotContain((await CheckClub.RunAsync(again, _ => new AttendanceRules(), thorough: true, cancel: Cancel)).Problems, p => p.Part is CheckPart.Engine or CheckPart.Links or CheckPart.Trail);
        again.Release();
    }

    [Fact]
    public async Task A_restored_club_writes_ahead_and_durably()
    {
        var club = await FilledAsync();
        await ClubCopy.MakeAsync(club, folder.File("copy"), Now, Cancel);
        await RestoreClub.RunAsync(folder.File("copy"), folder.File("again"), Now, Cancel);
        using var connection = new SqliteEngine(folder.File("again")).OpenConnection();
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA journal_mode";
        Assert.Equal("wal", command.ExecuteScalar());
        command.CommandText = "PRAGMA synchronous";
        Assert.Equal(2L, command.ExecuteScalar());
    }

    [Fact]
    public async Task The_club_knows_when_the_last_copy_was_made()
    {
        var engine = await Host.EmptyAsync();
        using (var db = engine.OpenDb())
        {
            db.Clubs.Add(new Keikocho.Store.Club.ClubRow { Club = 1, Id = Guid.CreateVersion7(Now), MadeAt = Now });
            await db.SaveChangesAsync(Cancel);
            Assert.Null(await ClubCopy.LastAsync(db, Cancel));
        }

        await ClubCopy.MakeAsync(engine, folder.File("a"), Now, Cancel);
        await ClubCopy.MakeAsync(engine, folder.File("b"), Now.AddDays(9), Cancel);
        using var again = engine.OpenDb();
        Assert.Equal(Now.AddDays(9), await ClubCopy.LastAsync(again, Cancel));
    }

    [Fact]
    public async Task A_club_on_PostgreSQL_is_told_which_tool_copies_it()
    {
        await using var engine = new PostgresEngine("Host=db.example;Port=5433;Username=club;Password=hajime;Database=clubs");
        var refusal = await Assert.ThrowsAsync<StoreRefusal>(() => ClubCopy.MakeAsync(engine, folder.File("copy"), Now, Cancel));
        Assert.Contains("pg_dump --format=custom", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("--host=db.example --port=5433 --username=club --dbname=clubs", refusal.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("hajime", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_there_before_a_restore_is_kept_whole()
    {
        var old = (SqliteEngine)await FilledAsync();
        await ClubCopy.MakeAsync(old, folder.File("copy"), Now, Cancel);
        using (var db = old.OpenDb())
        {
            db.Halls.Add(new Keikocho.Store.Club.HallRow { Club = 1, Id = Guid.CreateVersion7(Now), Name = "Since the copy" });
            await db.SaveChangesAsync(Cancel);
        }

        var restored = await RestoreClub.RunAsync(folder.File("copy"), old.File, Now, Cancel);
        Assert.NotNull(restored.KeptFile);
        using (var kept = new SqliteEngine(restored.KeptFile).OpenDb()) Assert.True(await kept.Halls.AnyAsync(h => h.Name == "Since the copy", Cancel));
        using (var now = old.OpenDb()) Assert.False(await now.Halls.AnyAsync(h => h.Name == "Since the copy", Cancel));
        new SqliteEngine(restored.KeptFile).Release();
        Assert.False(File.Exists(old.File + ".restoring"));
    }

    [Fact]
    public async Task A_club_that_is_open_elsewhere_is_not_replaced()
    {
        var club = (SqliteEngine)await FilledAsync();
        await ClubCopy.MakeAsync(club, folder.File("copy"), Now, Cancel);
        using var elsewhere = new SqliteConnection($"Data Source={club.File};Pooling=false");
        await elsewhere.OpenAsync(Cancel);
        using var transaction = elsewhere.BeginTransaction();
        var refusal = await Assert.ThrowsAsync<StoreRefusal>(() => RestoreClub.RunAsync(folder.File("copy"), club.File, Now, Cancel));
        Assert.Contains("is in use", refusal.Message, StringComparison.Ordinal);
        Assert.False(File.Exists(club.File + ".restoring"));
    }

    [Fact]
    public async Task A_damaged_club_is_kept_as_it_is_and_replaced()
    {
        var club = (SqliteEngine)await FilledAsync();
        await ClubCopy.MakeAsync(club, folder.File("copy"), Now, Cancel);
        var damaged = folder.File("damaged.keikocho");
        var bytes = await File.ReadAllBytesAsync(folder.File("copy"), Cancel);
        bytes.AsSpan(100, 40_000).Fill(0x5A);
        await File.WriteAllBytesAsync(damaged, bytes, Cancel);
        var restored = await RestoreClub.RunAsync(folder.File("copy"), damaged, Now, Cancel);
        Assert.Equal(bytes, await File.ReadAllBytesAsync(restored.KeptFile!, Cancel));
        using var db = new SqliteEngine(damaged).OpenDb();
        Assert.Equal(2, await db.Marks.CountAsync(Cancel));
    }

    [Fact]
    public async Task A_damaged_copy_restores_nothing()
    {
        var club = (SqliteEngine)await FilledAsync();
        await ClubCopy.MakeAsync(club, folder.File("copy"), Now, Cancel);
        var bytes = await File.ReadAllBytesAsync(folder.File("copy"), Cancel);
        bytes.AsSpan(bytes.Length / 2, 30_000).Fill(0x5A);
        await File.WriteAllBytesAsync(folder.File("copy"), bytes, Cancel);
        await Assert.ThrowsAsync<StoreRefusal>(() => RestoreClub.RunAsync(folder.File("copy"), club.File, Now, Cancel));
        using var db = club.OpenDb();
        Assert.Equal(2, await db.Marks.CountAsync(Cancel));
        Assert.Empty(Directory.GetFiles(folder.Path, "*.restoring*"));
        Assert.Empty(Directory.GetFiles(folder.Path, "*.before-restore*"));
    }

    [Theory]
    [InlineData("not a database")]
    [InlineData("")]
    public async Task What_is_no_copy_of_a_club_restores_nothing(string content)
    {
        await File.WriteAllTextAsync(folder.File("other"), content, Cancel);
        var refusal = await Assert.ThrowsAsync<StoreRefusal>(() => RestoreClub.RunAsync(folder.File("other"), folder.File("new"), Now, Cancel));
        Assert.Contains("is not a copy of a club", refusal.Message, StringComparison.Ordinal);
        Assert.False(File.Exists(folder.File("new")));
    }
}
