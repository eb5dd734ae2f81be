using Keikocho.Testing;
using Npgsql;
using Xunit;

namespace Keikocho.Architecture.Tests.Fixtures;

public class PostgresDatabaseTests(PostgresDatabase database) : IClassFixture<PostgresDatabase>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Each_database_is_fresh_and_a_copy_is_a_copy()
    {
        await RunAsync(database.ConnectionString, "CREATE TABLE belt (word text NOT NULL); INSERT INTO belt VALUES ('黄帯')");

        var empty = await database.AnotherAsync();
        var copy = await database.AnotherAsync(copy: true);

        Assert.Equal(0L, await RunAsync(empty, "SELECT count(*) FROM pg_tables WHERE schemaname = 'public'"));
        Assert.Equal("黄帯", await RunAsync(copy, "SELECT word FROM belt"));
    }

    [Fact]
    public async Task The_databases_of_a_class_are_dropped_at_its_end()
    {
        PostgresServer.SkipUnlessThere();
        var other = new PostgresDatabase();
        await other.InitializeAsync();
        var name = new NpgsqlConnectionStringBuilder(other.ConnectionString).Database;
        Assert.Equal(1L, await CountAsync(name));

        await RunAsync(other.ConnectionString, "SELECT 1");
        await other.DisposeAsync();

        Assert.Equal(0L, await CountAsync(name));
    }

    private async Task<object?> CountAsync(string? name) =>
        await RunAsync(database.ConnectionString, $"SELECT count(*) FROM pg_database WHERE datname = '{name}'");

    private static async Task<object?> RunAsync(string connectionString, string statement)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync(Stop);
        await using var command = new NpgsqlCommand(statement, connection);
        return await command.ExecuteScalarAsync(Stop);
    }
}
