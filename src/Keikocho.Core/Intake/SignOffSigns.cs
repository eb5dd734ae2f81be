using System.Collections.Frozen;
using Keikocho.Core.Evening;

namespace Keikocho.Core.Intake;

/// <summary>The signs of a sign-off grid with what they certainly mean, and what they were answered to mean.</summary>
public sealed class SignOffSigns
{
    private readonly Dictionary<string, (bool Known, SeenWord? Word)> meanings = new(StringComparer.Ordinal);

    /// <summary>The signs that are read without asking. From common practice, no source. Printed in docs/formats/import.md.</summary>
    public static IReadOnlyList<(SeenWord Word, IReadOnlyList<string> Signs)> Table { get; } =
    [
        (SeenWord.Good, ["✓", "✔", "☑", "✅", "1", "y", "yes", "ok", "good", "g", "done", "pass", "passed", "true", "signed", "signed off", "seen", "●", "■"]),
        (SeenWord.Prompted, ["prompted", "with help", "help", "helped", "nearly", "almost", "~"]),
        (SeenWord.NotYet, ["0", "n", "no", "not yet", "notyet", "ny", "false", "✗", "✘", "❌"]),
    ];

    private static readonly FrozenDictionary<string, SeenWord> Certain =
        Table.SelectMany(line => line.Signs.Select(sign => (Signs.Normal(sign), line.Word))).DistinctBy(pair => pair.Item1).ToFrozenDictionary(pair => pair.Item1, pair => pair.Word, StringComparer.Ordinal);

    /// <summary>Stands among the certain signs, so that it is no heading.</summary>
    internal static bool IsSign(string text) => Certain.ContainsKey(Signs.Normal(text));

    /// <summary>Looks at every sign and asks, once a sign, about those that are not certain: a letter may be a mark or somebody's initials.</summary>
    internal SignOffSigns(IEnumerable<(Cell Cell, CellPlace Place)> cells, DoubtBook book)
    {
        var seen = new Dictionary<string, (int Count, CellPlace First, string Text)>(StringComparer.Ordinal);
        foreach (var (cell, place) in cells)
        {
            var normal = Signs.Normal(cell.Text);
            seen[normal] = seen.TryGetValue(normal, out var known) ? known with { Count = known.Count + 1 } : (1, place, cell.Text);
        }

        foreach (var (normal, (count, first, text)) in seen.OrderBy(sign => sign.Key, StringComparer.Ordinal))
        {
            if (Certain.TryGetValue(normal, out var certain))
            {
                meanings.Add(normal, (true, certain));
                continue;
            }

            var answer = book.Ask($"sign:{normal}", DoubtKind.SignUnknown,
                $"The sign '{RosterLineReader.Short(text)}' (first in {first}, {count} in all) may be a mark or somebody’s initials; say what it means. The answer holds for all of them.",
                [new("good", "Seen good"), new("prompted", "Prompted"), new("not-yet", "Not yet"), new("nothing", "Says nothing")],
                normal is "x" or "×" or "/" ? "good" : null);
            meanings.Add(normal, answer switch
            {
                "good" => (true, SeenWord.Good),
                "prompted" => (true, SeenWord.Prompted),
                "not-yet" => (true, SeenWord.NotYet),
                "nothing" => (true, null),
                _ => (false, null),
            });
        }
    }

    /// <summary>The word of a cell without a date; null where it says nothing or is still asked about.</summary>
    internal SeenWord? Read(Cell cell) => meanings[Signs.Normal(cell.Text)].Word;
}
