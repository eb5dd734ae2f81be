using System.Text;

namespace Keikocho.Store.Keeping.OpenArchive;

/// <summary>
/// Comma-separated lines as RFC 4180 has them: CRLF, quotes doubled. An empty cell without quotes is a missing value, <c>""</c> is an
/// empty text. A text that a spreadsheet would run as a formula has an apostrophe before it, and so has a text that begins with one.
/// </summary>
internal static class CsvLines
{
    /// <summary>Writes one cell without its comma.</summary>
    public static void WriteCell(TextWriter to, string? text, bool isText)
    {
        if (text is null) return;
        var guarded = isText && text.Length > 0 && StartsLikeAFormula(text[0]);
        var quoted = text.Length == 0 || text.AsSpan().IndexOfAny(",\"\r\n") >= 0;
        if (!quoted)
        {
            if (guarded) to.Write('\'');
            to.Write(text);
            return;
        }

        to.Write('"');
        if (guarded) to.Write('\'');
        to.Write(text.Replace("\"", "\"\"", StringComparison.Ordinal));
        to.Write('"');
    }

    /// <summary>The text of a cell without the apostrophe that guards it.</summary>
    public static string Unguarded(string cell) => cell.Length > 0 && cell[0] == '\'' ? cell[1..] : cell;

    /// <summary>A tab or a line break before the sign is skipped by some spreadsheets; the apostrophe itself is guarded so that it comes back.</summary>
    private static bool StartsLikeAFormula(char first) => first is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n' or '\'';
}

/// <summary>Reads comma-separated lines one record at a time.</summary>
internal sealed class CsvReading(TextReader from, int mostCharactersInOneCell)
{
    private readonly StringBuilder cell = new();
    private int line = 1;

    /// <summary>Number of the line on which the last record began, from 1.</summary>
    public int Line { get; private set; }

    /// <summary>Fills the next record's cells; false at the end.</summary>
    /// <exception cref="FormatException">The text is not well formed; the message goes on after "file, line".</exception>
    public bool Next(List<string?> cells)
    {
        cells.Clear();
        if (from.Peek() < 0) return false;
        Line = line;
        while (true)
        {
            cells.Add(Cell());
            var next = from.Read();
            if (next == ',') continue;
            if (next < 0) return true;
            if (next == '\r' && from.Peek() == '\n') from.Read();
            line++;
            return true;
        }
    }

    private string? Cell()
    {
        cell.Clear();
        if (from.Peek() == '"') return Quoted();
        while (from.Peek() is >= 0 and not (',' or '\r' or '\n'))
        {
            var next = (char)from.Read();
            if (next == '"') throw new FormatException("has a quotation mark in the middle of a cell");
            Add(next);
        }

        return cell.Length == 0 ? null : cell.ToString();
    }

    private string Quoted()
    {
        from.Read();
        while (true)
        {
            var next = from.Read();
            if (next < 0) throw new FormatException("has a cell whose quotation mark is never closed");
            if (next == '"')
            {
                if (from.Peek() != '"') break;
                from.Read();
            }

            if (next == '\n') line++;
            Add((char)next);
        }

        if (from.Peek() is >= 0 and not (',' or '\r' or '\n')) throw new FormatException("goes on after a closed quotation mark");
        return cell.ToString();
    }

    private void Add(char next)
    {
        if (cell.Length >= mostCharactersInOneCell) throw new FormatException("has a cell that is too long");
        cell.Append(next);
    }
}
