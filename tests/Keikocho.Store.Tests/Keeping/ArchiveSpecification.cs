#pragma warning disable CA2100, EF1002 // Only names that the test itself made are put into statements.
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Keeping.OpenArchive;
using Keikocho.Store.Tests.Engines;
using Keikocho.Testing;
using Npgsql;

namespace Keikocho.Store.Tests.Keeping;

/// <summary>A club leaves as plain files and comes in again, on both engines.</summary>
public abstract class ArchiveSpecification(StoreHost host) : StoreSpecification(host)
{
    private readonly TempFolder folder = new();

    protected override void Ending() => folder.Dispose();

    [Theory]
    [InlineData("club.zip")]
    [InlineData("club")]
    public async Task A_club_read_in_is_equal_row_by_row(string name)
    {
        var from = await FilledAsync();
        await Archive.WriteAsync(from, folder.File(name), Now, Cancel);
        var to = await Host.EmptyAsync();
        await Archive.ReadAsync(to, folder.File(name), noteAt: null, Cancel);
        AllRows.AssertEqual(from, to);
    }

    [Fact]
    public async Task From_SQLite_to_here_and_out_again_the_files_are_the_same_byte_for_byte()
    {
        await using var other = new SqliteHost();
        var from = await other.EmptyAsync();
        using (var db = from.OpenDb())
        {
            db.AddRange(FilledRows.Of(db, from.Club));
            await db.SaveChangesAsync(Cancel);
        }

        await Archive.WriteAsync(from, folder.File("first"), Now, Cancel);
        var here = await Host.EmptyAsync();
        await Archive.ReadAsync(here, folder.File("first"), noteAt: null, Cancel);
        await Archive.WriteAsync(here, folder.File("second"), Now.AddDays(1), Cancel);
        AllRows.AssertEqual(from, here);

        var names = Names(folder.File("first"));
        Assert.Equal(names, Names(folder.File("second")));
        foreach (var name in names)
        {
            var first = await File.ReadAllTextAsync(Path.Combine(folder.File("first"), name), Cancel);
            var second = await File.ReadAllTextAsync(Path.Combine(folder.File("second"), name), Cancel);
            if (name == ArchiveManifest.FileName) (first, second) = (WithoutMadeAt(first), WithoutMadeAt(second));
            Assert.Equal(first, second);
        }
    }

    [Fact]
    public async Task Reading_in_is_noted_where_it_is_asked_for_and_the_chain_goes_on()
    {
        await Archive.WriteAsync(await FilledAsync(), folder.File("club.zip"), Now, Cancel);
        var to = await Host.EmptyAsync();
        await Archive.ReadAsync(to, folder.File("club.zip"), Now, Cancel);
        using var db = to.OpenDb();
        var last = db.Trail.OrderBy(t => t.Number).Last();
        Assert.Equal((3, TrailKind.Restored, Now), (last.Number, last.Kind, last.At));
        Assert.DoesNotContain((await CheckClub.RunAsync(to, _ => new(), cancel: Cancel)).Problems, p => p.Part == CheckPart.Trail);
    }

    [Fact]
    public async Task The_club_s_number_is_in_no_file()
    {
        await Archive.WriteAsync(await FilledAsync(), folder.File("club"), Now, Cancel);
        foreach (var name in Names(folder.File("club")).Where(n => n.StartsWith("tables/", StringComparison.Ordinal)))
            Assert.DoesNotContain("Club", File.ReadLines(Path.Combine(folder.File("club"), name)).First().Split(','));
    }

    [Fact]
    public async Task A_club_is_never_read_into_another()
    {
        await Archive.WriteAsync(await FilledAsync(), folder.File("club.zip"), Now, Cancel);
        var refusal = await Assert.ThrowsAsync<StoreRefusal>(async () => await Archive.ReadAsync(await FilledAsync(), folder.File("club.zip"), null, Cancel));
        Assert.Contains("already holds a club", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_empty_club_has_nothing_to_write()
    {
        var refusal = await Assert.ThrowsAsync<StoreRefusal>(async () => await Archive.WriteAsync(await Host.EmptyAsync(), folder.File("club.zip"), Now, Cancel));
        Assert.Contains("holds no club yet", refusal.Message, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(folder.Path));
    }

    [Fact]
    public async Task What_exists_is_never_written_over()
    {
        await File.WriteAllTextAsync(folder.File("club.zip"), "precious", Cancel);
        await Assert.ThrowsAsync<StoreRefusal>(async () => await Archive.WriteAsync(await FilledAsync(), folder.File("club.zip"), Now, Cancel));
        Assert.Equal("precious", await File.ReadAllTextAsync(folder.File("club.zip"), Cancel));
    }

    [Fact]
    public async Task Every_cell_that_does_not_fit_is_named_by_file_line_and_column_and_nothing_is_read_in()
    {
        await Archive.WriteAsync(await FilledAsync(), folder.File("club"), Now, Cancel);
        var to = await Host.EmptyAsync();
        async Task RefusedAsync(string file, string old, string changed, string says)
        {
            await EditAsync(file, old, changed);
            var refusal = await Assert.ThrowsAsync<StoreRefusal>(() => Archive.ReadAsync(to, folder.File("club"), null, Cancel));
            Assert.Contains(says, refusal.Message, StringComparison.Ordinal);
            using (var db = to.OpenDb()) foreach (var type in db.Model.GetEntityTypes()) Assert.Empty(RowsSpecification.AllOf(db, type.ClrType));
            await EditAsync(file, changed, old);
        }

        var lines = await File.ReadAllLinesAsync(Path.Combine(folder.File("club"), "tables/Families.csv"), Cancel);
        var id = lines[1].Split(',')[0];
        await RefusedAsync("tables/Families.csv", "true", "yes", "tables/Families.csv, line 2, column TogetherAsked: \"yes\" is neither true nor false");
        await RefusedAsync("tables/Families.csv", id, id.ToUpperInvariant(), "tables/Families.csv, line 2, column Id");
        await RefusedAsync("tables/Families.csv", "TogetherAsked", "Nickname", "a column \"Nickname\" that this version does not know");
        await RefusedAsync("tables/Families.csv", lines[1], lines[1] + ",1", "line 2 has 3 cells and the header has 2");
        await RefusedAsync("tables/Families.csv", lines[1], lines[1] + "\r\n\"open", "quotation mark is never closed");
        await RefusedAsync("tables/Families.csv", lines[1] + "\r\n", "", "has 1 rows and the manifest says 2");
        // A family that its member points to.
        await RefusedAsync("tables/Families.csv", id, "00000000-0000-7000-8000-000000000001", "tables/FamilyMembers.csv");
        await Archive.ReadAsync(to, folder.File("club"), null, Cancel);
    }

    [Fact]
    public async Task A_file_that_was_changed_or_taken_away_is_refused()
    {
        await Archive.WriteAsync(await FilledAsync(), folder.File("club"), Now, Cancel);
        var to = await Host.EmptyAsync();
        var path = Path.Combine(folder.File("club"), "tables/People.csv");
        var bytes = await File.ReadAllBytesAsync(path, Cancel);
        bytes[^5] ^= 1;
        await File.WriteAllBytesAsync(path, bytes, Cancel);
        Assert.Contains("tables/People.csv is not as it was written", (await ReadRefusedAsync(to)).Message, StringComparison.Ordinal);
        File.Delete(path);
        Assert.Contains("has no tables/People.csv", (await ReadRefusedAsync(to)).Message, StringComparison.Ordinal);
        File.Delete(Path.Combine(folder.File("club"), ArchiveManifest.FileName));
        Assert.Contains("has no manifest.json", (await ReadRefusedAsync(to)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_newer_archive_and_one_that_is_none_are_refused()
    {
        await Archive.WriteAsync(await FilledAsync(), folder.File("club"), Now, Cancel);
        var to = await Host.EmptyAsync();
        var path = Path.Combine(folder.File("club"), ArchiveManifest.FileName);
        var text = await File.ReadAllTextAsync(path, Cancel);
        await File.WriteAllTextAsync(path, text.Replace("\"version\": 1", "\"version\": 2", StringComparison.Ordinal), Cancel);
        Assert.Contains("Use a newer version", (await ReadRefusedAsync(to)).Message, StringComparison.Ordinal);
        await File.WriteAllTextAsync(path, text.Replace("keikocho-club-archive", "something", StringComparison.Ordinal), Cancel);
        Assert.Contains("is not a club's archive", (await ReadRefusedAsync(to)).Message, StringComparison.Ordinal);
        await File.WriteAllTextAsync(path, "[]", Cancel);
        Assert.Contains("is not a manifest", (await ReadRefusedAsync(to)).Message, StringComparison.Ordinal);
        await File.WriteAllTextAsync(folder.File("text.zip"), "no zip", Cancel);
        await Assert.ThrowsAsync<StoreRefusal>(() => Archive.ReadAsync(to, folder.File("text.zip"), null, Cancel));
    }

    [Fact]
    public async Task No_cell_of_a_text_runs_as_a_formula()
    {
        await Archive.WriteAsync(await FilledAsync(), folder.File("club.zip"), Now, Cancel);
        using var zip = await ZipFile.OpenReadAsync(folder.File("club.zip"), Cancel);
        var guarded = 0;
        using var db = (await Host.EmptyAsync()).OpenDb();
        foreach (var table in ArchiveTable.All(db))
        {
            using var text = new StreamReader(await zip.GetEntry(table.FileName)!.OpenAsync(Cancel));
            var lines = new CsvReading(text, 1 << 20);
            var cells = new List<string?>();
            Assert.True(lines.Next(cells));
            while (lines.Next(cells))
            {
                foreach (var (cell, column) in cells.Zip(table.Columns).Where(c => c.Second.IsText))
                {
                    Assert.False(cell is { Length: > 0 } && "=+-@\t\r".Contains(cell[0], StringComparison.Ordinal), $"{table.Name}.{column.Name}: {cell}");
                    if (cell is ['\'', ..]) guarded++;
                }
            }
        }

        Assert.True(guarded > 10);
    }

    private Task<StoreRefusal> ReadRefusedAsync(Engine to) =>
        Assert.ThrowsAsync<StoreRefusal>(() => Archive.ReadAsync(to, folder.File("club"), null, Cancel));

    /// <summary>Changes the first place of a text in a file, and its hash in the manifest: as another program would write it.</summary>
    private async Task EditAsync(string name, string old, string changed)
    {
        var path = Path.Combine(folder.File("club"), name);
        var manifest = Path.Combine(folder.File("club"), ArchiveManifest.FileName);
        var before = await File.ReadAllTextAsync(path, Cancel);
        var at = before.IndexOf(old.Length == 0 ? "\n" : old, StringComparison.Ordinal) + (old.Length == 0 ? 1 : 0);
        Assert.True(at >= 0, $"{old} is not in {name}.");
        var after = before[..at] + changed + before[(at + old.Length)..];
        await File.WriteAllTextAsync(path, after, Cancel);
        var list = await File.ReadAllTextAsync(manifest, Cancel);
        await File.WriteAllTextAsync(manifest, list.Replace(HashOf(before), HashOf(after), StringComparison.Ordinal), Cancel);
    }

    private static string HashOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static List<string> Names(string root) =>
        [.. Directory.GetFiles(root, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(root, f).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    private static string WithoutMadeAt(string manifest)
    {
        var lines = manifest.Split('\n');
        Assert.Single(lines, l => l.Contains("\"madeAt\"", StringComparison.Ordinal));
        return string.Join('\n', lines.Where(l => !l.Contains("\"madeAt\"", StringComparison.Ordinal)));
    }
}

public sealed class ArchiveOnSqlite() : ArchiveSpecification(new SqliteHost());

public sealed class ArchiveOnPostgres(PostgresDatabase database) : ArchiveSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>
{
    [Fact]
    public async Task A_role_held_to_one_club_reads_an_archive_in()
    {
        using var folder = new TempFolder();
        var from = await FilledAsync();
        await Archive.WriteAsync(from, folder.File("club.zip"), Now, Cancel);
        var text = ((NpgsqlConnection)((PostgresEngine)await Host.EmptyAsync()).OpenConnection()).ConnectionString;
        var role = $"role_{Guid.CreateVersion7(DateTimeOffset.UtcNow):N}";
        await using (var source = NpgsqlDataSource.Create(text))
        {
            await using var command = source.CreateCommand($"CREATE ROLE {role} LOGIN PASSWORD 'hajime'; GRANT SELECT, INSERT ON ALL TABLES IN SCHEMA public TO {role}");
            await command.ExecuteNonQueryAsync(Cancel);
        }

        await using var held = new PostgresEngine(new NpgsqlConnectionStringBuilder(text) { Username = role, Password = "hajime" }.ConnectionString, club: 7);
        await Archive.ReadAsync(held, folder.File("club.zip"), null, Cancel);
        AllRows.AssertEqual(from, held);
    }
}
