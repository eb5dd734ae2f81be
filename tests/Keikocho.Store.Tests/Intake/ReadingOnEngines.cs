using System.Text;
using Keikocho.Store.Engines;
using Keikocho.Store.Intake;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Intake;

/// <summary>In a SQLite file.</summary>
public sealed class ReadingInSqlite : ReadingSpecification, IDisposable
{
    private readonly TempFolder folder = new();
    private readonly List<SqliteEngine> engines = [];

    protected override Task<Engine> FreshAsync()
    {
        var engine = new SqliteEngine(folder.File($"club{engines.Count}.keikocho"));
        engines.Add(engine);
        return Task.FromResult<Engine>(engine);
    }

    [Theory]
    [InlineData("messy-roster.xlsx")]
    [InlineData("messy-roster-comma-utf8.csv")]
    public async Task Values_of_columns_that_are_set_aside_are_nowhere_in_the_file(string file)
    {
        var engine = (SqliteEngine)await FreshAsync();
        await using var club = await ReadingClub.MakeAsync(engine);
        var id = await club.OpenAsync(file);
        Assert.False(Holds(engine, "asthma"));
        // Compressed bytes hide words from such a search, so what is packed is opened as well.
        Assert.DoesNotContain("asthma", Words(club, id), StringComparison.Ordinal);
        Assert.Contains("Ferriman", Words(club, id), StringComparison.Ordinal);
        await club.SettleAsync(id);
        await club.SaveAsync(id);
        Assert.False(Holds(engine, "asthma"));
        Assert.True(Holds(engine, "Ferriman"));
        Assert.True(club.Ask(db => db.Readings.Single().Tables is null));
    }

    [Fact]
    public async Task A_column_that_is_said_to_be_medical_goes_from_what_is_stored()
    {
        await using var club = await ReadingClub.MakeAsync(await FreshAsync());
        var id = await club.OpenAsync("r.csv", Encoding.UTF8.GetBytes("First name,Surname,Birth date,Good to know,Notes\nAda,Brook,2016-05-04,inhaler,asthma\n"));
        Assert.Contains("inhaler", Words(club, id), StringComparison.Ordinal);
        Assert.DoesNotContain("asthma", Words(club, id), StringComparison.Ordinal);
        await club.Readings.AnswerAsync(id, new Dictionary<string, string> { ["column:4"] = "Medical" }, null, null, TestContext.Current.CancellationToken);
        Assert.DoesNotContain("inhaler", Words(club, id), StringComparison.Ordinal);
        Assert.Contains(club.View(id).Notes, note => note.Contains("'Good to know'", StringComparison.Ordinal) && note.Contains("set aside", StringComparison.Ordinal));
    }

    public void Dispose()
    {
        foreach (var engine in engines) engine.Release();
        folder.Dispose();
    }

    private static string Words(ReadingClub club, Guid id) => club.Ask(db =>
    {
        var text = new StringBuilder();
        foreach (var sheet in ReadingReader.File(ReadingReader.Find(db, id)!)!.Sheets)
            for (var row = 1; row <= sheet.Rows; row++)
                for (var column = 1; column <= sheet.Width(row); column++) text.Append(sheet[row, column].Text).Append('\n');
        return text.ToString();
    });

    private static bool Holds(SqliteEngine engine, string word)
    {
        foreach (var part in new[] { engine.File, engine.File + "-wal" })
        {
            if (!File.Exists(part)) continue;
            using var stream = new FileStream(part, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            if (bytes.ToArray().AsSpan().IndexOf(Encoding.UTF8.GetBytes(word)) >= 0) return true;
        }

        return false;
    }
}

/// <summary>In a PostgreSQL database.</summary>
public sealed class ReadingInPostgres(PostgresDatabase database) : ReadingSpecification, IClassFixture<PostgresDatabase>, IAsyncDisposable
{
    private readonly List<PostgresEngine> engines = [];

    protected override async Task<Engine> FreshAsync()
    {
        var engine = new PostgresEngine(await database.AnotherAsync(), 3);
        engines.Add(engine);
        return engine;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var engine in engines) await engine.DisposeAsync();
    }
}
