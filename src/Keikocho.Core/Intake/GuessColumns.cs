using static Keikocho.Core.Intake.ColumnMeaning;

namespace Keikocho.Core.Intake;

/// <summary>Finds the table in a sheet of children and what each of its columns tells.</summary>
public static class GuessColumns
{
    private const int RowsToLookAt = 40;
    private const int SampleRows = 200;

    /// <summary>
    /// The header is the row among the first 40 with the most recognised headers (at least two, or one that gives a name); titles lie above it.
    /// A column without a known header is judged by its values where these leave no doubt.
    /// </summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="saidByColumn">What the instructor said a column means, by column from 1; goes before any guess.</param>
    public static ColumnsGuess Guess(Sheet sheet, IReadOnlyDictionary<int, ColumnMeaning>? saidByColumn = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var headerRow = HeaderRow(sheet);
        var last = sheet.Rows;
        while (last > 0 && IsBlank(sheet, last)) last--;
        var first = headerRow + 1;
        while (first <= last && IsBlank(sheet, first)) first++;
        if (headerRow == 0) first = FirstWithoutHeader(sheet, first, last);

        var taken = new HashSet<(ColumnMeaning, string)>();
        var columns = new List<ColumnGuess>();
        var whose = "";
        for (var column = 1; column <= sheet.Columns; column++)
        {
            var header = headerRow > 0 ? sheet[headerRow, column].Text : "";
            if (header.Length == 0 && IsBlankColumn(sheet, column, first, last)) continue;
            if (saidByColumn is not null && saidByColumn.TryGetValue(column, out var said))
            {
                var contact = IsContact(said) ? Whose(said, HeaderWords.Meaning(header)?.Contact ?? new("", null), ref whose, taken) : default;
                columns.Add(new(column, header, said, contact, "you said so"));
                taken.Add((said, contact.Group ?? ""));
                continue;
            }
            var byHeader = header.Length > 0 ? HeaderWords.Meaning(header) : null;
            if (byHeader is { } contacts && IsContact(contacts.Meaning)) byHeader = (contacts.Meaning, Whose(contacts.Meaning, contacts.Contact, ref whose, taken));
            if (byHeader is { } found)
            {
                // A second "Name" beside given names is the contact's or a repetition; several phones of one contact are meant.
                var repeats = !taken.Add((found.Meaning, found.Contact.Group ?? "")) && found.Meaning is not (NotRead or ContactPhone or ContactEmail or Medical or Size or Notes);
                columns.Add(repeats
                    ? new(column, header, NotRead, default, "another column already tells this")
                    : new(column, header, found.Meaning, found.Contact, "its header"));
            }
            else columns.Add(new(column, header, NotRead, default, header.Length > 0 ? "its header is not known" : "it has no header"));
        }
        if (columns.All(column => column.Why != "its header"))
            ByValues(sheet, first, last, columns);
        return new(headerRow, first, last, Reconciled(columns));
    }

    /// <summary>Nothing in this row.</summary>
    internal static bool IsBlank(Sheet sheet, int row)
    {
        for (var column = 1; column <= sheet.Width(row); column++)
            if (!sheet[row, column].IsEmpty) return false;
        return true;
    }

    private static bool IsContact(ColumnMeaning meaning) => meaning is ContactName or ContactPhone or ContactEmail or Relation;

    // "Mum", "Mobile", "E-mail": a contact's column that does not say whose goes with the contact to its left; a second name begins another.
    private static ContactOf Whose(ColumnMeaning meaning, ContactOf contact, ref string left, HashSet<(ColumnMeaning, string)> taken)
    {
        var group = contact.Group.Length > 0 ? contact.Group : left.Length > 0 ? left : "1";
        if (contact.Group.Length == 0 && meaning == ContactName)
            for (var number = 1; taken.Contains((ContactName, group)); number++) group = $"{number + 1}";
        left = group;
        return contact with { Group = group };
    }

    private static int HeaderRow(Sheet sheet)
    {
        var best = 0;
        var bestScore = 0;
        for (var row = 1; row <= Math.Min(sheet.Rows, RowsToLookAt); row++)
        {
            var known = new HashSet<(ColumnMeaning, string?)>();
            var names = false;
            for (var column = 1; column <= Math.Min(sheet.Width(row), 300); column++)
            {
                var cell = sheet[row, column];
                if (cell.Kind != CellKind.Text || cell.FromMerge || HeaderWords.Meaning(cell.Text) is not { } found) continue;
                known.Add((found.Meaning, found.Contact.Group));
                names |= found.Meaning is GivenName or FamilyName or FullName;
            }
            var score = known.Count + (names ? 1 : 0);
            if (known.Count > 0 && score >= 2 && score > bestScore) (best, bestScore) = (row, score);
        }
        return best;
    }

    // Without headers, titles are rows with one cell above rows with several.
    private static int FirstWithoutHeader(Sheet sheet, int first, int last)
    {
        for (var row = first; row <= Math.Min(last, first + RowsToLookAt); row++)
        {
            var filled = 0;
            for (var column = 1; column <= sheet.Width(row); column++)
                if (!sheet[row, column].IsEmpty && !sheet[row, column].FromMerge) filled++;
            if (filled >= 2) return row;
        }
        return first;
    }

    private static bool IsBlankColumn(Sheet sheet, int column, int first, int last)
    {
        for (var row = 1; row <= last; row++)
            if (!sheet[row, column].IsEmpty && (row >= first || !sheet[row, column].FromMerge)) return false;
        return true;
    }

    // Judged only when no header at all was known: a wrong guess about a column that has a header of its own would hide what the club wrote.
    private static void ByValues(Sheet sheet, int first, int last, List<ColumnGuess> columns)
    {
        var names = new List<int>();
        for (var i = 0; i < columns.Count; i++)
        {
            var column = columns[i];
            if (column.Why == "you said so") continue;
            int filled = 0, dates = 0, phones = 0, emails = 0, commas = 0, twoWords = 0, words = 0;
            for (var row = first; row <= Math.Min(last, first + SampleRows); row++)
            {
                var cell = sheet[row, column.Column];
                if (cell.IsEmpty) continue;
                filled++;
                if (DateForms.Read(cell, sheet.From1904).IsDate) dates++;
                else if (ContactForms.IsEmail(cell.Text)) emails++;
                else if (ContactForms.IsPhone(cell.Text) && cell.Text.Count(char.IsAsciiDigit) >= 8) phones++;
                else if (cell.Kind == CellKind.Text && cell.Text.Length <= 60 && cell.Text.All(letter => !char.IsAsciiDigit(letter)))
                {
                    words++;
                    if (cell.Text.Contains(',', StringComparison.Ordinal)) commas++;
                    if (NameFold.Fold(cell.Text).Contains(' ', StringComparison.Ordinal)) twoWords++;
                }
            }
            if (filled == 0) continue;
            bool Most(int count) => count * 5 >= filled * 4;
            if (Most(dates) && columns.All(other => other.Meaning != BirthDate)) columns[i] = column with { Meaning = BirthDate, Why = "its values are dates" };
            else if (Most(emails)) columns[i] = column with { Meaning = ContactEmail, Contact = new("1", null), Why = "its values are e-mail addresses" };
            else if (Most(phones)) columns[i] = column with { Meaning = ContactPhone, Contact = new("1", null), Why = "its values are telephone numbers" };
            else if (Most(words))
            {
                if (names.Count == 0 && (Most(commas) || Most(twoWords)) && columns.All(other => other.Meaning is not (FullName or GivenName)))
                    columns[i] = column with { Meaning = FullName, Why = "its values look like names" };
                else if (names.Count < 2 && columns.All(other => other.Meaning != FullName)) names.Add(i);
            }
        }
        if (names.Count == 2 && columns.All(other => other.Meaning != FullName))
        {
            columns[names[0]] = columns[names[0]] with { Meaning = GivenName, Why = "its values look like names" };
            columns[names[1]] = columns[names[1]] with { Meaning = FamilyName, Why = "its values look like names" };
        }
        else if (names.Count == 1 && columns.All(other => other.Meaning != FullName))
            columns[names[0]] = columns[names[0]] with { Meaning = FullName, Why = "its values look like names" };
    }

    // "Name" beside "First name" is the family name (German, Dutch and French lists); beside both it repeats them.
    private static List<ColumnGuess> Reconciled(List<ColumnGuess> columns)
    {
        var given = columns.Any(column => column.Meaning == GivenName);
        var family = columns.Any(column => column.Meaning == FamilyName);
        for (var i = 0; i < columns.Count; i++)
        {
            if (columns[i].Meaning == FullName && columns[i].Why != "you said so" && given)
                columns[i] = family
                    ? columns[i] with { Meaning = NotRead, Why = "given and family name have their own columns" }
                    : columns[i] with { Meaning = FamilyName, Why = "its header, beside a column of given names" };
            else if (columns[i].Meaning == FamilyName && columns[i].Why == "its header" && !given && NameFold.Fold(columns[i].Header) == "nom")
                columns[i] = columns[i] with { Meaning = FullName, Why = "its header, without a column of given names" };
        }
        return columns;
    }
}
