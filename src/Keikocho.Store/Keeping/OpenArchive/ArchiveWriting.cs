using System.Data.Common;
using System.Globalization;
using System.Text;
using Keikocho.Store.Engines;

namespace Keikocho.Store.Keeping.OpenArchive;

/// <summary>Writes one club row by row: memory does not grow with the club.</summary>
internal sealed class ArchiveWriting(Engine engine, IArchiveTarget target, DateTimeOffset now)
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private bool holdsSealed;

    public async Task<ArchiveManifest> RunAsync(CancellationToken cancel)
    {
        IReadOnlyList<ArchiveTable> tables;
        using (var db = engine.OpenDb()) tables = ArchiveTable.All(db);
        var view = await ReadSnapshot.OpenAsync(engine, readersAtOnce: 1, cancel).ConfigureAwait(false);
        await using var disposal = view.ConfigureAwait(false);

        var written = new List<ArchivedTable>(tables.Count);
        var wanted = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var table in tables) written.Add(WriteTable(view, table, wanted, cancel));
        if (written.Single(t => t.Name == "Clubs").Rows == 0)
            throw new StoreRefusal($"{engine.Place} holds no club yet. There is nothing to write.");

        var codes = WriteCodes(tables);
        var files = WriteFiles(view, tables, cancel);
        if (!wanted.SetEquals(files.Select(f => f.Sha256))) throw new InvalidOperationException("A file of the archive changed under one view.");

        var manifest = new ArchiveManifest(
            ArchiveManifest.FormatName,
            ArchiveManifest.CurrentVersion,
            ArchiveManifest.ProductName,
            DateTimeOffset.FromUnixTimeMilliseconds(now.ToUnixTimeMilliseconds()),
            holdsSealed ? ArchiveManifest.PlainNote + ArchiveManifest.SealedNote : ArchiveManifest.PlainNote,
            written,
            codes,
            files);
        // Last: an archive that was cut short has no manifest and is refused.
        using var stream = target.Begin(ArchiveManifest.FileName);
        stream.Write(manifest.ToBytes());
        return manifest;
    }

    private ArchivedTable WriteTable(ReadSnapshot view, ArchiveTable table, SortedSet<string> files, CancellationToken cancel)
    {
        using var stream = new HashingStream(target.Begin(table.FileName));
        using var to = new StreamWriter(stream, Utf8, bufferSize: 64 * 1024, leaveOpen: true);
        WriteHeader(to, table.Columns.Select(c => c.Name));
        using var command = view.Ask(table.Question(table.Columns, view.IsSqlite));
        using var reader = Execute(command);
        long rows = 0;
        while (reader.Read())
        {
            if (rows++ % 1024 == 0) cancel.ThrowIfCancellationRequested();
            for (var at = 0; at < table.Columns.Count; at++)
            {
                if (at > 0) to.Write(',');
                WriteCell(to, reader, at, table, rows, files, view.IsSqlite);
            }

            to.Write("\r\n");
        }

        to.Flush();
        return new ArchivedTable(table.Name, table.FileName, rows, stream.Sha256);
    }

    private void WriteCell(
        TextWriter to, DbDataReader reader, int at, ArchiveTable table, long row, SortedSet<string> files, bool isSqlite)
    {
        var column = table.Columns[at];
        try
        {
            var text = CellText.Read(reader, at, column.Kind, isSqlite);
            if (column.Kind == CellKind.SealedFile && text is not null) files.Add(text);
            if (column.Kind is CellKind.SealedWhole or CellKind.LockedText && text?.StartsWith(CellText.SealedStart, StringComparison.Ordinal) == true) holdsSealed = true;
            CsvLines.WriteCell(to, text, column.IsText);
        }
        catch (Exception cause) when (cause is InvalidDataException or EncoderFallbackException)
        {
            throw new StoreRefusal(
                string.Create(CultureInfo.InvariantCulture, $"{table.Name}, row {row}, {column.Name} cannot be written: {cause.Message} Run the check command."), cause);
        }
    }

    private ArchivedFile WriteCodes(IReadOnlyList<ArchiveTable> tables)
    {
        const string name = "codes.csv";
        using var stream = new HashingStream(target.Begin(name));
        using var to = new StreamWriter(stream, Utf8, bufferSize: 4096, leaveOpen: true);
        WriteHeader(to, ["Table", "Column", "Number", "Meaning"]);
        foreach (var table in tables)
        {
            foreach (var column in table.Columns.Where(c => c.Type.IsEnum))
            {
                foreach (var value in Enum.GetValues(column.Type))
                    to.Write(string.Create(CultureInfo.InvariantCulture, $"{table.Name},{column.Name},{Convert.ToInt32(value, CultureInfo.InvariantCulture)},{value}\r\n"));
            }
        }

        to.Flush();
        return new ArchivedFile(name, stream.Sha256);
    }

    /// <summary>A second pass over the few tables that have files: a zip takes one file at a time.</summary>
    private List<ArchivedFile> WriteFiles(ReadSnapshot view, IReadOnlyList<ArchiveTable> tables, CancellationToken cancel)
    {
        var written = new SortedDictionary<string, ArchivedFile>(StringComparer.Ordinal);
        foreach (var table in tables)
        {
            foreach (var column in table.Columns.Where(c => c.Kind == CellKind.SealedFile))
            {
                using var command = view.Ask(table.Question([column], view.IsSqlite));
                using var reader = Execute(command);
                while (reader.Read())
                {
                    cancel.ThrowIfCancellationRequested();
                    if (reader.IsDBNull(0)) continue;
                    var hash = CellText.Read(reader, 0, column.Kind, view.IsSqlite)!;
                    if (written.ContainsKey(hash)) continue;
                    var file = new ArchivedFile($"files/{hash}", hash);
                    using var stream = target.Begin(file.File);
                    stream.Write(CellText.OpenFile(reader, 0));
                    written.Add(hash, file);
                }
            }
        }

        return [.. written.Values];
    }

    private DbDataReader Execute(DbCommand command)
    {
        var club = command.CreateParameter();
        club.ParameterName = "club";
        club.Value = engine.Club;
        command.Parameters.Add(club);
        return command.ExecuteReader();
    }

    private static void WriteHeader(TextWriter to, IEnumerable<string> names)
    {
        to.Write(string.Join(',', names));
        to.Write("\r\n");
    }
}
