using Keikocho.Core.Kernel;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Intake;

/// <summary>
/// Reads a sign-off grid as clubs keep it: children one way, items the other; in the cells a tick, a date, a letter, initials. Falls are
/// never read from a paper: they are seen again on the mat.
/// </summary>
/// <remarks>Pure: the same question gives the same reading; the answers are part of the next question.</remarks>
public static class ReadSignOffs
{
    private const string LeaveOut = "leave-out";

    /// <summary>What the sheet says, what is in doubt, and what became of every cell.</summary>
    public static SignOffReading Read(SignOffQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var book = new DoubtBook(question.Answers);
        var items = new SignOffItems(question.Items, question.Techniques);
        if (question.Items.Count == 0 || SignOffTable.Find(question.Sheet, items) is not { } table)
        {
            book.Ask("nothing", DoubtKind.NothingFound, question.Items.Count == 0
                ? "The club has no syllabus yet, so no heading can be an item; write the ladder first, then read this file."
                : $"Sheet '{question.Sheet.Name}' has no two headings that are items of the syllabus, with names beside them; choose another sheet.", []);
            return new(SignOffLayout.None, [], [], [], book.Doubts, [], ReadRegister.Fates(question.Sheet, (_, _) => (Fate.Ignored, "no sign-off grid was found")));
        }

        var notes = new List<string>();
        var leftRows = new Dictionary<int, (Fate Fate, string Why)>();
        var columns = Columns(table, items, book, notes);
        var lines = Lines(question, table, leftRows, book, notes);
        var read = lines.Where(line => line.Who is not null).ToList();
        var kept = columns.Where(column => column.Item is not null).ToList();
        var marks = new SignOffMarks(question, table, book, notes).Read(read, kept);
        var byColumn = columns.ToDictionary(column => column.At);
        var fates = ReadRegister.Fates(question.Sheet, (fileRow, fileColumn) =>
        {
            var (row, column) = table.Turned ? (fileColumn, fileRow) : (fileRow, fileColumn);
            if (row <= table.HeaderRow) return (Fate.Heading, row == table.HeaderRow ? "header" : "title");
            if (leftRows.TryGetValue(row, out var whole)) return whole;
            if (table.NameColumns.Contains(column)) return (Fate.Read, "");
            if (!byColumn.TryGetValue(column, out var item)) return OtherColumn(table, column);
            if (item.LeftOut.Length > 0) return (Fate.SetAside, item.LeftOut);
            return table.Sheet[row, column].Kind == CellKind.Error ? (Fate.Ignored, "a formula that failed") : (Fate.Read, "");
        });
        return new(
            table.Turned ? SignOffLayout.ItemsDown : SignOffLayout.ChildrenDown,
            [.. lines.Select(line => line.Done())],
            columns,
            marks,
            book.Doubts,
            notes,
            fates);
    }

    private static List<SignOffColumn> Columns(SignOffTable table, SignOffItems items, DoubtBook book, List<string> notes)
    {
        var columns = new List<SignOffColumn>();
        var taken = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (column, heading) in table.Headings)
        {
            var place = table.PlaceOfItem(column);
            var meant = items.Find(heading);
            // "Ukemi" above ticks is the falls, not the word, though the word is an item too.
            var falls = FallWords.Has(heading) && !(meant.Certain && meant.Candidates[0].Kind is not (ItemKind.Fall or ItemKind.Word));
            if (falls)
            {
                LeaveFalls();
                continue;
            }

            var item = meant.Certain ? meant.Candidates[0] : null;
            if (item is not null && !meant.Written) notes.Add($"{Capital(place)} ('{RosterLineReader.Short(heading)}') was read as {item.Name}.");
            if (item is null)
            {
                var answer = AskItem(column, heading, place, meant, items, book);
                if (answer is null or LeaveOut)
                {
                    columns.Add(new(column, heading, null, answer is null ? "" : "you left it out"));
                    continue;
                }

                item = answer.StartsWith('=') ? Typed(items, answer[1..])! : meant.Candidates.First(c => "item:" + c.Key == answer);
            }

            if (item.Kind == ItemKind.Fall) LeaveFalls();
            else
            {
                if (!taken.TryAdd(item.Key, column)) notes.Add($"{Capital(place)} ('{RosterLineReader.Short(heading)}') was read together with {table.PlaceOfItem(taken[item.Key])}: both are {item.Name}.");
                columns.Add(new(column, heading, item.Key, ""));
            }

            void LeaveFalls()
            {
                notes.Add($"{Capital(place)} ('{RosterLineReader.Short(heading)}') was not read: falls are seen again on the mat, never taken from a paper.");
                columns.Add(new(column, heading, null, "falls are seen again on the mat"));
            }
        }

        return columns;
    }

    private static string? AskItem(int column, string heading, string place, ItemsMeant meant, SignOffItems items, DoubtBook book)
    {
        List<Offer> offers = [.. meant.Candidates.Select(c => new Offer("item:" + c.Key, c.Name)), new(LeaveOut, "Leave this out")];
        return book.Ask($"item:{column}", DoubtKind.WhichItem, meant.Candidates.Count == 0
                ? $"In {place}, '{RosterLineReader.Short(heading)}' is no item of the syllabus; type the item’s name as the syllabus has it, or leave it out."
                : $"In {place}, '{RosterLineReader.Short(heading)}' may be {string.Join(" or ", meant.Candidates.Select(c => c.Name))}; say which.",
            offers, meant.Candidates.Count == 0 ? LeaveOut : meant.Likely is { } likely ? "item:" + likely.Key : null, TypedAnswer.Text, value => Typed(items, value) is not null, []);
    }

    private static Item? Typed(SignOffItems items, string typed) => items.Find(typed.Trim()) is { Certain: true } found ? found.Candidates[0] : null;

    private static List<RegisterDraft> Lines(SignOffQuestion question, SignOffTable table, Dictionary<int, (Fate Fate, string Why)> left, DoubtBook book, List<string> notes)
    {
        var sheet = table.Sheet;
        var index = new WhoIsIt(question.Known);
        var lines = new List<RegisterDraft>();
        var first = new Dictionary<PersonId, int>();
        for (var row = table.HeaderRow + 1; row <= sheet.Rows; row++)
        {
            if (GuessColumns.IsBlank(sheet, row)) continue;
            var cells = table.NameColumns.Select(column => sheet[row, column]).Where(cell => !cell.IsEmpty).ToList();
            var name = string.Join(' ', cells.Select(cell => cell.Text));
            var marks = table.Headings.Any(heading => sheet[row, heading.Column] is { IsEmpty: false, FromMerge: false });
            if (name.Length == 0 || HeaderWords.IsTotal(name.TrimEnd(':', ' ')) || HeaderWords.IsTotal(name.Split(' ')[0].TrimEnd(':')))
            {
                left[row] = (Fate.Ignored, name.Length == 0 ? "it has no name" : "a line of totals");
                if (name.Length == 0 && marks) notes.Add($"{Capital(table.PlaceOfLine(row))} has no name and was left.");
                continue;
            }

            if (!marks && (cells.TrueForAll(cell => cell.FromMerge) || index.Find(name).Candidates.Count == 0))
            {
                left[row] = (Fate.Ignored, "a heading, or a line without a mark");
                continue;
            }

            var line = new RegisterDraft(row, name, RegisterNames.Parts(name));
            lines.Add(line);
            Who(question, table, index, line, book);
            if (line.Who?.Person is { } who && !first.TryAdd(who, row)) notes.Add($"{Capital(table.PlaceOfLine(row))} is the same child as {table.PlaceOfLine(first[who])}; both were read.");
            if (line.SetAside.Length > 0) left[row] = (Fate.SetAside, line.SetAside);
        }

        return lines;
    }

    // Nobody is made by a sign-off grid: a child comes in with the list of children, with a birth date and a contact.
    private static void Who(SignOffQuestion question, SignOffTable table, WhoIsIt index, RegisterDraft line, DoubtBook book)
    {
        if (question.Answers.ByKey.TryGetValue($"line:{line.At}", out var said) && said == "set-aside")
        {
            line.SetAside = "you set it aside";
            return;
        }

        if (question.Erased.Contains(line.Name, null))
        {
            line.SetAside = "this person was erased and is not brought back";
            return;
        }

        var (candidates, certain) = index.Find(line.Name);
        if (certain)
        {
            line.Who = new(candidates[0].Id, null);
            return;
        }

        List<Offer> offers = [.. candidates.Select(person => new Offer("known:" + person.Id.Value.ToString("D"), Say(person))), new("set-aside", "Set this line aside")];
        var answer = book.Ask($"who:{line.At}", DoubtKind.WhoIsIt, candidates.Count == 0
                ? $"In {table.PlaceOfLine(line.At)}, nobody here is called '{RosterLineReader.Short(line.Name)}'; set the line aside, or add the child to the club first and read the file again."
                : $"In {table.PlaceOfLine(line.At)}, '{RosterLineReader.Short(line.Name)}' may be {string.Join(" or ", candidates.Select(Say))}; say who it is.",
            offers, candidates.Count == 0 ? "set-aside" : null);
        if (answer == "set-aside") line.SetAside = "you set it aside";
        else if (answer is not null) line.Who = new(candidates.Find(person => answer == "known:" + person.Id.Value.ToString("D"))!.Id, null);
    }

    private static (Fate Fate, string Why) OtherColumn(SignOffTable table, int column)
    {
        var header = table.Sheet[table.HeaderRow, column].Text ?? "";
        return HeaderWords.Meaning(header)?.Meaning switch
        {
            ColumnMeaning.Medical => (Fate.SetAside, "medical"),
            ColumnMeaning.Size => (Fate.SetAside, "a size"),
            _ when HeaderWords.IsTotal(header) || header.Contains('%', StringComparison.Ordinal) => (Fate.Ignored, "a column of totals"),
            _ => (Fate.Ignored, "not an item"),
        };
    }

    private static string Say(KnownPerson person)
        => person.Child.BirthDate is { } birth ? $"{person.Child.FullName} (born {birth.Full()})" : person.Child.FullName;

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
