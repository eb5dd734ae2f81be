namespace Keikocho.Core.Intake;

/// <summary>A line of a register while it is being read.</summary>
internal sealed class RegisterDraft(int at, string name, RosterChild asWritten)
{
    internal int At { get; } = at;
    internal string Name { get; } = name;
    internal RosterChild AsWritten { get; } = asWritten;
    internal LineWho? Who { get; set; }
    internal string SetAside { get; set; } = "";

    internal RegisterLine Done() => new(At, SetAside.Length > 0 ? "" : Name, SetAside.Length > 0 ? null : Who, SetAside.Length == 0 && Who is { NewKey: not null } ? AsWritten : null, SetAside);
}

/// <summary>Says of each line of a register who it is.</summary>
internal static class RegisterNames
{
    /// <summary>Asks about names that nobody or several have.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="question">The question.</param>
    /// <param name="place">Where a line is, for the sentences.</param>
    /// <param name="key">The stable part of a line's doubt key.</param>
    /// <param name="book">The doubts.</param>
    internal static void Resolve(IReadOnlyList<RegisterDraft> lines, RegisterQuestion question, Func<RegisterDraft, string> place, Func<RegisterDraft, string> key, DoubtBook book)
    {
        var index = new WhoIsIt(question.Known);
        foreach (var line in lines)
        {
            if (question.Answers.ByKey.TryGetValue($"line:{key(line)}", out var said) && said == "set-aside")
            {
                line.SetAside = "you set it aside";
                continue;
            }
            if (question.Erased.Contains(line.Name, null))
            {
                line.SetAside = "this person was erased and is not brought back";
                continue;
            }
            var (candidates, certain) = index.Find(line.Name);
            if (certain)
            {
                line.Who = new(candidates[0].Id, null);
                continue;
            }
            List<Offer> offers = [.. candidates.Select(person => new Offer("known:" + person.Id.Value.ToString("D"), Say(person))), new("new", $"A new child: {line.Name}"), new("set-aside", "Set this line aside")];
            var sentence = candidates.Count == 0
                ? $"In {place(line)}, nobody here is called '{RosterLineReader.Short(line.Name)}'; say whether it is a new child, or set the line aside."
                : $"In {place(line)}, '{RosterLineReader.Short(line.Name)}' may be {string.Join(" or ", candidates.Select(Say))}; say who it is.";
            var answer = book.Ask($"who:{key(line)}", DoubtKind.WhoIsIt, sentence, offers, candidates.Count == 0 ? "new" : null);
            if (answer == "new") line.Who = new(null, NameFold.Key(line.Name));
            else if (answer == "set-aside") line.SetAside = "you set it aside";
            else if (answer is not null) line.Who = new(candidates.Find(person => answer == "known:" + person.Id.Value.ToString("D"))!.Id, null);
        }
    }

    /// <summary>Two lines of a grid that are one child: joined, two children, or one of them set aside.</summary>
    internal static void JoinTwice(IReadOnlyList<RegisterDraft> lines, Func<RegisterDraft, string> place, DoubtBook book)
    {
        var first = new Dictionary<LineWho, RegisterDraft>();
        foreach (var line in lines)
        {
            if (line.SetAside.Length > 0 || line.Who is not { } who) continue;
            if (first.TryAdd(who, line)) continue;
            var earlier = first[who];
            List<Offer> offers = [new("join", "One child: present on either line is present"), new("set-aside", "Set the later line aside")];
            if (who.NewKey is not null) offers.Insert(1, new("two", "Two children of one name"));
            var answer = book.Ask($"line-twice:{earlier.At}+{line.At}", DoubtKind.LineTwice,
                $"'{RosterLineReader.Short(earlier.Name)}' in {place(earlier)} and '{RosterLineReader.Short(line.Name)}' in {place(line)} are the same child by name; say whether to read them together.",
                offers, "join");
            if (answer == "set-aside") line.SetAside = "you set it aside";
            else if (answer == "two")
            {
                var number = 2;
                while (!first.TryAdd(who with { NewKey = $"{who.NewKey}#{number}" }, line)) number++;
                line.Who = who with { NewKey = $"{who.NewKey}#{number}" };
            }
            else if (answer is null) line.Who = null;
        }
    }

    /// <summary>The parts of a name written in one cell.</summary>
    internal static RosterChild Parts(string name)
    {
        var (given, family) = NameParts.Evident(name) ?? NameParts.Under(name, givenFirst: true);
        return new RosterChild { GivenName = given, FamilyName = family };
    }

    private static string Say(KnownPerson person)
        => person.Child.BirthDate is { } birth ? $"{person.Child.FullName} (born {Kernel.PlainDate.Full(birth)})" : person.Child.FullName;
}
