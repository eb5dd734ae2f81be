using System.Data.Common;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Engines;

/// <summary>Everything that is particular to one database engine.</summary>
public abstract class Engine
{
    /// <summary>Number of the club.</summary>
    public abstract int Club { get; }

    /// <summary>Where the club lies, in words that a person understands and without a password.</summary>
    public abstract string Place { get; }

    /// <summary>A context with a connection of its own, for reading. Dispose it.</summary>
    public abstract KeikochoDb OpenDb();

    /// <summary>A connection for the writer: open, with this engine's settings.</summary>
    public abstract DbConnection OpenConnection();

    /// <summary>A context over a connection that somebody else owns.</summary>
    public abstract KeikochoDb OpenDb(DbConnection connection);

    /// <summary>Builds the context's model and its way of making queries, which the first query would wait for. Asks the database nothing.</summary>
    public void MakeContextReady()
    {
        using var db = OpenDb();
        db.Devices.AsNoTracking().Where(d => d.Id == Guid.Empty).ToQueryString();
    }

    /// <summary>A session for reading, with a connection of its own once it is needed. Dispose it.</summary>
    public ReadSession OpenReading() => new(this);

    /// <summary>A command with this engine's own form of its values.</summary>
    internal DbCommand Command(DbConnection connection, DbTransaction? transaction, string text, ReadOnlySpan<(string Name, object? Value)> values)
    {
        var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = text;
        foreach (var (name, value) in values)
        {
            var parameter = command.CreateParameter();
            parameter.ParameterName = name;
            parameter.Value = value is null ? DBNull.Value : Stored(value);
            command.Parameters.Add(parameter);
        }

        return command;
    }

    /// <summary>A value as this engine stores it; the same as the context would.</summary>
    public virtual object Stored(object value) => value switch
    {
        DateTimeOffset instant => instant.ToUnixTimeMilliseconds(),
        TimeOnly time => (short)(time.Hour * 60 + time.Minute),
        Enum word => Convert.ToInt32(word, System.Globalization.CultureInfo.InvariantCulture),
        _ => value,
    };

    /// <summary>An id from a column.</summary>
    public virtual Guid ReadId(DbDataReader reader, int column)
    {
        ArgumentNullException.ThrowIfNull(reader);
        return reader.GetGuid(column);
    }

    /// <summary>Begins a transaction that will write, so that it never fails later on a stale snapshot.</summary>
    public abstract DbTransaction BeginWriting(DbConnection connection);

    /// <summary>
    /// Brings the database to this version's shape. Does nothing when it has it already. A copy is kept first wherever something would
    /// be changed. A start that was killed in the middle does not block this one.
    /// </summary>
    /// <returns>The copy that was kept; null where nothing was changed or there was nothing to copy.</returns>
    /// <exception cref="StoreRefusal">The database is of a newer version, is not a club, or another process is upgrading it.</exception>
    public abstract Task<string?> UpgradeAsync(DateTimeOffset now, CancellationToken cancel);

    /// <summary>Throws when the database knows changes that this version does not.</summary>
    protected static async Task RefuseNewerAsync(KeikochoDb db, string place, CancellationToken cancel)
    {
        var known = db.Database.GetMigrations().ToHashSet(StringComparer.Ordinal);
        var applied = await db.Database.GetAppliedMigrationsAsync(cancel).ConfigureAwait(false);
        if (applied.FirstOrDefault(a => !known.Contains(a)) is { } newer)
            throw new StoreRefusal($"{place} was written by a newer version ({newer}). Open it with that version; nothing was changed.");
    }
}

/// <summary>The store refuses, and says in one sentence what, where and what to do. Nothing was changed.</summary>
public sealed class StoreRefusal : Exception
{
    /// <summary>Says the sentence.</summary>
    public StoreRefusal(string sentence) : base(sentence) { }
    /// <summary>Says the sentence and keeps the cause.</summary>
    public StoreRefusal(string sentence, Exception cause) : base(sentence, cause) { }
    /// <summary>For the runtime only.</summary>
    public StoreRefusal() { }
}
