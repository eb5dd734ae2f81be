using System.Data.Common;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Keikocho.Store.Engines;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Keeping.OpenArchive;

/// <summary>Reads an archive into an empty club: first every hash, then every row, all in one transaction.</summary>
internal sealed class ArchiveReading(Engine engine, IArchiveSource source, string place)
{
    /// <summary>Far more than an attachment may have: what is longer is not a club's archive, and must not fill the memory.</summary>
    private const int MostBytesInOneValue = 256 << 20;

    private const int MostBytesInManifest = 64 << 20;

    public ArchiveManifest Run(DateTimeOffset? noteAt, CancellationToken cancel)
    {
        IReadOnlyList<ArchiveTable> tables;
        using (var db = engine.OpenDb()) tables = ArchiveTable.InReadingOrder(ArchiveTable.All(db));
        var manifest = ReadManifest();
        RefuseOtherTables(manifest, tables);
        foreach (var file in Listed(manifest)) VerifyHash(file, cancel);

        using var connection = engine.OpenConnection();
        using var transaction = engine.BeginWriting(connection);
        RefuseNotEmpty(tables, connection, transaction);
        foreach (var table in tables)
        {
            try
            {
                ReadTable(table, manifest.Tables.Single(t => t.Name == table.Name), connection, transaction, cancel);
            }
            catch (DbException cause)
            {
                throw new StoreRefusal($"{place}: {table.FileName} does not fit the other tables: {cause.Message} Nothing was read in.", cause);
            }
        }

        if (noteAt is { } at) Note(connection, transaction, at);
        transaction.Commit();
        return manifest;
    }

    private void Note(DbConnection connection, DbTransaction transaction, DateTimeOffset at)
    {
        using var db = engine.OpenDb(connection);
        db.Database.UseTransaction(transaction);
        new WriteSession(db, DateTimeOffset.FromUnixTimeMilliseconds(at.ToUnixTimeMilliseconds()), transaction).Note(TrailKind.Restored, null, null, null);
    }

    private ArchiveManifest ReadManifest()
    {
        using var stream = source.Open(ArchiveManifest.FileName)
            ?? throw new StoreRefusal($"{place} has no {ArchiveManifest.FileName}. It is not a club's archive, or it was cut short.");
        ArchiveManifest manifest;
        try
        {
            manifest = ArchiveManifest.FromBytes(AllOf(stream, MostBytesInManifest, ArchiveManifest.FileName));
        }
        catch (JsonException cause)
        {
            throw new StoreRefusal($"{place}: {ArchiveManifest.FileName} is not a manifest: {cause.Message}", cause);
        }

        if (manifest.Format != ArchiveManifest.FormatName) throw new StoreRefusal($"{place} is not a club's archive: its format is \"{manifest.Format}\".");
        if (manifest.Version > ArchiveManifest.CurrentVersion)
            throw new StoreRefusal(string.Create(
                CultureInfo.InvariantCulture,
                $"{place} has version {manifest.Version} of the archive's format and this version reads {ArchiveManifest.CurrentVersion}. Use a newer version."));
        if (manifest.Version < 1) throw new StoreRefusal($"{place}: the format's version is not a version.");
        return manifest;
    }

    private void RefuseOtherTables(ArchiveManifest manifest, IReadOnlyList<ArchiveTable> tables)
    {
        var listed = manifest.Tables.Select(t => t.Name).ToList();
        if (listed.GroupBy(n => n, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new StoreRefusal($"{place}: the manifest lists the table {twice.Key} twice.");
        if (tables.FirstOrDefault(t => !listed.Contains(t.Name)) is { } missing)
            throw new StoreRefusal($"{place}: the manifest does not list the table {missing.Name}.");
        if (listed.FirstOrDefault(n => tables.All(t => t.Name != n)) is { } unknown)
            throw new StoreRefusal($"{place} has a table {unknown} that this version does not know. Use a newer version.");
        foreach (var table in tables)
        {
            if (manifest.Tables.Single(t => t.Name == table.Name).File != table.FileName)
                throw new StoreRefusal($"{place}: the table {table.Name} must be in {table.FileName}.");
        }

        foreach (var file in manifest.Files)
        {
            if (file.File != $"files/{file.Sha256}" || !IsHash(file.Sha256))
                throw new StoreRefusal($"{place}: {file.File} is not named by its SHA-256.");
        }

        if (manifest.Codes.File != "codes.csv") throw new StoreRefusal($"{place}: the list of codes must be in codes.csv.");
    }

    private static IEnumerable<ArchivedFile> Listed(ArchiveManifest manifest) =>
        [.. manifest.Tables.Select(t => new ArchivedFile(t.File, t.Sha256)), manifest.Codes, .. manifest.Files];

    private void VerifyHash(ArchivedFile file, CancellationToken cancel)
    {
        using var stream = Open(file.File);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var buffer = new byte[128 * 1024];
        try
        {
            for (int read; (read = stream.Read(buffer)) > 0;)
            {
                cancel.ThrowIfCancellationRequested();
                hash.AppendData(buffer.AsSpan(0, read));
            }
        }
        catch (InvalidDataException cause)
        {
            throw new StoreRefusal($"{place}: {file.File} is damaged: {cause.Message} Nothing was read in.", cause);
        }

        if (Convert.ToHexStringLower(hash.GetCurrentHash()) != file.Sha256)
            throw new StoreRefusal($"{place}: {file.File} is not as it was written (its SHA-256 is another). Nothing was read in.");
    }

    private void RefuseNotEmpty(IReadOnlyList<ArchiveTable> tables, DbConnection connection, DbTransaction transaction)
    {
        foreach (var table in tables)
        {
            using var command = connection.CreateCommand();
            command.Transaction = transaction;
#pragma warning disable CA2100 // Only names of the model's tables.
            command.CommandText = $"SELECT count(*) FROM (SELECT 1 FROM \"{table.Name}\" WHERE \"Club\" = @club LIMIT 1) AS any_row";
#pragma warning restore CA2100
            var club = command.CreateParameter();
            club.ParameterName = "club";
            club.Value = engine.Club;
            command.Parameters.Add(club);
            if (Convert.ToInt64(command.ExecuteScalar(), CultureInfo.InvariantCulture) > 0)
                throw new StoreRefusal($"{engine.Place} already holds a club (there are rows in {table.Name}). Read the archive into a new one; nothing was read in.");
        }
    }

    private void ReadTable(ArchiveTable table, ArchivedTable listed, DbConnection connection, DbTransaction transaction, CancellationToken cancel)
    {
        using var stream = Open(table.FileName);
        using var text = new StreamReader(stream, new UTF8Encoding(false, throwOnInvalidBytes: true), detectEncodingFromByteOrderMarks: false, bufferSize: 64 * 1024);
        var lines = new CsvReading(text, MostBytesInOneValue);
        using var inserting = RowInserting.Into(table, connection, transaction, engine.Club);
        var cells = new List<string?>();
        if (!Next(lines, cells, table)) throw new StoreRefusal($"{place}: {table.FileName} is empty; its first line must name the columns.");
        var order = OrderOfColumns(table, cells);
        var values = new object?[table.Columns.Count];
        long rows = 0;
        while (Next(lines, cells, table))
        {
            if (rows++ % 1024 == 0) cancel.ThrowIfCancellationRequested();
            if (cells.Count != values.Length)
                throw Refusal(table, lines.Line, null, string.Create(CultureInfo.InvariantCulture, $"has {cells.Count} cells and the header has {values.Length}"));
            for (var at = 0; at < cells.Count; at++) values[order[at]] = ValueOf(cells[at], table, table.Columns[order[at]], lines.Line);
            Add(inserting, values, table, lines.Line);
        }

        inserting.Finish();
        if (rows != listed.Rows)
            throw new StoreRefusal(string.Create(
                CultureInfo.InvariantCulture, $"{place}: {table.FileName} has {rows} rows and the manifest says {listed.Rows}. Nothing was read in."));
        if (table.Name == "Clubs" && rows != 1)
            throw new StoreRefusal(string.Create(CultureInfo.InvariantCulture, $"{place}: {table.FileName} has {rows} rows; an archive holds exactly one club."));
    }

    private void Add(RowInserting inserting, object?[] values, ArchiveTable table, int line)
    {
        try
        {
            inserting.Add(values);
        }
        catch (DbException cause)
        {
            throw new StoreRefusal(
                string.Create(CultureInfo.InvariantCulture, $"{place}: {table.FileName}, line {line} or shortly before does not fit: {cause.Message} Nothing was read in."), cause);
        }
    }

    private bool Next(CsvReading lines, List<string?> cells, ArchiveTable table)
    {
        try
        {
            return lines.Next(cells);
        }
        catch (FormatException cause)
        {
            throw Refusal(table, lines.Line, null, cause.Message, cause);
        }
        catch (DecoderFallbackException cause)
        {
            throw Refusal(table, lines.Line, null, "or a line after it is not UTF-8", cause);
        }
    }

    private int[] OrderOfColumns(ArchiveTable table, List<string?> header)
    {
        var order = new int[header.Count];
        for (var at = 0; at < header.Count; at++)
        {
            var name = header[at] ?? "";
            order[at] = table.Columns.ToList().FindIndex(c => c.Name == name);
            if (order[at] < 0) throw new StoreRefusal($"{place}: {table.FileName}, line 1 has a column \"{name}\" that this version does not know. Use a newer version.");
            if (Array.IndexOf(order, order[at], 0, at) >= 0) throw new StoreRefusal($"{place}: {table.FileName}, line 1 names the column {name} twice.");
        }

        return table.Columns.FirstOrDefault(c => !header.Contains(c.Name)) is { } missing
            ? throw new StoreRefusal($"{place}: {table.FileName}, line 1 does not name the column {missing.Name}.")
            : order;
    }

    private object? ValueOf(string? cell, ArchiveTable table, ArchiveColumn column, int line)
    {
        if (cell is null && !column.MayBeMissing && column.Kind is not (CellKind.Text or CellKind.Bytes or CellKind.SealedText))
            throw Refusal(table, line, column.Name, "is missing");
        if (cell is null) return column.MayBeMissing ? null : CellText.Parse("", column, IsSqlite, FileOf);
        try
        {
            return CellText.Parse(column.IsText ? CsvLines.Unguarded(cell) : cell, column, IsSqlite, FileOf);
        }
        catch (FormatException cause)
        {
            throw Refusal(table, line, column.Name, $"\"{Brief(cell)}\" {cause.Message}", cause);
        }
    }

    private bool IsSqlite => engine is SqliteEngine;

    private byte[] FileOf(string hash)
    {
        if (!IsHash(hash)) throw new FormatException("is not a SHA-256 in lower-case hexadecimal");
        using var stream = source.Open($"files/{hash}") ?? throw new FormatException("has no file in the archive");
        var bytes = AllOf(stream, MostBytesInOneValue, $"files/{hash}");
        return Convert.ToHexStringLower(SHA256.HashData(bytes)) == hash ? bytes : throw new FormatException("is not the SHA-256 of its file");
    }

    private byte[] AllOf(Stream stream, int most, string name)
    {
        using var all = new MemoryStream();
        var buffer = new byte[64 * 1024];
        for (int read; (read = stream.Read(buffer)) > 0;)
        {
            if (all.Length + read > most) throw new StoreRefusal($"{place}: {name} is larger than any file of a club's archive.");
            all.Write(buffer, 0, read);
        }

        return all.ToArray();
    }

    private Stream Open(string name) => source.Open(name) ?? throw new StoreRefusal($"{place} has no {name}, which its manifest lists. Nothing was read in.");

    private StoreRefusal Refusal(ArchiveTable table, int line, string? column, string what, Exception? cause = null)
    {
        var sentence = string.Create(
            CultureInfo.InvariantCulture, $"{place}: {table.FileName}, line {line}{(column is null ? "" : $", column {column}:")} {what}. Nothing was read in.");
        return cause is null ? new StoreRefusal(sentence) : new StoreRefusal(sentence, cause);
    }

    private static bool IsHash(string text) => text.Length == 64 && text.All(char.IsAsciiHexDigitLower);

    private static string Brief(string cell) => cell.Length <= 40 ? cell : cell[..40] + "...";
}
