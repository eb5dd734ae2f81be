using System.IO.Compression;
using Keikocho.Core.Intake;

namespace Keikocho.Store.Intake;

/// <summary>A file as it is kept while it is being read in.</summary>
/// <param name="Sheets">Its sheets.</param>
/// <param name="Notes">How it was read: sentences.</param>
public sealed record PackedFile(IReadOnlyList<Sheet> Sheets, IReadOnlyList<string> Notes);

/// <summary>Sheets as they lie in the database: compressed, without the columns that are not kept.</summary>
public static class SheetPack
{
    private const byte Version = 1;

    /// <summary>Columns that are never kept: medical, sizes, and free notes and groups, in which medical words may stand and which have no place here.</summary>
    public static bool IsNotKept(ColumnMeaning meaning) => meaning is ColumnMeaning.Medical or ColumnMeaning.Size or ColumnMeaning.Notes or ColumnMeaning.Group;

    /// <summary>The sheet with the values of those columns taken out; their headers stay, so that they are named.</summary>
    /// <param name="sheet">The sheet as it was read.</param>
    /// <param name="saidByColumn">What the instructor said columns mean.</param>
    public static Sheet Kept(Sheet sheet, IReadOnlyDictionary<int, ColumnMeaning> saidByColumn)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var guess = GuessColumns.Guess(sheet, saidByColumn);
        var going = guess.Columns.Where(column => IsNotKept(column.Meaning)).Select(column => column.Column).ToHashSet();
        if (going.Count == 0) return sheet;
        var rows = new Cell[sheet.Rows][];
        for (var row = 1; row <= sheet.Rows; row++)
        {
            rows[row - 1] = new Cell[sheet.Width(row)];
            for (var column = 1; column <= sheet.Width(row); column++)
                rows[row - 1][column - 1] = row > guess.HeaderRow && going.Contains(column) ? Cell.Empty : sheet[row, column];
        }

        return new Sheet(sheet.Name, rows, sheet.Hidden, sheet.From1904);
    }

    /// <summary>Packs a file.</summary>
    public static byte[] Pack(PackedFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var sheets = file.Sheets;
        using var packed = new MemoryStream();
        using (var squeeze = new DeflateStream(packed, CompressionLevel.Fastest))
        using (var write = new BinaryWriter(squeeze))
        {
            write.Write(Version);
            write.Write(file.Notes.Count);
            foreach (var note in file.Notes) write.Write(note);
            write.Write(sheets.Count);
            foreach (var sheet in sheets)
            {
                write.Write(sheet.Name);
                write.Write(sheet.Hidden);
                write.Write(sheet.From1904);
                write.Write(sheet.Rows);
                for (var row = 1; row <= sheet.Rows; row++)
                {
                    write.Write(sheet.Width(row));
                    for (var column = 1; column <= sheet.Width(row); column++) Write(write, sheet[row, column]);
                }
            }
        }

        return packed.ToArray();
    }

    /// <summary>Unpacks what <see cref="Pack"/> made.</summary>
    /// <exception cref="InvalidDataException">It is of another version.</exception>
    public static PackedFile Unpack(byte[] packed)
    {
        using var read = new BinaryReader(new DeflateStream(new MemoryStream(packed), CompressionMode.Decompress));
        if (read.ReadByte() is var version && version != Version)
            throw new InvalidDataException($"A stored file has form {version}, which this version cannot open. Use a newer version.");
        var notes = new string[read.ReadInt32()];
        for (var i = 0; i < notes.Length; i++) notes[i] = read.ReadString();
        var sheets = new Sheet[read.ReadInt32()];
        for (var i = 0; i < sheets.Length; i++)
        {
            var (name, hidden, from1904) = (read.ReadString(), read.ReadBoolean(), read.ReadBoolean());
            var rows = new Cell[read.ReadInt32()][];
            for (var row = 0; row < rows.Length; row++)
            {
                rows[row] = new Cell[read.ReadInt32()];
                for (var column = 0; column < rows[row].Length; column++) rows[row][column] = Read(read);
            }

            sheets[i] = new Sheet(name, rows, hidden, from1904);
        }

        return new PackedFile(sheets, notes);
    }

    private static void Write(BinaryWriter write, Cell cell)
    {
        var has = (cell.FromMerge ? 0x10 : 0) | (cell.Day is null ? 0 : 0x20) | (cell.Clock is null ? 0 : 0x40) | (cell.Number == 0 ? 0 : 0x80);
        write.Write((byte)((int)cell.Kind | has));
        if (cell.IsEmpty) return;
        write.Write(cell.Text);
        if (cell.Number != 0) write.Write(cell.Number);
        if (cell.Day is { } day) write.Write(day.DayNumber);
        if (cell.Clock is { } clock) write.Write(clock.Ticks);
    }

    private static Cell Read(BinaryReader read)
    {
        var first = read.ReadByte();
        var kind = (CellKind)(first & 0x0F);
        if (kind == CellKind.Empty) return Cell.Empty;
        return new Cell(
            kind,
            read.ReadString(),
            (first & 0x80) != 0 ? read.ReadDouble() : 0,
            (first & 0x20) != 0 ? DateOnly.FromDayNumber(read.ReadInt32()) : null,
            (first & 0x40) != 0 ? new TimeOnly(read.ReadInt64()) : null,
            (first & 0x10) != 0);
    }
}
