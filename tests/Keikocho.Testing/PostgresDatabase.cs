using Npgsql;
using Xunit;

namespace Keikocho.Testing;

/// <summary>
/// A fresh, empty PostgreSQL database for one test class: <c>class MyTests(PostgresDatabase database) : IClassFixture&lt;PostgresDatabase&gt;</c>.
/// Without a server every test that asks for <see cref="ConnectionString"/> or <see cref="AnotherAsync"/> skips, by name.
/// All databases made here are dropped at the end of the class.
/// </summary>
public sealed class PostgresDatabase : IAsyncLifetime
{
    private readonly List<string> made = [];
    private string? connectionString;

    /// <summary>The database's connection string; skips the running test when there is no server.</summary>
    public string ConnectionString
    {
        get
        {
            PostgresServer.SkipUnlessThere();
            return connectionString ?? throw new InvalidOperationException("The database is used before the fixture was initialised.");
        }
    }

    /// <summary>One more fresh database, empty or (some 60 ms) a copy of this one as it stands; nobody may be connected to this one then.</summary>
    /// <param name="copy">True for a copy of this database.</param>
    public async Task<string> AnotherAsync(bool copy = false)
    {
        PostgresServer.SkipUnlessThere();
        string? template = null;
        if (copy)
        {
            template = new NpgsqlConnectionStringBuilder(ConnectionString).Database;
            await using var connection = new NpgsqlConnection(ConnectionString);
            NpgsqlConnection.ClearPool(connection);
        }

        var another = await PostgresServer.CreateDatabaseAsync(template);
        lock (made)
        {
            made.Add(another);
        }

        return another;
    }

    /// <inheritdoc />
    public async ValueTask InitializeAsync()
    {
        if (PostgresServer.ConnectionString is not null)
        {
            connectionString = await PostgresServer.CreateDatabaseAsync();
            made.Add(connectionString);
        }
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        foreach (var database in made)
        {
            await PostgresServer.DropDatabaseAsync(database);
        }
    }
}
