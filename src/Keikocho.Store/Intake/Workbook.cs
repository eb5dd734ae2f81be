using System.Globalization;
using System.Xml;
using ExcelDataReader;
using ExcelDataReader.Exceptions;
using Keikocho.Core.Intake;

namespace Keikocho.Store.Intake;

/// <summary>Reads a workbook (.xlsx).</summary>
internal static class Workbook
{
    private const int RowsBetweenReports = 256;

    // The most rows a workbook's sheet can have (ECMA-376 limits of the common programs; from memory), and the cells looked at, blank ones too, before giving up.
    private const int MostRows = 1_048_576;
    private const long MostVisited = 100_000_000;

    // ExcelDataReader 3.6 knows date1904="1" but not "true", which LibreOffice writes; both are allowed (XML Schema boolean).
    private const int DaysFrom1900To1904 = 1462;

    // ExcelDataReader has no promise about what it throws on a damaged part: these are what damaged zips, XML and numbers lead to.
    private static bool IsDamage(Exception fault)
        => fault is InvalidDataException or XmlException or ExcelReaderException or HeaderException or FormatException or OverflowException
            or EndOfStreamException or ArgumentException or InvalidOperationException or KeyNotFoundException or IndexOutOfRangeException
            or NullReferenceException or NotSupportedException or InvalidCastException;

    internal static TableReading Read(Stream file, string fileName, ReadLimits limits, IProgress<double>? progress, CancellationToken cancel)
    {
        try
        {
            var from1904 = WorkbookParts.Check(file, fileName, limits, progress, cancel);
            file.Position = 0;
            using var reader = ExcelReaderFactory.CreateOpenXmlReader(file, new ExcelReaderConfiguration { LeaveOpen = true });
            return Sheets(reader, from1904 is "1" or "true", from1904 == "true" ? DaysFrom1900To1904 : 0, fileName, limits, progress, cancel);
        }
        catch (Exception fault) when (IsDamage(fault))
        {
            return new TableReading.Refused($"'{fileName}' is a damaged workbook and cannot be read; open it in a spreadsheet, save it again as .xlsx or .csv and read that.");
        }
    }

    private static TableReading.Read Sheets(IExcelDataReader reader, bool from1904, int addDays, string fileName, ReadLimits limits, IProgress<double>? progress, CancellationToken cancel)
    {
        var notes = new List<string>();
        var sheets = new List<Sheet>();
        var count = new CellCount(fileName, limits);
        if (reader.ResultsCount > limits.Sheets) throw new RefusedException($"'{fileName}' has more than {limits.Sheets} sheets; save the sheet of the children alone and read that.");
        var done = 0;
        var visited = 0L;
        do
        {
            // A stray format far to the right makes a sheet wide without filling it: only filled cells are kept, and they are counted.
            var width = Math.Min(reader.FieldCount, 1 << 14);
            if (reader.FieldCount > 1 << 14) throw count.TooWide();
            var rows = new List<IReadOnlyList<Cell>>();
            var row = new Cell[width];
            while (reader.Read())
            {
                // A row number far below the last filled row comes as that many blank rows.
                visited += width;
                if (rows.Count >= MostRows || visited > MostVisited)
                    throw new RefusedException($"'{fileName}' has a sheet '{reader.Name}' that is nearly all blank and far too large; copy the part that holds the children into a new sheet and read that.");
                if (rows.Count % RowsBetweenReports == 0)
                {
                    cancel.ThrowIfCancellationRequested();
                    progress?.Report(0.3 + 0.7 * (done + (reader.RowCount > 0 ? Math.Min(1.0, (double)rows.Count / reader.RowCount) : 0)) / reader.ResultsCount);
                }
                for (var i = 0; i < width; i++) row[i] = CellOf(reader, i, addDays);
                rows.Add(count.Take(row, width));
            }
            var merged = Fill(rows, reader.MergeCells ?? [], limits, count);
            while (rows.Count > 0 && rows[^1].Count == 0) rows.RemoveAt(rows.Count - 1);
            var hidden = reader.VisibleState is { } state && state != "visible";
            if (merged > 0) notes.Add($"Sheet '{reader.Name}' has {merged} merged {(merged == 1 ? "cell" : "cells")}; what is under {(merged == 1 ? "it" : "them")} was given the same value.");
            if (hidden) notes.Add($"Sheet '{reader.Name}' is hidden in the file.");
            sheets.Add(new Sheet(reader.Name ?? $"Sheet {done + 1}", rows, hidden, from1904));
            done++;
        }
        while (reader.NextResult());
        if (from1904) notes.Add("The workbook counts its days from 1904.");
        if (sheets.TrueForAll(sheet => sheet.Rows == 0)) throw new RefusedException($"'{fileName}' is a workbook without a filled cell; choose the file that holds the club's list.");
        return new TableReading.Read(sheets, notes);
    }

    private static Cell CellOf(IExcelDataReader reader, int column, int addDays)
    {
        switch (reader.GetValue(column))
        {
            case null: return Cell.Empty;
            case string text: return Cell.OfText(text);
            case bool truth: return new Cell(CellKind.Boolean, truth ? "TRUE" : "FALSE", truth ? 1 : 0);
            case DateTime moment: return Moment(moment.AddDays(addDays), reader.GetNumberFormatString(column));
            case TimeSpan span: return Time(span);
            case IConvertible number:
                var value = number.ToDouble(CultureInfo.InvariantCulture);
                return new Cell(CellKind.Number, NumberText(value, reader.GetNumberFormatString(column)), value);
            case var other: return Cell.OfText(Convert.ToString(other, CultureInfo.InvariantCulture) ?? "");
        }
    }

    private static Cell Moment(DateTime moment, string? format)
    {
        var clock = TimeOnly.FromDateTime(moment);
        var day = DateOnly.FromDateTime(moment);
        // A time of day alone is stored as a part of day 0.
        if (day.Year < 1900 || moment.TimeOfDay != TimeSpan.Zero && day == new DateOnly(1904, 1, 1) || day <= new DateOnly(1900, 1, 1) && format is not null && !format.Contains('y', StringComparison.OrdinalIgnoreCase) && !format.Contains('d', StringComparison.OrdinalIgnoreCase))
            return new Cell(CellKind.Time, clock.ToString("HH:mm", CultureInfo.InvariantCulture), Clock: clock);
        var hasTime = moment.TimeOfDay != TimeSpan.Zero;
        return new Cell(CellKind.Date, day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) + (hasTime ? clock.ToString(" HH:mm", CultureInfo.InvariantCulture) : ""), Day: day, Clock: hasTime ? clock : null);
    }

    private static Cell Time(TimeSpan span)
    {
        if (span < TimeSpan.Zero || span >= TimeSpan.FromDays(1)) return Cell.OfText(span.ToString("c", CultureInfo.InvariantCulture));
        var clock = TimeOnly.FromTimeSpan(span);
        return new Cell(CellKind.Time, clock.ToString("HH:mm", CultureInfo.InvariantCulture), Clock: clock);
    }

    // As a person saw it: whole numbers without a point, and the leading zeros of a format such as 00000.
    private static string NumberText(double value, string? format)
    {
        if (double.IsNaN(value) || double.IsInfinity(value)) return "#error";
        if (format is { Length: > 1 and <= 20 } && format.All(letter => letter == '0') && value >= 0 && value < 1e15) return value.ToString(format, CultureInfo.InvariantCulture);
        return Math.Abs(value) < 1e15 && value == Math.Floor(value) ? value.ToString("0", CultureInfo.InvariantCulture) : value.ToString("R", CultureInfo.InvariantCulture);
    }

    // Fills the cells under a merged cell, within the filled part of the sheet.
    private static int Fill(List<IReadOnlyList<Cell>> rows, CellRange[] ranges, ReadLimits limits, CellCount count)
    {
        var filled = 0;
        var area = 0L;
        foreach (var range in ranges)
        {
            if (range.FromRow < 0 || range.FromColumn < 0 || range.FromRow >= rows.Count || range.FromColumn >= rows[range.FromRow].Count) continue;
            var source = rows[range.FromRow][range.FromColumn];
            if (source.IsEmpty || source.FromMerge) continue;
            filled++;
            var lastColumn = Math.Min(range.ToColumn, limits.Columns - 1);
            area += (Math.Min(range.ToRow, rows.Count - 1) - range.FromRow + 1L) * (lastColumn - range.FromColumn + 1L);
            if (area > limits.Cells) throw count.TooMany();
            for (var r = range.FromRow; r <= Math.Min(range.ToRow, rows.Count - 1); r++)
            {
                // Blank rows under a merge stay blank below the last filled row of the sheet.
                var cells = rows[r] as Cell[] ?? [.. rows[r]];
                if (cells.Length <= lastColumn)
                {
                    var wider = new Cell[lastColumn + 1];
                    Array.Fill(wider, Cell.Empty);
                    cells.CopyTo(wider, 0);
                    cells = wider;
                }
                for (var c = range.FromColumn; c <= lastColumn; c++)
                {
                    if (r == range.FromRow && c == range.FromColumn || !cells[c].IsEmpty) continue;
                    count.Count();
                    cells[c] = source with { FromMerge = true };
                }
                rows[r] = cells;
            }
        }
        return filled;
    }
}
