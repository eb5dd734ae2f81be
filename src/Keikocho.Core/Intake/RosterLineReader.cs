using Keikocho.Core.Kernel;
using static Keikocho.Core.Intake.ColumnMeaning;

namespace Keikocho.Core.Intake;

/// <summary>A line while it is being read.</summary>
internal sealed class DraftLine(int row)
{
    internal List<int> Rows { get; } = [row];
    internal int Row => Rows[0];
    internal RosterChild Child { get; set; } = new();
    internal bool Waits { get; set; }
    internal string? SetAside { get; set; }
    internal PersonId? Person { get; set; }
    internal IReadOnlyList<Difference> Differences { get; set; } = [];
}

/// <summary>Reads the values of single lines, and puts down what is in doubt about them.</summary>
internal sealed class RosterLineReader
{
    private static readonly ColumnMeaning[] DateMeanings = [BirthDate, FirstClass, LastPromotion, RegistrationExpiry];
    private static readonly Offer SetAsideLine = new("set-aside", "Set the line aside");

    private readonly RosterQuestion _question;
    private readonly Sheet _sheet;
    private readonly DoubtBook _book;
    private readonly ColumnsGuess _columns;
    private readonly Dictionary<int, (bool? DayFirst, bool Swap)> _orders = [];
    private readonly HashSet<int> _lostZero = [];
    private readonly Dictionary<string, string> _ranks;
    private readonly bool? _givenFirst;

    internal RosterLineReader(RosterQuestion question, ColumnsGuess columns, IReadOnlyList<int> rows, DoubtBook book, List<string> notes)
    {
        (_question, _sheet, _book, _columns) = (question, question.Sheet, book, columns);
        foreach (var column in columns.Columns.Where(column => DateMeanings.Contains(column.Meaning)))
        {
            var dates = rows.Select(row => (row, Date(row, column))).Where(pair => pair.Item2.IsDate).ToList();
            var swap = DateOrder.Swapped(book, _sheet, column.Header, column.Column, dates);
            _orders[column.Column] = (DateOrder.Decide(book, _sheet, column.Header, column.Column, dates), swap);
            var bare = dates.Count(pair => pair.Item2.Form is { } form && form.StartsWith("day number", StringComparison.Ordinal));
            if (bare > 0) notes.Add($"Column {CellPlace.Letters(column.Column)} ('{column.Header}') holds {bare} bare day numbers; they were read as days since {(_sheet.From1904 ? "1904" : "1900")}, as spreadsheets count.");
        }
        foreach (var column in columns.Columns.Where(column => column.Meaning == Sex))
        {
            var unread = rows.Count(row => !_sheet[row, column.Column].IsEmpty && SexWords.Read(_sheet[row, column.Column].Text).Length == 0);
            if (unread > 0) notes.Add($"Column {CellPlace.Letters(column.Column)} ('{column.Header}') holds {unread} words that say neither F, M nor X; they were left.");
        }
        foreach (var column in columns.Columns.Where(column => column.Meaning == ContactPhone)) AskLostZero(column, rows);
        _givenFirst = AskNameOrder(rows);
        _ranks = question.Ranks.GroupBy(NameFold.Fold).ToDictionary(group => group.Key, group => group.First());
    }

    internal DraftLine Read(int row)
    {
        var line = new DraftLine(row);
        if (_question.Answers.ByKey.TryGetValue($"row:{row}", out var said) && said == "set-aside") line.SetAside = "you set it aside";
        var child = new RosterChild();
        var contacts = new Dictionary<string, ContactDraft>();
        foreach (var column in _columns.Columns)
        {
            if (line.SetAside is not null) break;
            var cell = _sheet[row, column.Column];
            if (cell.IsEmpty || column.IsSetAside) continue;
            if (cell.Kind == CellKind.Error && column.Meaning != NotRead) continue;
            child = column.Meaning switch
            {
                GivenName => child with { GivenName = cell.Text },
                FamilyName => child with { FamilyName = cell.Text },
                FullName => Whole(line, child, cell.Text),
                CalledName => child with { CalledName = cell.Text },
                BirthDate => child with { BirthDate = ReadDate(line, column, "birth", "birth date") },
                Sex => child with { Sex = SexWords.Read(cell.Text) },
                Rank => child with { Rank = ReadRank(line, cell.Text) },
                FirstClass => child with { FirstClass = ReadDate(line, column, "first-class", "first lesson") },
                LastPromotion => child with { LastPromotion = ReadDate(line, column, "promotion", "last promotion") },
                PhotoConsent => child with { PhotoConsent = ReadConsent(line, cell) },
                RegistrationNumber => child with { RegistrationNumber = cell.Text },
                RegistrationExpiry => child with { RegistrationExpiry = ReadDate(line, column, "expiry", "registration expiry") },
                Group => child with { Group = Join(child.Group, cell.Text) },
                Notes => child with { Notes = Join(child.Notes, cell.Text) },
                ContactName or ContactPhone or ContactEmail or Relation => Contact(line, child, column, cell, contacts),
                _ => child,
            };
        }
        child = child with { Contacts = [.. contacts.Values.Where(contact => contact.HoldsSomething).Select(contact => contact.Done())] };
        if (line.SetAside is null) child = AskNames(line, child);
        if (line.SetAside is null) child = AskBirth(line, child);
        if (line.SetAside is null) child = AskOtherDates(line, child);
        line.Child = line.SetAside is null ? child : new RosterChild();
        if (line.SetAside is not null) _book.ForgetOpen(row);
        return line;
    }

    private DateRead Date(int row, ColumnGuess column)
        => DateForms.Read(_sheet[row, column.Column], _sheet.From1904, column.Meaning == RegistrationExpiry ? _question.Today.Year + 20 : _question.Today.Year);

    private string Where(int row, int column) => _sheet.Place(row, column).ToString();

    private string WhereRow(int row) => $"sheet '{_sheet.Name}', row {row}";

    private RosterChild Whole(DraftLine line, RosterChild child, string text)
    {
        if (NameParts.Evident(text) is { } evident) return child with { GivenName = evident.Given, FamilyName = evident.Family };
        if (_givenFirst is not { } givenFirst)
        {
            line.Waits = true;
            givenFirst = true;
        }
        var (given, family) = NameParts.Under(text, givenFirst);
        return child with { GivenName = given, FamilyName = family };
    }

    private bool? AskNameOrder(IReadOnlyList<int> rows)
    {
        if (_columns.With(FullName) is not { } column) return true;
        var header = NameFold.Fold(column.Header);
        if (header is "nom prenom" or "nom et prenom" or "name vorname" or "apellidos y nombre") return false;
        if (header is "prenom nom" or "vor und nachname" or "nombre y apellidos") return true;
        var open = rows.Where(row => _sheet[row, column.Column] is { IsEmpty: false } cell && NameParts.Evident(cell.Text) is null).ToList();
        if (open.Count == 0) return true;
        var text = _sheet[open[0], column.Column].Text;
        var (given, family) = NameParts.Under(text, givenFirst: true);
        var (givenLast, familyFirst) = NameParts.Under(text, givenFirst: false);
        var answer = _book.Ask($"name-order:{column.Column}", DoubtKind.NameOrder,
            $"In sheet '{_sheet.Name}', column {CellPlace.Letters(column.Column)} holds whole names, and {open.Count} of them do not show which part is the family name: is '{text}' in row {open[0]} {given} of the family {family}? Say which comes first.",
            [new("given-first", $"Given name first: {given}, family {family}"), new("family-first", $"Family name first: {givenLast}, family {familyFirst}")], "given-first");
        return answer is null ? null : answer == "given-first";
    }

    private void AskLostZero(ColumnGuess column, IReadOnlyList<int> rows)
    {
        var numbers = rows.Where(row => _sheet[row, column.Column] is { Kind: CellKind.Number } cell && ContactForms.IsPhone(cell.Text) && cell.Text[0] != '0').ToList();
        if (numbers.Count == 0) return;
        var sample = _sheet[numbers[0], column.Column].Text;
        if (_book.Ask($"phone-zero:{column.Column}", DoubtKind.PhoneLostZero,
            $"In sheet '{_sheet.Name}', column {CellPlace.Letters(column.Column)} ('{column.Header}'), {numbers.Count} telephone numbers are kept as plain numbers, and a spreadsheet drops the 0 in front: is row {numbers[0]} 0{sample} or {sample}?",
            [new("add-zero", $"Put the 0 back: 0{sample}"), new("as-written", $"As written: {sample}")], "add-zero") == "add-zero")
            _lostZero.Add(column.Column);
    }

    private DateOnly? ReadDate(DraftLine line, ColumnGuess column, string key, string name)
    {
        var cell = _sheet[line.Row, column.Column];
        var read = Date(line.Row, column);
        if (!read.IsDate)
        {
            var answer = _book.Ask($"row:{line.Row}:{key}", DoubtKind.DateNotOne,
                $"In {Where(line.Row, column.Column)}, '{Short(cell.Text)}' is {(read.LooksLikeDate ? "no day of the calendar" : "not a date")}; type the {name}, leave it out or set the line aside.",
                [new("leave-out", $"Leave the {name} out"), SetAsideLine], null, TypedAnswer.Date, line.Row);
            return Settle(line, answer);
        }
        var (dayFirst, swap) = _orders[column.Column];
        if (read.IsAmbiguous && dayFirst is null)
        {
            line.Waits = true;
            return null;
        }
        var day = read.Under(dayFirst ?? true);
        return swap && cell.Kind == CellKind.Date && day is { } swapped ? DateOrder.Swap(swapped) : day;
    }

    private static DateOnly? Settle(DraftLine line, string? answer)
    {
        if (answer == "set-aside") line.SetAside = "you set it aside";
        if (answer is null) line.Waits = true;
        return answer is not null && answer.StartsWith('=') ? DoubtBook.TypedDate(answer[1..]) : null;
    }

    private string ReadRank(DraftLine line, string text)
    {
        if (_question.Ranks.Count == 0) return text;
        var folded = NameFold.Fold(text);
        if (_ranks.TryGetValue(folded, out var rank)) return rank;
        var words = folded.Split(' ');
        var near = _question.Ranks.Where(candidate => NameFold.Fold(candidate).Split(' ') is var other
            && (words.All(word => other.Contains(word)) || other.All(word => words.Contains(word)) || NameFold.Distance(folded, NameFold.Fold(candidate), 2) <= 2)).ToList();
        List<Offer> offers = [.. near.Concat(_question.Ranks.Except(near)).Select(candidate => new Offer("rank:" + candidate, candidate)), new("keep", $"Keep '{Short(text)}' as written"), new("leave-out", "Leave the rank out")];
        var answer = _book.Ask($"rank:{folded}", DoubtKind.RankUnknown,
            $"The ladder has no rank '{Short(text)}' (first in {WhereRow(line.Row)}); say which rank it is. The answer holds for every line that says so.",
            offers, near.Count == 1 ? "rank:" + near[0] : null);
        if (answer is null) line.Waits = true;
        return answer is null or "leave-out" ? "" : answer == "keep" ? text : answer["rank:".Length..];
    }

    private bool? ReadConsent(DraftLine line, Cell cell)
    {
        if (ConsentWords.Read(cell) is { } known) return known;
        var answer = _book.Ask($"consent:{NameFold.Fold(cell.Text)}:{(NameFold.Fold(cell.Text).Length == 0 ? cell.Text : "")}", DoubtKind.ConsentUnknown,
            $"Photo consent '{Short(cell.Text)}' (first in {WhereRow(line.Row)}) is neither yes nor no; say what it means. The answer holds for every line that says so.",
            [new("yes", "Yes"), new("no", "No"), new("unknown", "Not known: no consent is held")], "unknown");
        if (answer is null) line.Waits = true;
        return answer == "yes" ? true : answer == "no" ? false : null;
    }

    private RosterChild Contact(DraftLine line, RosterChild child, ColumnGuess column, Cell cell, Dictionary<string, ContactDraft> contacts)
    {
        var group = column.Contact.Group ?? "1";
        if (!contacts.TryGetValue(group, out var contact)) contacts.Add(group, contact = new ContactDraft(column.Contact.Relation ?? ""));
        if (column.Contact.Relation is { } relation && contact.Relation.Length == 0) contact.Relation = relation;
        switch (column.Meaning)
        {
            case ContactName:
                var (name, phone) = ContactDraft.NameAndPhone(cell.Text);
                contact.Name = Join(contact.Name, name);
                if (phone is not null) contact.Phones.Add(phone);
                break;
            case Relation:
                contact.Relation = cell.Text;
                break;
            case ContactEmail:
                foreach (var email in ContactForms.Several(cell.Text))
                    if (ContactForms.IsEmail(email)) contact.Emails.Add(email);
                    else AskContact(line, column, email, DoubtKind.EmailNotOne, "an e-mail address", contact.Emails);
                break;
            default:
                if (cell.Kind == CellKind.Number && ContactForms.IsPhone(cell.Text))
                {
                    contact.Phones.Add(_lostZero.Contains(column.Column) && cell.Text[0] != '0' ? "0" + cell.Text : cell.Text);
                    break;
                }
                foreach (var part in ContactForms.Several(cell.Text))
                {
                    var (of, number) = ContactDraft.NameAndPhone(part);
                    if (number is null) AskContact(line, column, part, DoubtKind.PhoneNotOne, "a telephone number", contact.Phones);
                    else
                    {
                        contact.Phones.Add(number);
                        if (of.Length > 0 && contact.Relation.Length == 0) contact.Relation = of;
                    }
                }
                break;
        }
        return child;
    }

    private void AskContact(DraftLine line, ColumnGuess column, string text, DoubtKind kind, string what, List<string> into)
    {
        var answer = _book.Ask($"row:{line.Row}:contact:{column.Column}:{NameFold.Fold(text)}", kind,
            $"In {Where(line.Row, column.Column)}, '{Short(text)}' is not {what}; type it, keep it as written or leave it out.",
            [new("keep", "Keep as written"), new("leave-out", "Leave it out"), SetAsideLine], null, TypedAnswer.Text, line.Row);
        if (answer is null) line.Waits = true;
        else if (answer == "set-aside") line.SetAside = "you set it aside";
        else if (answer == "keep") into.Add(text);
        else if (answer.StartsWith('=')) into.Add(answer[1..].Trim());
    }

    private RosterChild AskNames(DraftLine line, RosterChild child)
    {
        if (child.GivenName.Length > 0 && child.FamilyName.Length > 0) return child;
        var nothing = child.FullName.Length == 0;
        var missing = nothing ? "name" : child.GivenName.Length == 0 ? "given name" : "family name";
        List<Offer> offers = nothing ? [SetAsideLine] : [new("keep", $"Keep '{Short(child.FullName)}' alone"), SetAsideLine];
        var answer = _book.Ask($"row:{line.Row}:name", DoubtKind.NameMissing,
            $"In {WhereRow(line.Row)}, the {missing} is missing{(nothing ? "" : $" ('{Short(child.FullName)}')")}; type it{(nothing ? " (family name, given name)" : "")} or set the line aside.",
            offers, nothing ? "set-aside" : null, TypedAnswer.Text, line.Row);
        if (answer is null) line.Waits = true;
        if (answer == "set-aside") line.SetAside = "it has no name; you set it aside";
        if (answer is null || !answer.StartsWith('=')) return child;
        var typed = answer[1..].Trim();
        if (!nothing) return child.GivenName.Length == 0 ? child with { GivenName = typed } : child with { FamilyName = typed };
        var (given, family) = NameParts.Evident(typed) ?? NameParts.Under(typed, givenFirst: true);
        return child with { GivenName = given, FamilyName = family };
    }

    private RosterChild AskBirth(DraftLine line, RosterChild child)
    {
        if (child.BirthDate is not { } birth)
        {
            // A birth date that is there but waits for its own answer is not missing.
            if (_columns.With(BirthDate) is { } column && !_sheet[line.Row, column.Column].IsEmpty) return child;
            if (_columns.With(BirthDate) is null) return child;
            var typed = _book.Ask($"row:{line.Row}:birth", DoubtKind.BirthMissing,
                $"In {WhereRow(line.Row)}, {child.FullName} has no birth date; type it, or go on without (the youngest band of ages counts until it is known).",
                [new("leave-out", "Go on without"), SetAsideLine], "leave-out", TypedAnswer.Date, line.Row);
            return child with { BirthDate = Settle(line, typed) };
        }
        var age = Age(birth, _question.Today);
        var odd = birth > _question.Today ? "lies in the future" : age < 3 ? $"makes {child.FullName} {age}" : age > 18 ? $"makes {child.FullName} {age}" : null;
        if (odd is null) return child;
        var key = $"row:{line.Row}:age";
        List<Offer> offers = age is >= 0 and <= 100 && birth <= _question.Today
            ? [new("keep", age > 18 ? "It is right: an adult" : "It is right"), new("leave-out", "Leave the birth date out"), SetAsideLine]
            : [new("leave-out", "Leave the birth date out"), SetAsideLine];
        var answer = _book.Ask(key, DoubtKind.DateUnlikely, $"In {WhereRow(line.Row)}, the birth date {birth.Full()} {odd}; keep it, type the right one or leave it out.", offers, age is > 18 and <= 100 ? "keep" : null, TypedAnswer.Date, line.Row);
        if (answer == "keep") return child;
        // While a likely date waits, it serves to find the child; an impossible one would only make more doubts.
        if (answer is null && age is > 18 and <= 100)
        {
            line.Waits = true;
            return child;
        }
        return child with { BirthDate = Settle(line, answer) };
    }

    private RosterChild AskOtherDates(DraftLine line, RosterChild child)
    {
        child = child with { FirstClass = Check(line, child.FirstClass, child, "first-class", "first lesson", _question.Today) };
        if (line.SetAside is null) child = child with { LastPromotion = Check(line, child.LastPromotion, child, "promotion", "last promotion", _question.Today) };
        if (line.SetAside is null) child = child with { RegistrationExpiry = Check(line, child.RegistrationExpiry, child, "expiry", "registration expiry", _question.Today.AddYears(20)) };
        return child;
    }

    private DateOnly? Check(DraftLine line, DateOnly? day, RosterChild child, string key, string name, DateOnly latest)
    {
        if (day is not { } found) return null;
        var odd = found > latest ? $"lies after {latest.Full()}" : child.BirthDate is { } birth && found < birth ? $"lies before the birth date {birth.Full()}" : null;
        if (odd is null) return day;
        var answer = _book.Ask($"row:{line.Row}:{key}:unlikely", DoubtKind.DateUnlikely, $"In {WhereRow(line.Row)}, the {name} {found.Full()} {odd}; keep it, type the right one or leave it out.",
            [new("keep", "It is right"), new("leave-out", $"Leave the {name} out"), SetAsideLine], null, TypedAnswer.Date, line.Row);
        return answer is null or "keep" ? day : Settle(line, answer);
    }

    /// <summary>Full years on a day; someone born on 29 February turns on 1 March in other years.</summary>
    internal static int Age(DateOnly birth, DateOnly on)
        => on.Year - birth.Year - (on.Month < birth.Month || on.Month == birth.Month && on.Day < birth.Day ? 1 : 0);

    private static string Join(string old, string more) => old.Length == 0 ? more : old == more ? old : $"{old}; {more}";

    internal static string Short(string text) => text.Length <= 40 ? text : text[..39] + "…";
}
