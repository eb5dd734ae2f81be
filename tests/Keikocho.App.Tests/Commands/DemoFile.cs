using Keikocho.App.Commands;
using Keikocho.Testing;
using Microsoft.Data.Sqlite;

namespace Keikocho.App.Tests.Commands;

/// <summary>The demo club of one day, written once by the verb; each test takes a copy.</summary>
public sealed class DemoFile : IAsyncLifetime
{
    private readonly TempFolder folder = new();

    /// <summary>How the verb ended.</summary>
    public Ended Written { get; private set; } = new(-1, "", "");

    /// <summary>Copies it into a folder.</summary>
    public string CopyTo(TempFolder target, string name = "club.keikocho")
    {
        ArgumentNullException.ThrowIfNull(target);
        File.Copy(folder.File("demo.keikocho"), target.File(name));
        return target.File(name);
    }

    /// <summary>A copy that a newer version seems to have changed.</summary>
    public string NewerTo(TempFolder target)
    {
        var file = CopyTo(target);
        Change(file, "INSERT INTO \"__EFMigrationsHistory\" VALUES ('99991231235959_Later', '99.0')");
        return file;
    }

    /// <summary>Changes a file behind the program's back, and leaves nothing in a log beside it.</summary>
    public static void Change(string file, string statement)
    {
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Pooling = false }.ToString());
        connection.Open();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // Constants of the tests.
        command.CommandText = statement;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }

    /// <inheritdoc/>
    public async ValueTask InitializeAsync() =>
        Written = await BuiltProgram.HereAsync("demo", folder.File("demo" + ClubFile.Ending), "--day", "2026-03-03");

    /// <inheritdoc/>
    public ValueTask DisposeAsync()
    {
        folder.Dispose();
        return ValueTask.CompletedTask;
    }
}
