using Keikocho.Core.Kernel;

namespace Keikocho.Core.Intake;

/// <summary>The persons the club has, found by registration number, folded name and birth date.</summary>
internal sealed class KnownIndex
{
    private static readonly List<KnownPerson> Nobody = [];
    private readonly Dictionary<string, List<KnownPerson>> _byNumber = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<KnownPerson>> _byName = new(StringComparer.Ordinal);
    private readonly Dictionary<(DateOnly, string), List<KnownPerson>> _byBirth = [];

    internal KnownIndex(IReadOnlyList<KnownPerson> known)
    {
        foreach (var person in known)
        {
            Add(_byNumber, NameFold.Fold(person.Child.RegistrationNumber), person);
            Add(_byName, person.Child.NameKey, person);
            if (person.Child.CalledName.Length > 0) Add(_byName, NameFold.Key($"{person.Child.CalledName} {person.Child.FamilyName}"), person);
            if (person.Child.BirthDate is not { } birth) continue;
            var key = (birth, NameFold.Fold(person.Child.FamilyName));
            if (!_byBirth.TryGetValue(key, out var list)) _byBirth.Add(key, list = []);
            list.Add(person);
        }
    }

    internal List<KnownPerson> Named(RosterChild child) => _byName.GetValueOrDefault(child.NameKey, Nobody);

    internal List<KnownPerson> Numbered(RosterChild child) => _byNumber.GetValueOrDefault(NameFold.Fold(child.RegistrationNumber), Nobody);

    internal IEnumerable<KnownPerson> Nearly(RosterChild child)
        => child.BirthDate is { } birth && _byBirth.TryGetValue((birth, NameFold.Fold(child.FamilyName)), out var list)
            ? list.Where(person => RosterTwins.NearlySame(person.Child, child)) : Nobody;

    /// <summary>The one person this certainly is: two of number, name and birth date agree, or the name alone where neither side has a birth date.</summary>
    internal KnownPerson? Certain(RosterChild child)
    {
        var numbered = Numbered(child).Where(person => person.Child.NameKey == child.NameKey || child.BirthDate is not null && person.Child.BirthDate == child.BirthDate).ToList();
        if (numbered.Count == 1) return numbered[0];
        var named = Named(child).Where(person => person.Child.BirthDate == child.BirthDate).Distinct().ToList();
        return named.Count == 1 && (child.BirthDate is not null || Named(child).Count == 1) ? named[0] : null;
    }

    private static void Add(Dictionary<string, List<KnownPerson>> index, string key, KnownPerson person)
    {
        if (key.Length == 0) return;
        if (!index.TryGetValue(key, out var list)) index.Add(key, list = []);
        if (!list.Contains(person)) list.Add(person);
    }
}

/// <summary>Says of each line whether the child is already here, and what differs.</summary>
internal static class RosterMatch
{
    internal static void Match(List<DraftLine> lines, Dictionary<int, KnownPerson?> sure, KnownIndex known, Sheet sheet, DoubtBook book)
    {
        var taken = new HashSet<PersonId>();
        foreach (var line in lines.Where(line => line.SetAside is null))
            if (sure[line.Row] is { } person && taken.Add(person.Id)) line.Person = person.Id;
        foreach (var line in lines.Where(line => line.SetAside is null))
        {
            var person = line.Person is not null ? sure[line.Row] : Ask(line, known, taken, sheet, book);
            if (person is null) continue;
            line.Person = person.Id;
            line.Differences = Compare(line, person, sheet, book);
        }
    }

    private static KnownPerson? Ask(DraftLine line, KnownIndex known, HashSet<PersonId> taken, Sheet sheet, DoubtBook book)
    {
        var child = line.Child;
        var candidates = known.Numbered(child).Concat(known.Named(child)).Concat(known.Nearly(child)).Distinct().Where(person => !taken.Contains(person.Id)).Take(8).ToList();
        if (candidates.Count == 0) return null;
        var proposed = candidates.Count > 1 ? null
            : candidates[0].Child.NameKey != child.NameKey ? null
            : candidates[0].Child.BirthDate is null || child.BirthDate is null ? Code(candidates[0]) : "new";
        List<Offer> offers = [.. candidates.Select(person => new Offer(Code(person), $"It is {Say(person.Child)}")), new("new", "Another child: new here"), new("set-aside", "Set the line aside")];
        var answer = book.Ask($"known:{line.Row}", DoubtKind.PerhapsKnown,
            $"In sheet '{sheet.Name}', row {line.Row}, {Say(child)} may be {string.Join(" or ", candidates.Select(person => Say(person.Child)))}, already here; say whether it is the same child.",
            offers, proposed, TypedAnswer.None, line.Row);
        if (answer == "set-aside")
        {
            line.SetAside = "you set it aside";
            line.Child = new RosterChild();
            book.ForgetOpen(line.Row);
        }
        var person = candidates.FirstOrDefault(candidate => Code(candidate) == answer);
        if (person is not null) taken.Add(person.Id);
        return person;
    }

    private static List<Difference> Compare(DraftLine line, KnownPerson person, Sheet sheet, DoubtBook book)
    {
        var held = RosterFields.Of(person.Child);
        var read = RosterFields.Of(line.Child);
        var differences = new List<Difference>();
        for (var i = 0; i < read.Count; i++)
        {
            var (field, text) = read[i];
            if (text.Length == 0 || text == held[i].Text) continue;
            var old = held[i].Text;
            var answer = book.Ask($"differs:{line.Row}:{field}", DoubtKind.Differs,
                $"{person.Child.FullName} (row {line.Row}) is already here; {field}: {(old.Length == 0 ? "nothing" : $"'{old}'")} here, '{text}' in the file. Take the file's, or leave it as it is here.",
                [new("take", $"Take '{RosterLineReader.Short(text)}'"), new("leave", old.Length == 0 ? "Leave it empty" : $"Leave '{RosterLineReader.Short(old)}'")],
                old.Length == 0 ? "take" : "leave", TypedAnswer.None, line.Row);
            differences.Add(new(field, old, text, answer is null ? null : answer == "take"));
        }
        return differences;
    }

    private static string Code(KnownPerson person) => "known:" + person.Id.Value.ToString("D");

    private static string Say(RosterChild child) => child.BirthDate is { } birth ? $"{child.FullName}, born {birth.Full()}" : $"{child.FullName}, without a birth date";
}
