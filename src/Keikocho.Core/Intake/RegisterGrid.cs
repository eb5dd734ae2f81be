using Keikocho.Core.Kernel;

namespace Keikocho.Core.Intake;

/// <summary>Reads a grid: children one way, dates the other.</summary>
internal static class RegisterGrid
{
    internal static RegisterReading Read(RegisterQuestion question, RegisterTable table, DoubtBook book)
    {
        var sheet = table.Sheet;
        var notes = new List<string>();
        var leftRows = new Dictionary<int, (Fate Fate, string Why)>();
        var dates = RegisterDates.Resolve(table, question.Today, book, notes);
        var lines = Lines(table, leftRows, book, notes);

        string Place(RegisterDraft line) => table.PlaceOfLine(line.At);
        RegisterNames.Resolve(lines, question, Place, line => $"{line.At}", book);
        RegisterNames.JoinTwice(lines, Place, book);
        foreach (var line in lines.Where(line => line.SetAside.Length > 0)) leftRows[line.At] = (Fate.SetAside, line.SetAside);
        var read = lines.Where(line => line.SetAside.Length == 0).ToList();

        var leftColumns = new Dictionary<int, string>();
        var days = Days(question, table, dates, read, leftColumns, book, notes);
        var columns = table.Dates.Select(date => date.Column).Where(column => !leftColumns.ContainsKey(column)).ToList();
        var signs = new RegisterSigns(read.SelectMany(line => columns.Select(column => (sheet[line.At, column], table.Place(line.At, column)))), book);
        var marks = Marks(question, table, dates, days, read, columns, signs, book, notes);

        var otherColumns = OtherColumns(table, notes);
        var fates = ReadRegister.Fates(question.Sheet, (fileRow, fileColumn) =>
        {
            var (row, column) = table.Turned ? (fileColumn, fileRow) : (fileRow, fileColumn);
            if (row <= table.HeaderRow || table.HeadingRows.Contains(row)) return (Fate.Heading, row == table.HeaderRow ? "header" : "title");
            if (leftRows.TryGetValue(row, out var whole)) return whole;
            if (otherColumns.TryGetValue(column, out var other)) return other;
            if (leftColumns.TryGetValue(column, out var why)) return (Fate.Ignored, why);
            return sheet[row, column].Kind == CellKind.Error ? (Fate.Ignored, "a formula that failed") : (Fate.Read, "");
        });
        return new(table.Turned ? RegisterLayout.DatesDown : RegisterLayout.ChildrenDown,
            [.. lines.Select(line => line.Done())], [.. days.OrderBy(day => day.Day).ThenBy(day => day.At)], marks, book.Doubts, notes, fates);
    }

    private static List<RegisterDraft> Lines(RegisterTable table, Dictionary<int, (Fate Fate, string Why)> left, DoubtBook book, List<string> notes)
    {
        var sheet = table.Sheet;
        var lines = new List<RegisterDraft>();
        for (var row = table.FirstRow; row <= sheet.Rows; row++)
        {
            if (GuessColumns.IsBlank(sheet, row)) continue;
            var cells = table.NameColumns.Select(column => sheet[row, column]).Where(cell => !cell.IsEmpty).ToList();
            var name = string.Join(' ', cells.Select(cell => cell.Text));
            var first = FirstText(sheet, row);
            if (HeaderWords.IsTotal(first.TrimEnd(':', ' ')) || HeaderWords.IsTotal(name.TrimEnd(':', ' ')) || StartsTotal(name))
            {
                left[row] = (Fate.Ignored, "a line of totals");
                notes.Add($"{Capital(table.PlaceOfLine(row))} is a line of totals and was left.");
            }
            else if (cells.Count == 0 && OnlyNumbers(table, row))
            {
                left[row] = (Fate.Ignored, "numbers without a name");
                notes.Add($"{Capital(table.PlaceOfLine(row))} has numbers and no name; it was taken for totals and left.");
            }
            else if (cells.Count == 0)
            {
                var typed = book.Ask($"line:{row}:name", DoubtKind.NameMissing, $"In {table.PlaceOfLine(row)}, there are entries without a name; type the name or set the line aside.", [new("set-aside", "Set this line aside")], "set-aside", TypedAnswer.Text);
                if (typed is not null && typed.StartsWith('=')) lines.Add(new(row, typed[1..].Trim(), RegisterNames.Parts(typed[1..])));
                else left[row] = (Fate.SetAside, "it has no name");
            }
            else if (table.Dates.All(date => sheet[row, date.Column].IsEmpty || sheet[row, date.Column].Text == sheet[table.HeaderRow, date.Column].Text) && table.Dates.Any(date => !sheet[row, date.Column].IsEmpty))
                left[row] = (Fate.Ignored, "the headers again");
            else if (cells.TrueForAll(cell => cell.FromMerge) || table.NameColumns.TrueForAll(column => sheet[row, column].Text == name) && sheet[row, table.Dates[0].Column] is { FromMerge: true } merged && merged.Text == name)
                left[row] = (Fate.Ignored, "a heading across the table");
            else lines.Add(new(row, name, Child(table, row, name)));
        }
        return lines;
    }

    private static RosterChild Child(RegisterTable table, int row, string name)
    {
        var given = "";
        var family = "";
        foreach (var column in table.NameColumns)
        {
            var meaning = table.HeaderText(column) is { } header ? HeaderWords.Meaning(header)?.Meaning : null;
            if (meaning == ColumnMeaning.GivenName) given = table.Sheet[row, column].Text;
            else if (meaning == ColumnMeaning.FamilyName || meaning == ColumnMeaning.FullName && table.NameColumns.Count > 1) family = table.Sheet[row, column].Text;
        }
        return given.Length > 0 || family.Length > 0 ? new RosterChild { GivenName = given, FamilyName = family } : RegisterNames.Parts(name);
    }

    private static List<RegisterDay> Days(RegisterQuestion question, RegisterTable table, Dictionary<int, DateOnly?> dates, List<RegisterDraft> lines, Dictionary<int, string> left, DoubtBook book, List<string> notes)
    {
        var columnsOf = new Dictionary<DateOnly, List<int>>();
        foreach (var (column, _) in table.Dates)
        {
            if (dates[column] is not { } day)
            {
                left[column] = book.Of($"day:{column}") is { IsSettled: true } ? "you left this date out" : "its date waits for an answer";
                continue;
            }
            if (columnsOf.TryAdd(day, [column])) continue;
            var answer = book.Ask($"date-twice:{columnsOf[day][0]}+{column}", DoubtKind.DateTwice,
                $"{day.Full()} stands twice: in {table.PlaceOfDate(columnsOf[day][0])} and in {table.PlaceOfDate(column)}; read them together, or leave the later one out.",
                [new("join", "Together: present in either is present"), new("leave-out", "Leave the later one out")], "join");
            if (answer == "join") columnsOf[day].Add(column);
            else left[column] = answer is null ? "its date waits for an answer" : "you left this date out";
        }
        var days = new List<RegisterDay>();
        foreach (var (day, columns) in columnsOf)
        {
            var marks = lines.Exists(line => columns.Exists(column => table.Sheet[line.At, column] is { IsEmpty: false, Kind: not CellKind.Error }));
            var standing = ReadRegister.Standing(day, marks, question.Today, $"{columns[0]}", table.PlaceOfDate(columns[0]), book, notes);
            if (standing != DayStanding.Held)
                foreach (var column in columns) left[column] = standing == DayStanding.Open ? "its date waits for an answer" : "this date was left out";
            days.Add(new(day, standing, columns[0]));
        }
        return days;
    }

    private static List<RegisterMark> Marks(RegisterQuestion question, RegisterTable table, Dictionary<int, DateOnly?> dates, List<RegisterDay> days, List<RegisterDraft> lines, List<int> columns, RegisterSigns signs, DoubtBook book, List<string> notes)
    {
        var blanks = lines.Exists(line => columns.Exists(column => table.Sheet[line.At, column].IsEmpty));
        var blankIsAbsent = true;
        if (blanks && signs.SaysAbsent)
            blankIsAbsent = book.Ask("blank", DoubtKind.BlankMeaning, "This register has signs for absent and blanks as well; say what a blank means.",
                [new("nothing", "Nothing was noted"), new("absent", "Absent")], "nothing") == "absent";
        else if (blanks)
        {
            blankIsAbsent = !(question.Answers.ByKey.TryGetValue("blank", out var said) && said == "nothing");
            notes.Add(blankIsAbsent ? "A blank on a date with marks was read as absent, from each child's first mark on." : "Blanks were read as nothing noted.");
        }
        var marks = new RegisterMarks(question, book);
        var calendar = columns.Where(column => dates[column] is not null).OrderBy(column => dates[column]!.Value).ThenBy(column => column).ToList();
        var early = 0;
        foreach (var line in lines)
        {
            if (line.Who is not { } who) continue;
            var begun = false;
            foreach (var column in calendar)
            {
                var day = dates[column]!.Value;
                var (row, fileColumn) = table.InFile(line.At, column);
                var cell = table.Sheet[line.At, column];
                var (says, known) = signs.Read(cell);
                if (says is { } sign)
                {
                    begun = true;
                    marks.Add(who, day, sign, blank: false, row, fileColumn);
                }
                else if (cell.IsEmpty && blankIsAbsent)
                {
                    if (begun) marks.Add(who, day, new(RegisterWord.Absent, null), blank: true, row, fileColumn);
                    else early++;
                }
                begun |= !known;
            }
        }
        if (early > 0) notes.Add($"{early} blanks before a child's first mark were not read as absent: the child's own clock starts with the first lesson.");
        return marks.Done();
    }

    private static Dictionary<int, (Fate Fate, string Why)> OtherColumns(RegisterTable table, List<string> notes)
    {
        var dated = table.Dates.Select(date => date.Column).ToHashSet();
        var others = new Dictionary<int, (Fate, string)>();
        for (var column = 1; column <= table.Sheet.Columns; column++)
        {
            if (dated.Contains(column) || table.NameColumns.Contains(column)) continue;
            var header = table.HeaderText(column) ?? "";
            var meaning = HeaderWords.Meaning(header)?.Meaning;
            others[column] = meaning switch
            {
                ColumnMeaning.Medical => (Fate.SetAside, "medical"),
                ColumnMeaning.Size => (Fate.SetAside, "a size"),
                _ when HeaderWords.IsTotal(header) || header.Contains('%', StringComparison.Ordinal) => (Fate.Ignored, "a column of totals"),
                _ => (Fate.Ignored, "not part of the register"),
            };
            var filled = false;
            for (var row = table.FirstRow; row <= table.Sheet.Rows && !filled; row++) filled = !table.Sheet[row, column].IsEmpty;
            if (filled) notes.Add($"{Capital(table.PlaceOfDate(column))}{(header.Length > 0 ? $" ('{RosterLineReader.Short(header)}')" : "")} was not read: {others[column].Item2}.");
        }
        return others;
    }

    private static bool StartsTotal(string name) => NameFold.Fold(name).Split(' ')[0] is "total" or "totals" or "totaal" or "summe" or "gesamt" or "anzahl";

    private static string FirstText(Sheet sheet, int row)
    {
        for (var column = 1; column <= sheet.Width(row); column++)
            if (!sheet[row, column].IsEmpty) return sheet[row, column].Text;
        return "";
    }

    private static bool OnlyNumbers(RegisterTable table, int row)
    {
        for (var column = 1; column <= table.Sheet.Width(row); column++)
            if (table.Sheet[row, column] is { IsEmpty: false } cell && !cell.Text.All(letter => char.IsAsciiDigit(letter) || letter is '.' or ',' or '%' or '-')) return false;
        return true;
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
