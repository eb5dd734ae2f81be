namespace Keikocho.Core.Intake;

/// <summary>Words for yes and no in a consent column. From common practice, no source.</summary>
public static class ConsentWords
{
    /// <summary>Folded words, or signs, for yes.</summary>
    public static IReadOnlyList<string> Yes { get; } = ["yes", "y", "true", "1", "ok", "okay", "given", "signed", "oui", "ja", "j", "si", "s", "x", "✓", "✔", "☑"];

    /// <summary>Folded words, or signs, for no.</summary>
    public static IReadOnlyList<string> No { get; } = ["no", "n", "false", "0", "none", "refused", "not given", "non", "nein", "nee", "✗", "✘", "☐", "-"];

    /// <summary>True for yes, false for no, null when the word is not known.</summary>
    public static bool? Read(Cell cell)
    {
        if (cell.Kind == CellKind.Boolean) return cell.Number != 0;
        var text = cell.Text.Trim();
        var folded = NameFold.Fold(text);
        if (folded.Length == 0) folded = text;
        return Yes.Contains(folded) ? true : No.Contains(folded) ? false : null;
    }
}
