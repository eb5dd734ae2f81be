using Npgsql;
using Xunit;

namespace Keikocho.Testing;

/// <summary>
/// The PostgreSQL server that the tests may use: a throw-away one, named by <c>KEIKOCHO_TEST_POSTGRES</c>.
/// <c>./test</c> starts one; by hand: <c>export KEIKOCHO_TEST_POSTGRES="$(eng/postgres.sh start)"</c>.
/// </summary>
public static class PostgresServer
{
    /// <summary>The variable that holds the connection string of a role that may create databases.</summary>
    public const string Variable = "KEIKOCHO_TEST_POSTGRES";

    /// <summary>The server's connection string; null when there is none, and then its tests skip.</summary>
    public static string? ConnectionString { get; } = Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } text ? text : null;

    /// <summary>Skips the running test, by name, when there is no server.</summary>
    public static void SkipUnlessThere() =>
        Assert.SkipWhen(ConnectionString is null, $"no PostgreSQL server: {Variable} is not set (./test sets it where PostgreSQL is installed)");

    /// <summary>Creates a database, as a copy of <paramref name="template"/> where one is given, and gives its connection string.</summary>
    public static async Task<string> CreateDatabaseAsync(string? template = null)
    {
        SkipUnlessThere();
        var name = $"test_{Guid.CreateVersion7(DateTimeOffset.UtcNow):N}";
        await RunAsync(template is null ? $"CREATE DATABASE \"{name}\"" : $"CREATE DATABASE \"{name}\" TEMPLATE \"{template}\"");
        return new NpgsqlConnectionStringBuilder(ConnectionString) { Database = name }.ConnectionString;
    }

    /// <summary>Drops a database made here, whoever is still connected to it.</summary>
    public static async Task DropDatabaseAsync(string connectionString)
    {
        var name = new NpgsqlConnectionStringBuilder(connectionString).Database;
        await using (var connection = new NpgsqlConnection(connectionString))
        {
            NpgsqlConnection.ClearPool(connection);
        }

        await RunAsync($"DROP DATABASE IF EXISTS \"{name}\" WITH (FORCE)");
    }

    private static async Task RunAsync(string statement)
    {
        await using var source = NpgsqlDataSource.Create(ConnectionString!);
        await using var command = source.CreateCommand(statement);
        await command.ExecuteNonQueryAsync();
    }
}
