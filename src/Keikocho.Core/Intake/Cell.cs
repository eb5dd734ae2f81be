namespace Keikocho.Core.Intake;

/// <summary>What a cell of the club's file holds.</summary>
public enum CellKind
{
    /// <summary>Nothing, or only blanks.</summary>
    Empty,
    /// <summary>Text.</summary>
    Text,
    /// <summary>A number.</summary>
    Number,
    /// <summary>A calendar day, told by its number format; may have a time of day.</summary>
    Date,
    /// <summary>A time of day without a day.</summary>
    Time,
    /// <summary>True or false.</summary>
    Boolean,
    /// <summary>A formula that failed.</summary>
    Error,
}

/// <summary>One cell as it was read: its kind and its text as a person saw it.</summary>
/// <param name="Kind">What it holds.</param>
/// <param name="Text">The text, without blanks around it; a day as 2026-03-03, a time as 17:50, a number without grouping.</param>
/// <param name="Number">The value of a number (and 1 or 0 of a Boolean); 0 otherwise.</param>
/// <param name="Day">The day of a date; null otherwise.</param>
/// <param name="Clock">The time of a time, and of a date that has one; null otherwise.</param>
/// <param name="FromMerge">True where the value was filled in from a merged cell that covers this one.</param>
public readonly record struct Cell(CellKind Kind, string Text, double Number = 0, DateOnly? Day = null, TimeOnly? Clock = null, bool FromMerge = false)
{
    /// <summary>A cell with nothing in it.</summary>
    public static Cell Empty { get; } = new(CellKind.Empty, "");

    /// <summary>A text cell; an empty one when there is nothing but blanks in <paramref name="text"/>; an error where it is what a failed formula shows.</summary>
    public static Cell OfText(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var trimmed = text.AsSpan().Trim(Blanks);
        if (trimmed.Length == 0) return Empty;
        var said = trimmed.Length == text.Length ? text : trimmed.ToString();
        return new(said[0] == '#' && Errors.Contains(said) ? CellKind.Error : CellKind.Text, said);
    }

    // What spreadsheets show, and save, where a formula failed.
    private static readonly string[] Errors = ["#DIV/0!", "#N/A", "#NAME?", "#NULL!", "#NUM!", "#REF!", "#VALUE!"];

    /// <summary>Nothing in it.</summary>
    public bool IsEmpty => Kind == CellKind.Empty;

    // Ordinary blanks, the unbreakable one, the zero-width ones and a byte order mark that was pasted along.
    private const string Blanks = " \t\r\n\u00A0\u2007\u202F\u200B\u200E\u200F\uFEFF";
}

/// <summary>Where a cell is, as a person finds it again.</summary>
/// <param name="Sheet">The sheet's name.</param>
/// <param name="Row">Row, from 1.</param>
/// <param name="Column">Column, from 1.</param>
public readonly record struct CellPlace(string Sheet, int Row, int Column)
{
    /// <summary>"sheet 'Juniors', row 14, column C".</summary>
    public override string ToString() => $"sheet '{Sheet}', row {Row}, column {Letters(Column)}";

    /// <summary>The letters of a column: 1 is A, 27 is AA.</summary>
    public static string Letters(int column)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(column, 1);
        var letters = "";
        for (var rest = column; rest > 0; rest = (rest - 1) / 26) letters = (char)('A' + ((rest - 1) % 26)) + letters;
        return letters;
    }
}
