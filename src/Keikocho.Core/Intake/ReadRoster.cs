using static Keikocho.Core.Intake.ColumnMeaning;

namespace Keikocho.Core.Intake;

/// <summary>Reads a roster: children, their contacts and papers, from one sheet.</summary>
/// <remarks>
/// Pure: the same question gives the same reading. Doubts carry keys that stay; the answers are part of the next question. Time and memory
/// grow in step with the sheet: lines are compared through their folded names, never each with each.
/// </remarks>
public static class ReadRoster
{
    /// <summary>What the sheet says, what is in doubt, and what became of every cell.</summary>
    public static RosterReading Read(RosterQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var sheet = question.Sheet;
        var columns = GuessColumns.Guess(sheet, question.SaidByColumn);
        var book = new DoubtBook(question.Answers);
        var notes = new List<string>();
        var fates = new Dictionary<int, (Fate Fate, string Why)>();

        if (!columns.HasNames)
        {
            book.Ask("nothing", DoubtKind.NothingFound, $"Sheet '{sheet.Name}' has no column that looks like children's names; say which column holds them, or choose another sheet.", []);
            return new(columns, [], book.Doubts, notes, CellFates(sheet, columns, new Dictionary<int, (Fate, string)>(), noNames: true));
        }

        var rows = Rows(sheet, columns, book, fates, notes);
        foreach (var column in columns.Columns.Where(column => column.IsSetAside))
            notes.Add($"Column {CellPlace.Letters(column.Column)} ('{column.Header}') is {(column.Meaning == Medical ? "medical" : "a size")}: it is set aside and not kept, until the club has a passphrase.");
        foreach (var column in columns.Columns.Where(column => column.Meaning == NotRead))
            notes.Add($"Column {CellPlace.Letters(column.Column)} ('{column.Header}') is not read: {column.Why}.");

        var reader = new RosterLineReader(question, columns, rows, book, notes);
        var lines = rows.Select(reader.Read).ToList();
        foreach (var line in lines.Where(line => line.SetAside is null && question.Erased.Contains(line.Child.FullName, line.Child.BirthDate)))
        {
            line.SetAside = "this person was erased and is not brought back";
            line.Child = new RosterChild();
            book.ForgetOpen(line.Row);
        }
        var known = new KnownIndex(question.Known);
        var sure = lines.ToDictionary(line => line.Row, line => line.SetAside is null ? known.Certain(line.Child) : null);
        foreach (var line in lines.Where(line => sure[line.Row] is not null))
        {
            // What was asked and settled when this child was first read in is not asked again.
            book.ForgetKey(sure[line.Row]!.Child.BirthDate is null ? $"row:{line.Row}:birth" : "");
            if (sure[line.Row]!.Child.BirthDate == line.Child.BirthDate) book.ForgetKey($"row:{line.Row}:age");
        }
        lines = RosterTwins.Join(lines, sure, sheet, book, notes);
        RosterMatch.Match(lines, sure, known, sheet, book);

        var open = book.Doubts.Where(doubt => !doubt.IsSettled).SelectMany(doubt => doubt.Rows).ToHashSet();
        var waits = book.Doubts.Any(doubt => !doubt.IsSettled);
        foreach (var line in lines.Where(line => line.SetAside is not null))
            foreach (var row in line.Rows) fates[row] = (Fate.SetAside, line.SetAside!);
        var done = lines.Select(line => new RosterLine(
            line.Rows,
            line.Child,
            line.SetAside is not null ? LineStanding.SetAside
                : line.Rows.Any(open.Contains) || waits && line.Waits ? LineStanding.Open
                : line.Person is not null ? LineStanding.Known : LineStanding.New,
            line.Person, line.Differences, line.SetAside ?? "")).ToList();
        return new(columns, done, book.Doubts, notes, CellFates(sheet, columns, fates));
    }

    // The rows that hold children. Totals, repeated headers and headings across the table are named and left.
    private static List<int> Rows(Sheet sheet, ColumnsGuess columns, DoubtBook book, Dictionary<int, (Fate Fate, string Why)> fates, List<string> notes)
    {
        var rows = new List<int>();
        for (var row = columns.FirstRow; row <= columns.LastRow; row++)
        {
            if (GuessColumns.IsBlank(sheet, row)) continue;
            if (columns.HeaderRow > 0 && columns.Columns.Where(column => column.Header.Length > 0).All(column => sheet[row, column.Column].Text == column.Header))
                fates[row] = (Fate.Ignored, "the headers again");
            else if (IsHeading(sheet, row))
                fates[row] = (Fate.Ignored, "a heading across the table");
            else if (IsTotals(sheet, row, columns, out var sure))
            {
                var answer = sure ? "totals" : book.Ask($"row:{row}:totals", DoubtKind.TotalsLine,
                    $"In sheet '{sheet.Name}', row {row} looks like a line of totals; say whether it is one, or a child.",
                    [new("totals", "Totals: leave it"), new("child", "A child")], "totals", TypedAnswer.None, row);
                if (answer == "child") rows.Add(row);
                else
                {
                    fates[row] = (Fate.Ignored, "a line of totals");
                    if (sure) notes.Add($"Row {row} is a line of totals and was left.");
                }
            }
            else rows.Add(row);
        }
        return rows;
    }

    private static bool IsHeading(Sheet sheet, int row)
    {
        string? text = null;
        int filled = 0, merged = 0;
        for (var column = 1; column <= sheet.Width(row); column++)
        {
            var cell = sheet[row, column];
            if (cell.IsEmpty) continue;
            if (text is not null && cell.Text != text) return false;
            text = cell.Text;
            filled++;
            if (cell.FromMerge) merged++;
        }
        return filled >= 2 && merged >= filled - 1;
    }

    private static bool IsTotals(Sheet sheet, int row, ColumnsGuess columns, out bool sure)
    {
        sure = false;
        var first = Cell.Empty;
        var others = 0;
        var numbers = 0;
        for (var column = 1; column <= sheet.Width(row); column++)
        {
            var cell = sheet[row, column];
            if (cell.IsEmpty) continue;
            if (first.IsEmpty) first = cell;
            else if (cell.Kind == CellKind.Number || cell.Text.All(letter => char.IsAsciiDigit(letter) || letter is '.' or ',' or '%')) numbers++;
            else others++;
        }
        var text = first.Text.TrimEnd(':', ' ');
        var word = NameFold.Fold(text).Split(' ')[0];
        if (!HeaderWords.IsTotal(text) && word is not ("total" or "totals" or "totaal" or "summe" or "gesamt" or "anzahl"))
            return false;
        sure = others == 0;
        return true;
    }

    private static List<CellFate> CellFates(Sheet sheet, ColumnsGuess columns, Dictionary<int, (Fate Fate, string Why)> rows, bool noNames = false)
    {
        var byColumn = columns.Columns.ToDictionary(column => column.Column);
        var fates = new List<CellFate>();
        for (var row = 1; row <= sheet.Rows; row++)
            for (var column = 1; column <= sheet.Width(row); column++)
            {
                var cell = sheet[row, column];
                if (cell.IsEmpty) continue;
                var (fate, why) = noNames ? (Fate.Ignored, "the sheet has no names")
                    : row == columns.HeaderRow ? (Fate.Heading, "header")
                    : row < columns.FirstRow ? (Fate.Heading, "title")
                    : rows.TryGetValue(row, out var whole) ? whole
                    : !byColumn.TryGetValue(column, out var guess) ? (Fate.Ignored, "outside the table")
                    : guess.Meaning == Medical ? (Fate.SetAside, "medical")
                    : guess.Meaning == Size ? (Fate.SetAside, "a size")
                    : guess.Meaning == NotRead ? (Fate.Ignored, guess.Why)
                    : cell.Kind == CellKind.Error ? (Fate.Ignored, "a formula that failed")
                    : (Fate.Read, "");
                fates.Add(new(row, column, fate, why));
            }
        return fates;
    }
}
