using Keikocho.Core.Kernel;

namespace Keikocho.Core.Intake;

/// <summary>Reads a register of one row a mark: a name, a date, and perhaps a mark or an arrival.</summary>
internal sealed class RegisterRows
{
    private static readonly HashSet<string> MarkHeaders = ["mark", "status", "attendance", "attended", "present", "presence", "sign", "anwesend", "anwesenheit", "aanwezig", "asistencia"];
    private static readonly HashSet<string> TimeHeaders = ["time", "arrived", "arrival", "arrival time", "in", "time in", "uhrzeit", "zeit", "tijd", "heure", "hora"];

    private readonly int _header;
    private readonly int _date;
    private readonly int _mark;
    private readonly int _time;
    private readonly List<int> _names;
    private readonly int _latestYear;

    private RegisterRows(int header, int date, int mark, int time, List<int> names, int latestYear)
        => (_header, _date, _mark, _time, _names, _latestYear) = (header, date, mark, time, names, latestYear);

    internal static RegisterRows? Find(Sheet sheet, int latestYear)
    {
        int best = 0, bestCount = 1, firstRow = 0;
        for (var column = 1; column <= Math.Min(sheet.Columns, 60); column++)
        {
            int count = 0, first = 0;
            for (var row = 1; row <= Math.Min(sheet.Rows, 300); row++)
            {
                if (!DateForms.Read(sheet[row, column], sheet.From1904, latestYear).IsDate) continue;
                if (count++ == 0) first = row;
            }
            var born = first > 1 && HeaderWords.Meaning(sheet[first - 1, column].Text)?.Meaning is ColumnMeaning.BirthDate or ColumnMeaning.FirstClass or ColumnMeaning.LastPromotion or ColumnMeaning.RegistrationExpiry;
            if (count > bestCount && !born) (best, bestCount, firstRow) = (column, count, first);
        }
        if (best == 0) return null;
        var header = firstRow > 1 && sheet[firstRow - 1, best] is { Kind: CellKind.Text } ? firstRow - 1 : 0;

        int mark = 0, time = 0, markByValues = 0;
        var names = new List<int>();
        var texty = new List<int>();
        for (var column = 1; column <= Math.Min(sheet.Columns, 60); column++)
        {
            if (column == best) continue;
            var text = header > 0 ? NameFold.Fold(sheet[header, column].Text) : "";
            var meaning = text.Length > 0 ? HeaderWords.Meaning(text)?.Meaning : null;
            if (mark == 0 && MarkHeaders.Contains(text)) mark = column;
            else if (time == 0 && TimeHeaders.Contains(text)) time = column;
            else if (meaning is ColumnMeaning.FullName or ColumnMeaning.GivenName or ColumnMeaning.FamilyName) names.Add(column);
            else if (meaning is null)
            {
                int filled = 0, signs = 0, words = 0;
                for (var row = firstRow; row <= Math.Min(sheet.Rows, firstRow + 200); row++)
                {
                    var cell = sheet[row, column];
                    if (cell.IsEmpty) continue;
                    filled++;
                    if (Signs.LooksLikeSign(cell)) signs++;
                    else if (cell.Kind == CellKind.Text && cell.Text.Any(char.IsLetter) && !cell.Text.Any(char.IsAsciiDigit)) words++;
                }
                if (filled > 0 && signs * 10 >= filled * 8 && markByValues == 0) markByValues = column;
                else if (filled > 0 && words * 10 >= filled * 7) texty.Add(column);
            }
        }
        if (names.Count == 0) names.AddRange(texty.Take(1));
        return names.Count == 0 ? null : new(header, best, mark > 0 ? mark : markByValues, time, names, latestYear);
    }

    internal RegisterReading Read(RegisterQuestion question, DoubtBook book)
    {
        var sheet = question.Sheet;
        var notes = new List<string>();
        var left = new Dictionary<int, (Fate Fate, string Why)>();
        var rows = new List<int>();
        for (var row = _header + 1; row <= sheet.Rows; row++)
        {
            if (GuessColumns.IsBlank(sheet, row)) continue;
            if (_header > 0 && sheet[row, _date].Text == sheet[_header, _date].Text) left[row] = (Fate.Ignored, "the headers again");
            else if (HeaderWords.IsTotal(Name(sheet, row).TrimEnd(':', ' ')))
            {
                left[row] = (Fate.Ignored, "a line of totals");
                notes.Add($"Row {row} is a line of totals and was left.");
            }
            else if (Name(sheet, row).Length == 0)
                left[row] = (Fate.SetAside, Missing(book, sheet, row));
            else rows.Add(row);
        }

        var dates = rows.Select(row => (row, Date: Date(sheet, row))).ToList();
        var dayFirst = DateOrder.Decide(book, sheet, _header > 0 ? sheet[_header, _date].Text : "", _date, [.. dates.Where(pair => pair.Date.IsDate)]);
        var dayOf = new Dictionary<int, DateOnly>();
        var waiting = new HashSet<int>();
        foreach (var (row, date) in dates)
        {
            if (date.IsDate)
            {
                if (date.IsAmbiguous && dayFirst is null) waiting.Add(row);
                else dayOf[row] = date.Under(dayFirst ?? true)!.Value;
                continue;
            }
            var text = sheet[row, _date].Text;
            var answer = book.Ask($"row:{row}:date", DoubtKind.DateNotOne,
                $"In {sheet.Place(row, _date)}, {(text.Length == 0 ? "the date is missing" : $"'{RosterLineReader.Short(text)}' is not a date")}; type it or set the line aside.",
                [new("set-aside", "Set the line aside")], null, TypedAnswer.Date, row);
            if (answer == "set-aside") left[row] = (Fate.SetAside, "you set it aside");
            else if (answer is null) waiting.Add(row);
            else dayOf[row] = DoubtBook.TypedDate(answer[1..])!.Value;
        }
        rows.RemoveAll(left.ContainsKey);

        var drafts = rows.GroupBy(row => NameFold.Key(Name(sheet, row))).Select(group => new RegisterDraft(group.First(), Name(sheet, group.First()), Child(sheet, group.First()))).ToList();
        RegisterNames.Resolve(drafts, question, line => $"sheet '{sheet.Name}', row {line.At}", line => NameFold.Key(line.Name), book);
        var byKey = drafts.ToDictionary(line => NameFold.Key(line.Name));
        foreach (var row in rows)
            if (byKey[NameFold.Key(Name(sheet, row))] is { SetAside.Length: > 0 } gone) left[row] = (Fate.SetAside, gone.SetAside);

        var days = new List<RegisterDay>();
        var leftOut = new HashSet<DateOnly>();
        foreach (var group in rows.Where(row => !left.ContainsKey(row) && dayOf.ContainsKey(row)).GroupBy(row => dayOf[row]).OrderBy(group => group.Key))
        {
            var standing = ReadRegister.Standing(group.Key, marks: true, question.Today, group.Key.Iso(), $"sheet '{sheet.Name}', row {group.First()}", book, notes);
            days.Add(new(group.Key, standing, group.First()));
            if (standing == DayStanding.Held) continue;
            leftOut.Add(group.Key);
            foreach (var row in group) left[row] = (Fate.Ignored, standing == DayStanding.Open ? "its date waits for an answer" : "this date was left out");
        }

        var marks = Marks(question, sheet, rows.Where(row => !left.ContainsKey(row) && dayOf.ContainsKey(row)).ToList(), dayOf, byKey, book, notes);
        NoteOtherColumns(sheet, notes);
        var fates = ReadRegister.Fates(sheet, (row, column) =>
            row <= _header ? (Fate.Heading, row == _header ? "header" : "title")
            : left.TryGetValue(row, out var whole) ? whole
            : column == _date || column == _mark || column == _time || _names.Contains(column)
                ? waiting.Contains(row) ? (Fate.Ignored, "its date waits for an answer") : sheet[row, column].Kind == CellKind.Error ? (Fate.Ignored, "a formula that failed") : (Fate.Read, "")
            : Other(sheet, column));
        return new(RegisterLayout.OneRowAMark, [.. drafts.Select(line => line.Done())], days, marks, book.Doubts, notes, fates);
    }

    private List<RegisterMark> Marks(RegisterQuestion question, Sheet sheet, List<int> rows, Dictionary<int, DateOnly> dayOf, Dictionary<string, RegisterDraft> byKey, DoubtBook book, List<string> notes)
    {
        var signs = new RegisterSigns(_mark == 0 ? [] : rows.Select(row => (sheet[row, _mark], sheet.Place(row, _mark))), book);
        if (_mark == 0) notes.Add("No column holds marks: every row was read as present.");
        var marks = new RegisterMarks(question, book);
        foreach (var row in rows)
        {
            if (byKey[NameFold.Key(Name(sheet, row))].Who is not { } who) continue;
            RegisterSays? says = new RegisterSays(RegisterWord.Present, null);
            if (_mark > 0 && !sheet[row, _mark].IsEmpty) says = signs.Read(sheet[row, _mark]).Says;
            else if (_mark > 0)
                says = book.Ask("blank", DoubtKind.BlankMeaning, $"In sheet '{sheet.Name}', some rows have a name and a date but no mark (first in row {row}); say what that means.",
                    [new("present", "Present: the row is the mark"), new("absent", "Absent"), new("nothing", "Nothing was noted")]) switch
                {
                    "present" => new(RegisterWord.Present, null),
                    "absent" => new(RegisterWord.Absent, null),
                    _ => null,
                };
            if (says is { Word: RegisterWord.Late, Arrived: null } && _time > 0 && Signs.Arrival(sheet[row, _time]) is { } arrived) says = new(RegisterWord.Late, arrived);
            if (says is not { } word) continue;
            var column = _mark > 0 ? _mark : _date;
            if (marks.Add(who, dayOf[row], word, blank: false, row, column) is not { } other) continue;
            var answer = book.Ask($"mark-twice:{who.Person?.Value.ToString("D") ?? who.NewKey}:{dayOf[row].Iso()}", DoubtKind.LineTwice,
                $"In sheet '{sheet.Name}', {Name(sheet, row)} has two marks for {dayOf[row].Full()}: {RegisterMarks.Say(other.Says)} in row {other.Row}, {RegisterMarks.Say(word)} in row {row}; say which holds.",
                [new("first", $"Row {other.Row}: {RegisterMarks.Say(other.Says)}"), new("later", $"Row {row}: {RegisterMarks.Say(word)}")], null, TypedAnswer.None, other.Row, row);
            if (answer is not null) marks.Set(who, dayOf[row], answer == "first" ? other.Says : word);
        }
        return marks.Done();
    }

    private static string Missing(DoubtBook book, Sheet sheet, int row)
    {
        book.Ask($"row:{row}:name", DoubtKind.NameMissing, $"In sheet '{sheet.Name}', row {row} has no name; it can only be set aside.", [new("set-aside", "Set the line aside")], "set-aside", TypedAnswer.None, row);
        return "it has no name";
    }

    private string Name(Sheet sheet, int row) => string.Join(' ', _names.Select(column => sheet[row, column].Text).Where(text => text.Length > 0));

    private RosterChild Child(Sheet sheet, int row)
    {
        if (_names.Count == 1 || _header == 0) return RegisterNames.Parts(Name(sheet, row));
        var given = _names.Find(column => HeaderWords.Meaning(sheet[_header, column].Text)?.Meaning == ColumnMeaning.GivenName);
        if (given == 0) return RegisterNames.Parts(Name(sheet, row));
        return new RosterChild { GivenName = sheet[row, given].Text, FamilyName = string.Join(' ', _names.Where(column => column != given).Select(column => sheet[row, column].Text)) };
    }

    private DateRead Date(Sheet sheet, int row) => DateForms.Read(sheet[row, _date], sheet.From1904, _latestYear);

    private (Fate, string) Other(Sheet sheet, int column)
        => (_header > 0 ? HeaderWords.Meaning(sheet[_header, column].Text)?.Meaning : null) switch
        {
            ColumnMeaning.Medical => (Fate.SetAside, "medical"),
            ColumnMeaning.Size => (Fate.SetAside, "a size"),
            _ => (Fate.Ignored, "not part of the register"),
        };

    private void NoteOtherColumns(Sheet sheet, List<string> notes)
    {
        for (var column = 1; column <= sheet.Columns && _header > 0; column++)
            if (column != _date && column != _mark && column != _time && !_names.Contains(column) && sheet[_header, column] is { IsEmpty: false } header)
                notes.Add($"Sheet '{sheet.Name}', column {CellPlace.Letters(column)} ('{RosterLineReader.Short(header.Text)}') was not read: {Other(sheet, column).Item2}.");
    }
}
