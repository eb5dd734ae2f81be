#pragma warning disable EF1002, EF1003 // Only names of the model's own tables are put into statements.
using System.Globalization;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Testing;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace Keikocho.Store.Tests.Engines;

/// <summary>What is particular to a club in a SQLite file: settings of a connection, upgrades, files that are no clubs.</summary>
public sealed class SqliteFileTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 3, 3, 17, 30, 0, TimeSpan.Zero);
    private readonly TempFolder folder = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        folder.Dispose();
    }

    [Fact]
    public async Task A_pooled_connection_that_was_set_to_NORMAL_comes_back_as_FULL()
    {
        var engine = await ClubAsync();
        using (var db = engine.OpenDb())
        {
            await db.Database.OpenConnectionAsync(Cancel);
            await db.Database.ExecuteSqlRawAsync("PRAGMA synchronous=NORMAL; PRAGMA foreign_keys=OFF", Cancel);
            Assert.Equal(1, Ask(db.Database.GetDbConnection(), "PRAGMA synchronous"));
        }

        using (var db = engine.OpenDb())
        {
            await db.Database.OpenConnectionAsync(Cancel);
            AssertSafe(db.Database.GetDbConnection());
            await db.Database.ExecuteSqlRawAsync("PRAGMA synchronous=OFF", Cancel);
        }

        using var connection = engine.OpenConnection();
        AssertSafe(connection);
    }

    [Fact]
    public async Task Ids_lie_in_the_file_as_16_bytes_in_the_order_of_their_text()
    {
        var engine = await ClubAsync();
        var id = Guid.Parse("01957a2e-3b4c-7d5e-8f60-718293a4b5c6");
        using (var db = engine.OpenDb())
        {
            db.Halls.Add(new HallRow { Club = 1, Id = id, Name = "Hall" });
            await db.SaveChangesAsync(Cancel);
        }

        using var connection = engine.OpenConnection();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT hex(Id) FROM Halls";
        Assert.Equal("01957A2E3B4C7D5E8F60718293A4B5C6", command.ExecuteScalar());
    }

    [Fact]
    public async Task A_start_that_was_killed_in_an_upgrade_does_not_block_the_next()
    {
        var engine = await ClubAsync();
        // The table is the migration tool's own; its row is what a killed process leaves.
        Step(engine, "INSERT INTO \"__EFMigrationsLock\" VALUES (1, '2026-03-03 17:00:00')");
        Step(engine, "DELETE FROM \"__EFMigrationsHistory\"");
        await ForgetModelAsync(engine);
        var copy = await engine.UpgradeAsync(Now, Cancel).WaitAsync(TimeSpan.FromSeconds(30), Cancel);
        Assert.NotNull(copy);
        using var db = engine.OpenDb();
        Assert.Empty(await db.Database.GetPendingMigrationsAsync(Cancel));
        // The second start in the same second keeps a copy too, under another name.
        Step(engine, "DELETE FROM \"__EFMigrationsHistory\"");
        await ForgetModelAsync(engine);
        Assert.Equal(copy + "-2", await engine.UpgradeAsync(Now, Cancel));
    }

    [Fact]
    public async Task The_copy_that_is_kept_before_an_upgrade_is_complete()
    {
        var file = folder.File("old.keikocho");
        var engine = new SqliteEngine(file);
        using (var db = engine.OpenDb())
        {
            // A club as it was before this version: a table with rows, and no migration of ours.
            await db.Database.OpenConnectionAsync(Cancel);
            var history = db.GetService<IHistoryRepository>();
            await db.Database.ExecuteSqlRawAsync(
                $"PRAGMA journal_mode=WAL; PRAGMA application_id={SqliteEngine.ApplicationId}; {history.GetCreateScript()} "
                + "CREATE TABLE old_rows (n INTEGER); WITH RECURSIVE c(n) AS (SELECT 1 UNION ALL SELECT n+1 FROM c WHERE n < 5000) INSERT INTO old_rows SELECT n FROM c",
                Cancel);

            // Still open: much of it lies only in the log beside the file.
            var copy = await new SqliteEngine(file).UpgradeAsync(Now, Cancel);
            Assert.Equal(file + ".before-upgrade-20260303-173000", copy);
            using var connection = new SqliteConnection($"Data Source={copy};Mode=ReadOnly;Pooling=false");
            await connection.OpenAsync(Cancel);
            Assert.Equal(5000, Ask(connection, "SELECT count(*) FROM old_rows"));
            Assert.Equal(0, Ask(connection, "SELECT count(*) FROM __EFMigrationsHistory"));
            Assert.False(File.Exists(copy + "-wal"));
        }

        using var upgraded = engine.OpenDb();
        Assert.Empty(await upgraded.Database.GetPendingMigrationsAsync(Cancel));
    }

    [Fact]
    public async Task A_first_start_that_was_killed_before_it_signed_the_file_is_finished_by_the_next()
    {
        var engine = await ClubAsync();
        Step(engine, "PRAGMA application_id=0");
        await engine.UpgradeAsync(Now, Cancel);
        using var connection = engine.OpenConnection();
        Assert.Equal(SqliteEngine.ApplicationId, Ask(connection, "PRAGMA application_id"));
        Assert.Equal("wal", AskText(connection, "PRAGMA journal_mode"));
    }

    [Fact]
    public async Task While_another_process_upgrades_a_start_is_refused()
    {
        var file = folder.File("club.keikocho");
        using var held = new FileStream(file + ".upgrading", FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None);
        var refusal = await Assert.ThrowsAsync<StoreRefusal>(() => new SqliteEngine(file).UpgradeAsync(Now, Cancel));
        Assert.Contains("by another process", refusal.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0x12345678, "is a database of another program")]
    // Most programs sign nothing.
    [InlineData(0, "has a table bookmarks")]
    public async Task A_database_of_another_program_is_refused_and_not_touched(int applicationId, string says)
    {
        var file = folder.File("other.db");
        using (var connection = new SqliteConnection($"Data Source={file};Pooling=false"))
        {
            await connection.OpenAsync(Cancel);
            using var command = connection.CreateCommand();
            command.CommandText = $"PRAGMA application_id={applicationId.ToString(CultureInfo.InvariantCulture)}; CREATE TABLE bookmarks (n INTEGER)";
            await command.ExecuteNonQueryAsync(Cancel);
        }

        var before = await File.ReadAllBytesAsync(file, Cancel);
        var refusal = await Assert.ThrowsAsync<StoreRefusal>(() => new SqliteEngine(file).UpgradeAsync(Now, Cancel));
        Assert.Contains(says, refusal.Message, StringComparison.Ordinal);
        SqliteConnection.ClearAllPools();
        Assert.Equal(before, await File.ReadAllBytesAsync(file, Cancel));
    }

    [Fact]
    public async Task A_file_that_is_no_database_is_refused_with_the_verb_that_reads_it()
    {
        var file = folder.File("children.csv");
        await File.WriteAllTextAsync(file, "First name,Born\nKim,2017-03-03\n", Cancel);
        var refusal = await Assert.ThrowsAsync<StoreRefusal>(() => new SqliteEngine(file).UpgradeAsync(Now, Cancel));
        Assert.Contains("keikocho import children.csv", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_damaged_file_is_refused_in_words()
    {
        var engine = await ClubAsync();
        engine.Release();
        var file = engine.File;
        SqliteCopy.Make(file, folder.File("whole"));
        var bytes = await File.ReadAllBytesAsync(folder.File("whole"), Cancel);
        bytes.AsSpan(100, 60_000).Fill(0xA5);
        var damaged = folder.File("damaged.keikocho");
        await File.WriteAllBytesAsync(damaged, bytes, Cancel);
        await Assert.ThrowsAsync<StoreRefusal>(() => new SqliteEngine(damaged).UpgradeAsync(Now, Cancel));
    }

    [Fact]
    public async Task A_folder_is_refused()
    {
        var refusal = await Assert.ThrowsAsync<StoreRefusal>(() => new SqliteEngine(folder.Path).UpgradeAsync(Now, Cancel));
        Assert.Contains("is a folder", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_path_that_cannot_be_used_is_refused_in_words()
    {
        var file = folder.File("plain");
        await File.WriteAllTextAsync(file, "x", Cancel);
        var refusal = await Assert.ThrowsAsync<StoreRefusal>(() => new SqliteEngine(Path.Combine(file, "club.keikocho")).UpgradeAsync(Now, Cancel));
        Assert.Contains("Choose another folder", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_copy_into_a_folder_that_is_not_there_is_refused_in_words()
    {
        var engine = await ClubAsync();
        var refusal = Assert.Throws<StoreRefusal>(() => SqliteCopy.Make(engine.File, folder.File("none/copy")));
        Assert.Contains("could not be copied", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_copy_never_overwrites()
    {
        var engine = await ClubAsync();
        await File.WriteAllTextAsync(folder.File("precious"), "x", Cancel);
        Assert.Throws<StoreRefusal>(() => SqliteCopy.Make(engine.File, folder.File("precious")));
        Assert.Equal("x", await File.ReadAllTextAsync(folder.File("precious"), Cancel));
    }

    private async Task<SqliteEngine> ClubAsync()
    {
        var engine = new SqliteEngine(folder.File("club.keikocho"));
        await engine.UpgradeAsync(Now, Cancel);
        return engine;
    }

    /// <summary>Takes every table of the model away, so that the migration has its whole work to do again.</summary>
    private static async Task ForgetModelAsync(SqliteEngine engine)
    {
        using var db = engine.OpenDb();
        await db.Database.OpenConnectionAsync(Cancel);
        await db.Database.ExecuteSqlRawAsync("PRAGMA foreign_keys=OFF", Cancel);
        foreach (var table in db.Model.GetEntityTypes().Select(t => t.GetTableName()))
            await db.Database.ExecuteSqlRawAsync($"DROP TABLE \"{table}\"", Cancel);
    }

    private static void AssertSafe(System.Data.Common.DbConnection connection)
    {
        Assert.Equal(2, Ask(connection, "PRAGMA synchronous"));
        Assert.Equal(1, Ask(connection, "PRAGMA foreign_keys"));
        Assert.Equal("wal", AskText(connection, "PRAGMA journal_mode"));
    }

    private static void Step(SqliteEngine engine, string statement)
    {
        using var connection = engine.OpenConnection();
        using var command = connection.CreateCommand();
        command.CommandText = statement;
        command.ExecuteNonQuery();
    }

    private static long Ask(System.Data.Common.DbConnection connection, string question) => Convert.ToInt64(AskText(connection, question), CultureInfo.InvariantCulture);

    private static string AskText(System.Data.Common.DbConnection connection, string question)
    {
        using var command = connection.CreateCommand();
        command.CommandText = question;
        return Convert.ToString(command.ExecuteScalar(), CultureInfo.InvariantCulture)!;
    }
}
