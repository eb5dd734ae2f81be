using System.Text;

namespace Keikocho.Paper.Layout;

/// <summary>Breaks text into lines: at spaces, after hyphens, and between kanji or kana. A word too long for a line is broken where it must be.</summary>
internal static class LineBreaker
{
    // May not begin a line (the usual Japanese typesetting rule, its common marks only).
    private const string NeverFirst = "、。，．・：；？！）］｝」』】〉》ーぁぃぅぇぉっゃゅょァィゥェォッャュョ々";

    /// <summary>The lines of <paramref name="text"/> at a size and a width in points; at least one, perhaps empty.</summary>
    public static List<TextLine> Break(IReadOnlyList<Words> text, double size, double width, ISet<int> missing)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        // A hair of room, so that a column as wide as its text holds it.
        var room = (width / size) + 0.001;
        var whole = Measure(text, missing);
        if (whole.Width <= room)
            return [whole];
        var lines = new List<TextLine>();
        var line = new List<Words>();
        var filled = 0.0;
        foreach (var atom in Atoms(text).SelectMany(atom => Fit(atom, room, missing)))
        {
            // Fonts here have no kerning: a line is as wide as its atoms, and the spaces at its end count for nothing.
            if (line.Count > 0 && filled + Measure(atom, missing).Width > room)
            {
                lines.Add(Measure(line, missing));
                line = [];
                filled = 0;
            }

            if (line.Count > 0 || !IsBlank(atom))
            {
                line.AddRange(atom);
                filled += Runs(atom, false, missing).Sum(run => run.Width);
            }
        }

        if (line.Count > 0 || lines.Count == 0)
            lines.Add(Measure(line, missing));
        return lines;
    }

    /// <summary>Text on one line, spaces at its end left out.</summary>
    public static TextLine Measure(IReadOnlyList<Words> text, ISet<int> missing)
    {
        var runs = Runs(text, true, missing);
        return new TextLine(runs, runs.Sum(run => run.Width));
    }

    private static List<FontRun> Runs(IReadOnlyList<Words> text, bool trimmed, ISet<int> missing)
    {
        var runs = new List<FontRun>();
        var bold = false;
        var piece = new StringBuilder();
        foreach (var words in text)
        {
            if (words.Bold != bold && piece.Length > 0)
            {
                runs.AddRange(FontSet.Runs(piece.ToString(), bold, missing));
                piece.Clear();
            }

            bold = words.Bold;
            piece.Append(words.Text);
        }

        runs.AddRange(FontSet.Runs(trimmed ? piece.ToString().TrimEnd() : piece.ToString(), bold, missing));
        return runs;
    }

    private static bool IsBlank(List<Words> atom) => atom.TrueForAll(words => string.IsNullOrWhiteSpace(words.Text));

    // An atom is what stays together: a word with the spaces after it, or one kanji.
    private static List<List<Words>> Atoms(IReadOnlyList<Words> text)
    {
        var atoms = new List<List<Words>>();
        var atom = new List<Words>();
        Rune before = default;
        var length = 0;
        foreach (var words in text)
        {
            var piece = new StringBuilder();
            foreach (var rune in words.Text.EnumerateRunes())
            {
                // Nothing as short as the O of O-goshi is left behind.
                if (MayBreak(before, rune) && !(before.Value == '-' && length <= 2))
                {
                    if (piece.Length > 0)
                        atom.Add(words with { Text = piece.ToString() });
                    piece.Clear();
                    atoms.Add(atom);
                    atom = [];
                    length = 0;
                }

                piece.Append(rune.ToString());
                length++;
                before = rune;
            }

            if (piece.Length > 0)
                atom.Add(words with { Text = piece.ToString() });
        }

        if (atom.Count > 0)
            atoms.Add(atom);
        return atoms;
    }

    private static bool MayBreak(Rune before, Rune after)
    {
        if (before == default || Rune.IsWhiteSpace(after))
            return false;
        if (Rune.IsWhiteSpace(before))
            return before.Value != 0xA0;
        if (before.Value is '-' or '–' && Rune.IsLetter(after))
            return true;
        return (IsJapanese(before) || IsJapanese(after)) && !NeverFirst.Contains(after.ToString(), StringComparison.Ordinal);
    }

    private static bool IsJapanese(Rune rune) => rune.Value is (>= 0x3040 and <= 0x30FF) or (>= 0x3400 and <= 0x9FFF) or (>= 0xF900 and <= 0xFAFF) or >= 0x20000;

    private static IEnumerable<List<Words>> Fit(List<Words> atom, double room, ISet<int> missing)
    {
        if (Measure(atom, missing).Width <= room)
        {
            yield return atom;
            yield break;
        }

        var part = new List<Words>();
        foreach (var letter in atom.SelectMany(words => words.Text.EnumerateRunes().Select(rune => words with { Text = rune.ToString() })))
        {
            if (part.Count > 0 && Measure([.. part, letter], missing).Width > room)
            {
                yield return part;
                part = [];
            }

            part.Add(letter);
        }

        yield return part;
    }
}
