namespace Keikocho.Core.Intake;

/// <summary>Finds the person a name in a register means.</summary>
internal sealed class WhoIsIt
{
    private const int MostCandidates = 8;
    private readonly Dictionary<string, List<KnownPerson>> _exact = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<KnownPerson>> _initials = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<KnownPerson>> _single = new(StringComparer.Ordinal);
    private readonly Dictionary<char, List<(string Key, KnownPerson Person)>> _byLetter = [];

    internal WhoIsIt(IReadOnlyList<KnownPerson> known)
    {
        foreach (var person in known)
        {
            var child = person.Child;
            var family = NameFold.Fold(child.FamilyName);
            foreach (var given in new[] { child.GivenName, child.CalledName }.Select(NameFold.Fold).Where(name => name.Length > 0).Distinct())
            {
                Add(_exact, NameFold.Key($"{given} {family}"), person);
                Add(_single, given, person);
                if (given.Split(' ')[0] is var one && one != given)
                {
                    Add(_exact, NameFold.Key($"{one} {family}"), person);
                    Add(_single, one, person);
                }
                if (family.Length == 0) continue;
                Add(_initials, NameFold.Key($"{given} {family[0]}"), person);
                Add(_initials, NameFold.Key($"{given.Split(' ')[0]} {family[0]}"), person);
                Add(_initials, NameFold.Key($"{given[0]} {family}"), person);
            }
            if (family.Length > 0) Add(_single, family, person);
            var key = child.NameKey;
            foreach (var letter in key.Split(' ').Where(word => word.Length > 0).Select(word => word[0]).Distinct())
            {
                if (!_byLetter.TryGetValue(letter, out var list)) _byLetter.Add(letter, list = []);
                list.Add((key, person));
            }
        }
    }

    /// <summary>Those it may be, and whether it is certain: one person by the whole or called name, or by name and initial.</summary>
    internal (List<KnownPerson> Candidates, bool Certain) Find(string name)
    {
        var key = NameFold.Key(name);
        if (_exact.TryGetValue(key, out var exact)) return (exact, exact.Count == 1);
        if (_initials.TryGetValue(key, out var initials)) return (initials, initials.Count == 1);
        if (_single.TryGetValue(key, out var single)) return ([.. single.Take(MostCandidates)], false);
        var near = key.Split(' ').Where(word => word.Length > 0).Select(word => word[0]).Distinct()
            .SelectMany(letter => _byLetter.TryGetValue(letter, out var list) ? list : [])
            .Select(pair => (Distance: NameFold.Distance(key, pair.Key, 2), pair.Person)).Where(pair => pair.Distance <= 2)
            .DistinctBy(pair => pair.Person.Id).OrderBy(pair => pair.Distance).ThenBy(pair => pair.Person.Child.NameKey, StringComparer.Ordinal).ThenBy(pair => pair.Person.Id.Value)
            .Take(MostCandidates).Select(pair => pair.Person).ToList();
        return (near, false);
    }

    private static void Add(Dictionary<string, List<KnownPerson>> index, string key, KnownPerson person)
    {
        if (key.Length == 0) return;
        if (!index.TryGetValue(key, out var list)) index.Add(key, list = []);
        if (list.Count == 0 || list[^1].Id != person.Id) list.Add(person);
    }
}
