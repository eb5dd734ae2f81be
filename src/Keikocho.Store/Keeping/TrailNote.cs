using Keikocho.Store.Engines;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Keeping;

/// <summary>One line of the trail in a transaction of its own, for work that is done on the whole club and not through the writer.</summary>
internal static class TrailNote
{
    /// <summary>Adds the line and says which instant it has.</summary>
    public static DateTimeOffset Add(Engine engine, TrailKind kind, DateTimeOffset now)
    {
        var at = DateTimeOffset.FromUnixTimeMilliseconds(now.ToUnixTimeMilliseconds());
        using var connection = engine.OpenConnection();
        using var transaction = engine.BeginWriting(connection);
        using var db = engine.OpenDb(connection);
        db.Database.UseTransaction(transaction);
        new WriteSession(db, at, transaction).Note(kind, null, null, null);
        transaction.Commit();
        return at;
    }
}
