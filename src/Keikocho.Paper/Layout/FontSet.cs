using System.Text;

namespace Keikocho.Paper.Layout;

/// <summary>A stretch of text that one font draws.</summary>
/// <param name="Text">What is drawn; never empty.</param>
/// <param name="Face">The font that has all of it.</param>
/// <param name="Width">Its width at size 1.</param>
internal sealed record FontRun(string Text, FontFace Face, double Width);

/// <summary>The fonts of papers, and the choice between them for each character.</summary>
internal static class FontSet
{
    /// <summary>Stands for a character that no font has: the mark a Japanese compositor puts for a missing sort.</summary>
    public const char Missing = '〓';

    /// <summary>Height of a capital letter of the main font at size 1 (1567 of 2048 units in its OS/2 table).</summary>
    public const double CapitalHeight = 1567.0 / 2048;

    private static readonly Lazy<FontFace> MainRegular = Load("BIZ UDPGothic", false, "BIZUDPGothic-Regular.ttf");
    private static readonly Lazy<FontFace> MainBold = Load("BIZ UDPGothic", true, "BIZUDPGothic-Bold.ttf");
    private static readonly Lazy<FontFace> MoreRegular = Load("Noto Sans", false, "NotoSans-Papers-Regular.ttf");
    private static readonly Lazy<FontFace> MoreBold = Load("Noto Sans", true, "NotoSans-Papers-Bold.ttf");

    /// <summary>All faces, for the resolver and the tests.</summary>
    public static IReadOnlyList<FontFace> Faces => [MainRegular.Value, MainBold.Value, MoreRegular.Value, MoreBold.Value];

    /// <summary>Splits text into runs of one font each. Line ends and tabs become spaces; marks that draw nothing are dropped.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="bold">Bold, or regular.</param>
    /// <param name="missing">Gets each character that no font has.</param>
    public static List<FontRun> Runs(string text, bool bold, ISet<int> missing)
    {
        var runs = new List<FontRun>();
        var current = new StringBuilder();
        FontFace? face = null;
        var width = 0.0;
        foreach (var asked in Composition.Compose(text))
        {
            if (DrawsNothing(asked))
                continue;
            var point = char.MaxValue >= asked && (char.IsControl((char)asked) || asked is 0x2028 or 0x2029) ? ' ' : asked;
            var chosen = Choose(point, bold, face);
            if (chosen is null)
            {
                missing.Add(point);
                point = Missing;
                chosen = Main(bold);
            }

            if (face is not null && !ReferenceEquals(face, chosen))
                Close();
            face = chosen;
            width += chosen.Advance(point);
            if (point <= char.MaxValue)
                current.Append((char)point);
            else
                current.Append(char.ConvertFromUtf32(point));
        }

        if (face is not null)
            Close();
        return runs;

        void Close()
        {
            runs.Add(new FontRun(current.ToString(), face!, width));
            current.Clear();
            width = 0;
        }
    }

    /// <summary>True when some font of ours draws the code point.</summary>
    public static bool Has(int codePoint) => Choose(codePoint, false, null) is not null;

    private static FontFace Main(bool bold) => (bold ? MainBold : MainRegular).Value;

    private static FontFace? Choose(int point, bool bold, FontFace? before)
    {
        var main = Main(bold);
        var more = (bold ? MoreBold : MoreRegular).Value;
        // A space stays with the word before it, so that a Cyrillic name is one run.
        if (point == ' ' && ReferenceEquals(before, more))
            return more;
        var (first, second) = MadeForJapanese(point) ? (more, main) : (main, more);
        if (first.Has(point))
            return first;
        return second.Has(point) ? second : null;
    }

    // The main font draws these as wide as a kanji, or half as wide: right between kanji, torn apart in a name.
    private static bool MadeForJapanese(int point) =>
        point is (>= 0x0180 and <= 0x036F) or (>= 0x0370 and <= 0x052F) or (>= 0x1E00 and <= 0x1FFF) or (>= 0x2018 and <= 0x201F) or 0x2026;

    // Joiners, direction marks, variation selectors (also those of kanji), soft hyphen, byte order mark: Unicode's default ignorables.
    private static bool DrawsNothing(int point) =>
        point is 0x00AD or 0x034F or 0x061C or (>= 0x200B and <= 0x200F) or (>= 0x202A and <= 0x202E) or (>= 0x2060 and <= 0x206F)
            or (>= 0xFE00 and <= 0xFE0F) or 0xFEFF or (>= 0xE0000 and <= 0xE0FFF);

    private static Lazy<FontFace> Load(string family, bool bold, string file) => new(() => FontFace.Read(family, bold, () => EmbeddedFile.Open(file)));
}
