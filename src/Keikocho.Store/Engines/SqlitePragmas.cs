using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Keikocho.Store.Engines;

/// <summary>
/// Sets what must hold on every connection. <c>synchronous</c> belongs to a connection and a pooled one keeps what the last user set;
/// with less than FULL a power cut can take back a confirmed tap.
/// </summary>
internal sealed class SqlitePragmas : DbConnectionInterceptor
{
    public const string Text = "PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON; PRAGMA cache_size=-8000; PRAGMA temp_store=MEMORY;";

    public static SqlitePragmas Instance { get; } = new();

    public static void Set(DbConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = Text;
        command.ExecuteNonQuery();
    }

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData) => Set(connection);

    public override Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        Set(connection);
        return Task.CompletedTask;
    }
}
