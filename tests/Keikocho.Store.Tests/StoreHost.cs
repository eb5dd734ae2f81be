using Keikocho.Store.Engines;
using Keikocho.Testing;

namespace Keikocho.Store.Tests;

/// <summary>Makes empty clubs on one engine for the specifications that hold on both.</summary>
public abstract class StoreHost : IAsyncDisposable
{
    protected static readonly DateTimeOffset Now = new(2026, 3, 3, 17, 30, 0, 125, TimeSpan.Zero);

    public abstract Task<Engine> EmptyAsync();

    /// <summary>A place for a club that nothing was made in yet; on PostgreSQL one of several clubs.</summary>
    public abstract Task<Engine> FreshAsync();
    public abstract ValueTask DisposeAsync();
}

public sealed class SqliteHost : StoreHost
{
    private readonly List<SqliteEngine> made = [];

    public TempFolder Folder { get; } = new();

    public override async Task<Engine> EmptyAsync()
    {
        var engine = await FreshAsync();
        await engine.UpgradeAsync(Now, TestContext.Current.CancellationToken);
        return engine;
    }

    public override Task<Engine> FreshAsync()
    {
        var engine = new SqliteEngine(Folder.File($"club{made.Count}.keikocho"));
        made.Add(engine);
        return Task.FromResult<Engine>(engine);
    }

    public override ValueTask DisposeAsync()
    {
        foreach (var engine in made) engine.Release();
        Folder.Dispose();
        return ValueTask.CompletedTask;
    }
}

public sealed class PostgresHost(PostgresDatabase database) : StoreHost
{
    private readonly List<PostgresEngine> made = [];

    public override async Task<Engine> EmptyAsync()
    {
        await using (var template = new PostgresEngine(database.ConnectionString)) await template.UpgradeAsync(Now, TestContext.Current.CancellationToken);
        var engine = new PostgresEngine(await database.AnotherAsync(copy: true));
        made.Add(engine);
        return engine;
    }

    public override async Task<Engine> FreshAsync()
    {
        var engine = new PostgresEngine(await database.AnotherAsync(), 3);
        made.Add(engine);
        return engine;
    }

    public override async ValueTask DisposeAsync()
    {
        foreach (var engine in made) await engine.DisposeAsync();
    }
}

/// <summary>A specification of the store that holds on both engines; each engine has a class that derives from it.</summary>
public abstract class StoreSpecification(StoreHost host) : IAsyncDisposable
{
    protected static readonly DateTimeOffset Now = new(2026, 3, 3, 17, 30, 0, 125, TimeSpan.Zero);

    protected StoreHost Host { get; } = host;

    protected static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await Host.DisposeAsync();
        Ending();
        GC.SuppressFinalize(this);
    }

    /// <summary>What a specification has besides its clubs goes here.</summary>
    protected virtual void Ending()
    {
    }

    /// <summary>An empty club with one row of every table, all values there, and one with every value missing that may be.</summary>
    protected async Task<Engine> FilledAsync()
    {
        var engine = await Host.EmptyAsync();
        using var db = engine.OpenDb();
        db.AddRange(FilledRows.Of(db, engine.Club));
        await db.SaveChangesAsync(Cancel);
        return engine;
    }

    protected static void Execute(Engine engine, string statement)
    {
        using var connection = engine.OpenConnection();
        using var command = connection.CreateCommand();
        command.CommandText = statement;
        command.ExecuteNonQuery();
    }
}
