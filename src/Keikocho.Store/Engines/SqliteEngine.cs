using System.Data;
using System.Data.Common;
using System.Globalization;
using System.Runtime.CompilerServices;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Engines;

/// <summary>One club in one SQLite file: WAL, <c>synchronous=FULL</c>, foreign keys on.</summary>
public sealed class SqliteEngine : Engine
{
    /// <summary>SQLite's application id of a club's file, set when it is made: "KEI1".</summary>
    public const int ApplicationId = 0x4B454931;

    private readonly string connectionText;
    // Made at the first context: the first page does without one, and loading all that it takes would make it wait.
    private readonly Lazy<DbContextOptions<SqliteKeikochoDb>> options;
    private readonly ConditionalWeakTable<DbConnection, DbContextOptions<SqliteKeikochoDb>> over = [];

    /// <summary>Names the file; opens nothing yet.</summary>
    /// <param name="file">Path of the club's file. It is made by <see cref="UpgradeAsync"/> where it does not exist.</param>
    public SqliteEngine(string file)
    {
        File = Path.GetFullPath(file);
        connectionText = new SqliteConnectionStringBuilder
        {
            DataSource = File,
            ForeignKeys = true,
            DefaultTimeout = 30,
            Pooling = true,
        }.ToString();
        options = new(() => new DbContextOptionsBuilder<SqliteKeikochoDb>()
            .UseSqlite(connectionText)
            .AddInterceptors(SqlitePragmas.Instance)
            .Options);
    }

    /// <summary>Full path of the club's file.</summary>
    public string File { get; }

    /// <inheritdoc/>
    public override int Club => 1;

    /// <inheritdoc/>
    public override string Place => File;

    /// <inheritdoc/>
    public override KeikochoDb OpenDb() => new SqliteKeikochoDb(options.Value, Club);

    /// <inheritdoc/>
    public override KeikochoDb OpenDb(DbConnection connection) =>
        // The writer's connection lives long: its options are made once.
        new SqliteKeikochoDb(over.GetValue(connection, static c => new DbContextOptionsBuilder<SqliteKeikochoDb>().UseSqlite(c).Options), Club);

    /// <inheritdoc/>
    public override object Stored(object value) => value switch
    {
        Guid id => id.ToByteArray(bigEndian: true),
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        _ => base.Stored(value),
    };

    /// <inheritdoc/>
    public override Guid ReadId(DbDataReader reader, int column)
    {
        ArgumentNullException.ThrowIfNull(reader);
        return new Guid(reader.GetFieldValue<byte[]>(column), bigEndian: true);
    }

    /// <inheritdoc/>
    public override DbConnection OpenConnection()
    {
        var connection = new SqliteConnection(connectionText);
        connection.Open();
        SqlitePragmas.Set(connection);
        return connection;
    }

    /// <inheritdoc/>
    public override DbTransaction BeginWriting(DbConnection connection) =>
        ((SqliteConnection)connection).BeginTransaction(IsolationLevel.Serializable, deferred: false);

    /// <inheritdoc/>
    public override async Task<string?> UpgradeAsync(DateTimeOffset now, CancellationToken cancel)
    {
        RefuseForeignFile();
        MakeFolder();
        try
        {
            var isNew = !System.IO.File.Exists(File) || new FileInfo(File).Length == 0;
            // The everyday start has nothing to do: it is told so without the migration tool, which costs half a second.
            if (!isNew && HasExactlyOurShape()) return null;
            using var db = OpenDb();
            if (!isNew)
            {
                RefuseForeignTables(db);
                await RefuseNewerAsync(db, File, cancel).ConfigureAwait(false);
                // Asked first and outside any lock: a start with nothing to do must not wait for anybody.
                if (!(await db.Database.GetPendingMigrationsAsync(cancel).ConfigureAwait(false)).Any() && IsSigned(db)) return null;
            }

            // Our own lock is a held file handle: the system frees it when the process dies, whatever killed it.
            using var held = HoldUpgrade();
            var copy = isNew || !HasHistory(db) ? null : KeepCopy(now);
            ClearStaleLock(db);
            await db.Database.MigrateAsync(cancel).ConfigureAwait(false);
            await db.Database.ExecuteSqlRawAsync("PRAGMA application_id=0x4B454931; PRAGMA journal_mode=WAL", cancel).ConfigureAwait(false);
            return copy;
        }
        catch (SqliteException cause)
        {
            throw new StoreRefusal($"{File} could not be opened or brought up to date: {cause.Message}", cause);
        }
    }

    /// <summary>Signed, and the migrations that it has are exactly those that this version knows.</summary>
    private bool HasExactlyOurShape()
    {
        using var connection = OpenConnection();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT (SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name = '__EFMigrationsHistory'), (SELECT application_id FROM pragma_application_id)";
        using (var reader = command.ExecuteReader())
        {
            if (!reader.Read() || reader.GetInt64(0) == 0 || reader.GetInt64(1) != ApplicationId) return false;
        }

        command.CommandText = "SELECT \"MigrationId\" FROM \"__EFMigrationsHistory\"";
        var applied = new HashSet<string>(StringComparer.Ordinal);
        using (var reader = command.ExecuteReader())
        {
            while (reader.Read()) applied.Add(reader.GetString(0));
        }

        return applied.SetEquals(KnownMigrations.Of(typeof(SqliteKeikochoDb)));
    }

    /// <summary>Frees the pooled connections, so that the file can be moved or deleted.</summary>
    public void Release() => SqliteConnection.ClearPool(new SqliteConnection(connectionText));

    /// <summary>Looks at the head of the file, where there is one, without opening it as a database.</summary>
    /// <exception cref="StoreRefusal">It is a folder, or the file is of another kind.</exception>
    public void RefuseForeignFile()
    {
        if (Directory.Exists(File)) throw new StoreRefusal($"{File} is a folder. Name a file, for example {Path.Combine(File, "club.keikocho")}.");
        if (!System.IO.File.Exists(File)) return;
        try
        {
            using var stream = System.IO.File.Open(File, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            if (stream.Length == 0) return;
            Span<byte> head = stackalloc byte[72];
            var read = stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
            // File format of SQLite: the text at 0, the application id big-endian at 68.
            if (read < 72 || !head[..16].SequenceEqual("SQLite format 3\0"u8))
                throw new StoreRefusal($"{File} is not a club's file. To read it into a club, use: keikocho import {Path.GetFileName(File)}");
            var id = System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(head[68..]);
            // 0: a first start that was killed before it was done, or another program that signs nothing: its tables tell.
            if (id is not (ApplicationId or 0)) throw new StoreRefusal($"{File} is a database of another program. Nothing was changed.");
        }
        catch (Exception cause) when (cause is UnauthorizedAccessException or IOException)
        {
            throw new StoreRefusal($"{File} cannot be opened: {cause.Message}", cause);
        }
    }

    private void MakeFolder()
    {
        var folder = Path.GetDirectoryName(File)!;
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception cause) when (cause is UnauthorizedAccessException or IOException)
        {
            throw new StoreRefusal($"The folder {folder} cannot be made: {cause.Message} Choose another folder.", cause);
        }
    }

    /// <summary>Most programs do not sign their SQLite files: an unsigned file with a table that no club has is not ours to change.</summary>
    private void RefuseForeignTables(KeikochoDb db)
    {
        if (IsSigned(db)) return;
        var ours = db.Model.GetEntityTypes().Select(t => t.GetTableName()!).ToHashSet(StringComparer.Ordinal);
        using var command = Ask(db, "SELECT name FROM sqlite_master WHERE type IN ('table', 'view')");
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            var name = reader.GetString(0);
            if (!ours.Contains(name) && !name.StartsWith("__EFMigrations", StringComparison.Ordinal) && !name.StartsWith("sqlite_", StringComparison.Ordinal))
                throw new StoreRefusal($"{File} is a database of another program (it has a table {name}). Nothing was changed.");
        }
    }

    private static bool IsSigned(KeikochoDb db) => Count(db, "PRAGMA application_id") == ApplicationId;

    private static bool HasHistory(KeikochoDb db) => Count(db, "SELECT count(*) FROM sqlite_master WHERE name='__EFMigrationsHistory'") > 0;

    private static long Count(KeikochoDb db, string question)
    {
        using var command = Ask(db, question);
        return Convert.ToInt64(command.ExecuteScalar(), CultureInfo.InvariantCulture);
    }

    private static DbCommand Ask(KeikochoDb db, string question)
    {
        if (db.Database.GetDbConnection().State != ConnectionState.Open) db.Database.OpenConnection();
        var command = db.Database.GetDbConnection().CreateCommand();
        command.CommandText = question;
        return command;
    }

    private FileStream HoldUpgrade()
    {
        try
        {
            return new FileStream(File + ".upgrading", FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1, FileOptions.DeleteOnClose);
        }
        catch (IOException cause)
        {
            throw new StoreRefusal($"{File} is being brought up to date by another process. Wait for it, then start again.", cause);
        }
        catch (UnauthorizedAccessException cause)
        {
            throw new StoreRefusal($"The folder of {File} cannot be written to. Choose another folder.", cause);
        }
    }

    private string KeepCopy(DateTimeOffset now)
    {
        var copy = FreeName($"{File}.before-upgrade-{now.UtcDateTime.ToString("yyyyMMdd-HHmmss", CultureInfo.InvariantCulture)}");
        SqliteCopy.Make(File, copy);
        return copy;
    }

    /// <summary>The name itself, or with -2, -3 ... behind it: a copy that is kept is never in the way of the next one.</summary>
    internal static string FreeName(string name)
    {
        var free = name;
        for (var number = 2; System.IO.File.Exists(free); number++) free = string.Create(CultureInfo.InvariantCulture, $"{name}-{number}");
        return free;
    }

    /// <summary>The migration tool's own lock is a row that a killed process leaves behind for ever; ours is held, so it is stale.</summary>
    private static void ClearStaleLock(KeikochoDb db)
    {
        if (Count(db, "SELECT count(*) FROM sqlite_master WHERE type='table' AND name='__EFMigrationsLock'") == 0) return;
        using var command = Ask(db, "DELETE FROM \"__EFMigrationsLock\"");
        command.ExecuteNonQuery();
    }
}
