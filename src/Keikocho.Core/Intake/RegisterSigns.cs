namespace Keikocho.Core.Intake;

/// <summary>The signs of one register with what they were answered to mean.</summary>
internal sealed class RegisterSigns
{
    private readonly Dictionary<string, SignMeaning?> _meanings = new(StringComparer.Ordinal);

    /// <summary>Looks at every sign of the register and asks, once a sign, about those that are not certain.</summary>
    internal RegisterSigns(IEnumerable<(Cell Cell, CellPlace Place)> cells, DoubtBook book)
    {
        var seen = new Dictionary<string, (int Count, CellPlace First, string Text)>(StringComparer.Ordinal);
        foreach (var (cell, place) in cells)
        {
            if (cell.IsEmpty || cell.Kind == CellKind.Error || Signs.Arrival(cell) is not null) continue;
            var normal = Signs.Normal(cell.Text);
            seen[normal] = seen.TryGetValue(normal, out var known) ? known with { Count = known.Count + 1 } : (1, place, cell.Text);
        }
        var present = seen.Where(sign => Certain(sign.Key) == SignMeaning.Present).Sum(sign => sign.Value.Count);
        foreach (var (normal, (count, first, text)) in seen.OrderBy(sign => sign.Key, StringComparer.Ordinal))
        {
            var meaning = Certain(normal);
            if (meaning is null)
            {
                var proposed = normal is "x" or "×" && present > 0 ? count < present ? SignMeaning.Absent : null : Signs.Proposal(normal);
                var half = normal is "h" or "half" or "½" or "0.5";
                var answer = book.Ask($"sign:{normal}", DoubtKind.SignUnknown,
                    Signs.Proposal(normal) is null
                        ? $"The sign '{RosterLineReader.Short(text)}' (first in {first}, {count} in all) is not known; say what it means. The answer holds for all of them."
                        : $"The sign '{RosterLineReader.Short(text)}' (first in {first}, {count} in all) means different things in different clubs; say what it means in yours. The answer holds for all of them.",
                    [
                        new("present", half ? "Present: it counts as a lesson" : "Present"), new("late", "Late: a lesson, but not there for the falls"),
                        new("excused", "Did not come, told us"), new("absent", half ? "Absent: it does not count" : "Absent"), new("nothing", "Says nothing"),
                    ],
                    proposed switch { SignMeaning.Present => "present", SignMeaning.Absent => "absent", SignMeaning.Excused => "excused", SignMeaning.Half => "late", SignMeaning.Nothing => "nothing", _ => null });
                meaning = answer switch { "present" => SignMeaning.Present, "late" => SignMeaning.Late, "excused" => SignMeaning.Excused, "absent" => SignMeaning.Absent, "nothing" => SignMeaning.Nothing, _ => null };
            }
            _meanings.Add(normal, meaning);
        }
    }

    /// <summary>Some sign says absent outright, so that a blank may say less.</summary>
    internal bool SaysAbsent => _meanings.ContainsValue(SignMeaning.Absent);

    /// <summary>What a cell says: the word, or null for nothing; not known while its sign's question is open.</summary>
    internal (RegisterSays? Says, bool Known) Read(Cell cell)
    {
        if (cell.IsEmpty || cell.Kind == CellKind.Error) return (null, true);
        if (Signs.Arrival(cell) is { } arrived) return (new(RegisterWord.Late, arrived), true);
        return _meanings[Signs.Normal(cell.Text)] switch
        {
            null => (null, false),
            SignMeaning.Present => (new(RegisterWord.Present, null), true),
            SignMeaning.Late or SignMeaning.Half => (new(RegisterWord.Late, null), true),
            SignMeaning.Excused => (new(RegisterWord.Excused, null), true),
            SignMeaning.Absent => (new(RegisterWord.Absent, null), true),
            _ => (null, true),
        };
    }

    // "Sick - flu", "late (bus)": the first word, when it alone is certain and says told us or late.
    private static SignMeaning? Certain(string normal)
        => Signs.Meaning(normal) ?? (normal.IndexOf(' ', StringComparison.Ordinal) is > 2 and var blank && Signs.Meaning(normal[..blank]) is SignMeaning.Excused or SignMeaning.Late ? Signs.Meaning(normal[..normal.IndexOf(' ', StringComparison.Ordinal)]) : null);
}
