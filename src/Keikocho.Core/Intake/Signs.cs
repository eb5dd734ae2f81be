using System.Collections.Frozen;
using System.Globalization;

namespace Keikocho.Core.Intake;

/// <summary>What a sign in a register means.</summary>
public enum SignMeaning
{
    /// <summary>Present.</summary>
    Present,
    /// <summary>Absent.</summary>
    Absent,
    /// <summary>Did not come and told us.</summary>
    Excused,
    /// <summary>Late, without a time.</summary>
    Late,
    /// <summary>Half a lesson: always asked, as clubs count it differently.</summary>
    Half,
    /// <summary>Says nothing; as if the cell were empty.</summary>
    Nothing,
}

/// <summary>The signs of a register that are read. From common practice, no source.</summary>
public static class Signs
{
    /// <summary>The certain signs, folded where they are words. Printed in docs/formats/import.md.</summary>
    public static IReadOnlyList<(SignMeaning Meaning, IReadOnlyList<string> Signs)> Table { get; } =
    [
        (SignMeaning.Present, ["✓", "✔", "☑", "√", "1", "p", "y", "yes", "true", "present", "here", "attended", "oui", "ja", "j", "si", "anwesend", "aanwezig", "presente"]),
        (SignMeaning.Absent, ["0", "-", "–", "—", "✗", "✘", "☐", "n", "no", "a", "abs", "absent", "false", "missing", "non", "nein", "nee", "abwesend", "afwezig", "ausente"]),
        (SignMeaning.Late, ["l", "late", "retard", "spat", "verspatet", "te laat", "laat", "tarde"]),
        (SignMeaning.Excused, ["e", "ex", "exc", "excused", "told us", "apologies", "apology", "holiday", "hol", "holidays", "sick", "ill", "illness", "injured", "away", "excuse", "malade", "vacances", "entschuldigt", "ent", "krank", "urlaub", "afgemeld", "ziek", "vakantie", "justificado", "enfermo", "vacaciones"]),
    ];

    /// <summary>Signs that mean different things in different clubs: asked once a file. The proposal for x depends on the other signs.</summary>
    public static IReadOnlyList<(string Sign, SignMeaning Proposed)> Asked { get; } =
    [
        ("x", SignMeaning.Present), ("×", SignMeaning.Present), ("/", SignMeaning.Present), ("\\", SignMeaning.Present), ("o", SignMeaning.Absent), ("h", SignMeaning.Half), ("half", SignMeaning.Half), ("½", SignMeaning.Half), ("0.5", SignMeaning.Half), ("s", SignMeaning.Excused), ("v", SignMeaning.Present), ("+", SignMeaning.Present), ("*", SignMeaning.Present), ("?", SignMeaning.Nothing),
    ];

    private static readonly FrozenDictionary<string, SignMeaning> Certain =
        Table.SelectMany(line => line.Signs.Select(sign => (sign, line.Meaning))).ToFrozenDictionary(pair => pair.sign, pair => pair.Meaning, StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, SignMeaning> Proposals = Asked.ToFrozenDictionary(pair => pair.Sign, pair => pair.Proposed, StringComparer.Ordinal);

    /// <summary>One spelling for a sign: words folded, signs as they are.</summary>
    public static string Normal(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var bare = text.Trim().Replace("\uFE0F", "", StringComparison.Ordinal);
        if (bare == "0.5" || bare == "0,5") return "0.5";
        var folded = NameFold.Fold(bare);
        // A sign in brackets or with a dot is the sign.
        return folded.Length > 0 && bare.All(letter => char.IsLetterOrDigit(letter) || letter is '(' or ')' or '.' or ' ' or '\'' or '-' or '+' or '½' || char.GetUnicodeCategory(letter) == UnicodeCategory.NonSpacingMark) && bare != "½"
            ? folded : bare.Length > 1 && bare.All(letter => letter == bare[0]) ? bare[..1] : bare.Trim('(', ')').ToLowerInvariant();
    }

    /// <summary>What a sign certainly means; null when it has to be asked.</summary>
    public static SignMeaning? Meaning(string normal) => Certain.TryGetValue(normal, out var meaning) ? meaning : null;

    /// <summary>The proposal for a sign that has to be asked; null when nothing is likelier.</summary>
    public static SignMeaning? Proposal(string normal) => Proposals.TryGetValue(normal, out var meaning) ? meaning : null;

    /// <summary>An arrival: a time cell, "17:50", "17.50", "17h50", "L 17:50", "late 17:50".</summary>
    public static TimeOnly? Arrival(Cell cell)
    {
        if (cell.Kind == CellKind.Time) return cell.Clock;
        if (cell.Kind != CellKind.Text || cell.Text.Length > 16) return null;
        var text = cell.Text;
        var digit = text.AsSpan().IndexOfAnyInRange('0', '9');
        if (digit < 0) return null;
        var before = NameFold.Fold(text[..digit]);
        if (before.Length > 0 && Meaning(before) is not (SignMeaning.Late or SignMeaning.Present)) return null;
        var time = text[digit..].Trim().ToLowerInvariant();
        var afternoon = time.EndsWith("pm", StringComparison.Ordinal);
        if (afternoon || time.EndsWith("am", StringComparison.Ordinal)) time = time[..^2].TrimEnd();
        var parts = time.Split([':', '.', 'h']);
        if (parts.Length is < 2 or > 3 || parts[0].Length is 0 or > 2 || parts[1].Length != 2
            || !int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var hour)
            || !int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var minute)) return null;
        if (afternoon && hour < 12) hour += 12;
        return hour < 24 && minute < 60 ? new TimeOnly(hour, minute) : null;
    }

    /// <summary>Short enough, or known: may stand in a register's cell.</summary>
    internal static bool LooksLikeSign(Cell cell)
        => cell.Kind is CellKind.Boolean or CellKind.Time || cell.Kind == CellKind.Number && cell.Number is >= 0 and <= 5
            || cell.Kind == CellKind.Text && (cell.Text.Length <= 3 || Meaning(Normal(cell.Text)) is not null || Arrival(cell) is not null);
}
