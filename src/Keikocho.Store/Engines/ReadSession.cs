using System.Data.Common;
using System.Diagnostics;

namespace Keikocho.Store.Engines;

/// <summary>
/// What a page reads through: statements that are written out, on a connection of its own that is opened at the first of them. The
/// context would read the same, but its model and its first queries take a second, and the first page would wait for them.
/// </summary>
public sealed class ReadSession : IDisposable
{
    /// <summary>Name of the listener that hears of every statement, with its <see cref="DbCommand"/>.</summary>
    public const string ListenerName = "Keikocho.Store.Reading";

    /// <summary>Name of what it hears.</summary>
    public const string Sent = "Sent";

    private static readonly DiagnosticListener Listener = new(ListenerName);
    private readonly Engine engine;
    private DbConnection? connection;

    /// <summary>Opens nothing yet.</summary>
    internal ReadSession(Engine engine) => this.engine = engine;

    /// <summary>Number of the club.</summary>
    public int Club => engine.Club;

    /// <summary>Reads all rows of a statement. <c>@club</c> has its value without being named.</summary>
    internal List<T> Rows<T>(string text, Func<StoredRow, T> row, params ReadOnlySpan<(string Name, object? Value)> values)
    {
        connection ??= engine.OpenConnection();
        using var command = engine.Command(connection, null, text, [("@club", Club), .. values]);
        if (Listener.IsEnabled(Sent)) Listener.Write(Sent, command);
        using var reader = command.ExecuteReader();
        var stored = new StoredRow(engine, reader);
        var rows = new List<T>();
        while (stored.Next()) rows.Add(row(stored));
        return rows;
    }

    /// <inheritdoc/>
    public void Dispose() => connection?.Dispose();
}
