using System.Data.Common;
using System.Globalization;
using System.Runtime.CompilerServices;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Keikocho.Store.Engines;

/// <summary>
/// One club of many in a PostgreSQL database. Every connection says which club it is for; row-level security lets it see no other.
/// </summary>
public sealed class PostgresEngine : Engine, IAsyncDisposable
{
    private readonly NpgsqlDataSource source;
    private readonly DbContextOptions<PostgresKeikochoDb> options;
    private readonly ConditionalWeakTable<DbConnection, DbContextOptions<PostgresKeikochoDb>> over = [];

    /// <summary>Names the database; opens nothing yet.</summary>
    public PostgresEngine(string connectionText, int club = 1)
    {
        Club = club;
        var parts = new NpgsqlConnectionStringBuilder(connectionText);
        Place = $"the PostgreSQL database {parts.Database} on {parts.Host}";
        DumpArguments = string.Create(
            CultureInfo.InvariantCulture, $"--host={parts.Host} --port={parts.Port} --username={parts.Username} --dbname={parts.Database}");
        // Said at connecting, so that a pooled connection never belongs to two clubs: each engine has a pool of its own.
        // Days that a statement makes text of look as in SQLite, whatever the server is set to.
        parts.Options = string.Create(CultureInfo.InvariantCulture, $"{parts.Options} -c keikocho.club={club} -c datestyle=ISO").Trim();
        source = NpgsqlDataSource.Create(parts.ConnectionString);
        options = new DbContextOptionsBuilder<PostgresKeikochoDb>().UseNpgsql(source).Options;
    }

    /// <inheritdoc/>
    public override int Club { get; }

    /// <inheritdoc/>
    public override string Place { get; }

    /// <summary>Where the database is, as PostgreSQL's own tools take it; without a password.</summary>
    internal string DumpArguments { get; }

    /// <inheritdoc/>
    public override KeikochoDb OpenDb() => new PostgresKeikochoDb(options, Club);

    /// <inheritdoc/>
    public override KeikochoDb OpenDb(DbConnection connection) =>
        new PostgresKeikochoDb(over.GetValue(connection, static c => new DbContextOptionsBuilder<PostgresKeikochoDb>().UseNpgsql(c).Options), Club);

    /// <inheritdoc/>
    public override DbConnection OpenConnection() => source.OpenConnection();

    /// <inheritdoc/>
    public override DbTransaction BeginWriting(DbConnection connection)
    {
        ArgumentNullException.ThrowIfNull(connection);
        return connection.BeginTransaction();
    }

    /// <inheritdoc/>
    public override async Task<string?> UpgradeAsync(DateTimeOffset now, CancellationToken cancel)
    {
        try
        {
            using var db = OpenDb();
            await RefuseNewerAsync(db, Place, cancel).ConfigureAwait(false);
            // PostgreSQL's own lock ends with its session. A copy is the database tool's work: see the backup command.
            await db.Database.MigrateAsync(cancel).ConfigureAwait(false);
            return null;
        }
        catch (NpgsqlException cause)
        {
            throw new StoreRefusal($"{Place} could not be opened or brought up to date: {cause.Message}", cause);
        }
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => source.DisposeAsync();
}
