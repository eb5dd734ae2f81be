using System.Data.Common;
using Keikocho.Store.Keeping;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Engines;

/// <summary>What one piece of work writes through: a context, or commands of its own, inside one write transaction.</summary>
public sealed class WriteSession : IDisposable
{
    private readonly Engine engine;
    private readonly Dictionary<string, DbCommand>? prepared;
    private KeikochoDb? db;

    /// <summary>A session inside a transaction that the writer has begun.</summary>
    /// <param name="engine">The engine.</param>
    /// <param name="connection">The writer's connection.</param>
    /// <param name="transaction">The transaction on it.</param>
    /// <param name="now">The time of the write, in whole milliseconds of UTC.</param>
    /// <param name="prepared">Commands that the owner of the connection keeps for the next session; null to keep none.</param>
    internal WriteSession(
        Engine engine, DbConnection connection, DbTransaction transaction, DateTimeOffset now, Dictionary<string, DbCommand>? prepared = null)
    {
        this.engine = engine;
        this.prepared = prepared;
        Connection = connection;
        Transaction = transaction;
        Now = now;
    }

    /// <summary>A context inside the write transaction; made when it is first asked for, since a tap does without.</summary>
    public KeikochoDb Db
    {
        get
        {
            if (db is not null) return db;
            db = engine.OpenDb(Connection);
            db.Database.UseTransaction(Transaction);
            db.Database.AutoSavepointsEnabled = false;
            return db;
        }
    }

    /// <summary>The time of the write, in whole milliseconds of UTC.</summary>
    public DateTimeOffset Now { get; }

    /// <summary>The connection, for commands that bypass the context.</summary>
    public DbConnection Connection { get; }

    /// <summary>The transaction, for commands that bypass the context.</summary>
    public DbTransaction Transaction { get; }

    /// <summary>Number of the club.</summary>
    public int Club => engine.Club;

    /// <summary>
    /// A command inside the transaction, with the engine's own form of its values. It belongs to the session: nobody disposes it, since
    /// the writer keeps it, compiled, for the next tap.
    /// </summary>
    internal DbCommand Command(string text, params ReadOnlySpan<(string Name, object? Value)> values)
    {
        if (prepared is null || !prepared.TryGetValue(text, out var command))
        {
            command = engine.Command(Connection, Transaction, text, values);
            prepared?.Add(text, command);
            return command;
        }

        command.Transaction = Transaction;
        for (var i = 0; i < values.Length; i++) command.Parameters[i].Value = values[i].Value is { } value ? engine.Stored(value) : DBNull.Value;
        return command;
    }

    /// <summary>An id as this engine stores it, read from a column.</summary>
    public Guid ReadId(DbDataReader reader, int column)
    {
        ArgumentNullException.ThrowIfNull(reader);
        return engine.ReadId(reader, column);
    }

    /// <summary>The rows of a reader, column by column, as a <see cref="ReadSession"/> reads them.</summary>
    internal StoredRow Stored(DbDataReader reader) => new(engine, reader);

    /// <summary>A new id.</summary>
    public Guid NewId() => Guid.CreateVersion7(Now);

    /// <summary>Adds a line to the trail. Saves what the context holds so far.</summary>
    public void Note(TrailKind kind, Guid? subject, Guid? by, Guid? device, ReadOnlySpan<byte> said = default) =>
        TrailChain.Add(this, kind, subject, by, device, said);

    /// <inheritdoc/>
    public void Dispose() => db?.Dispose();
}
