using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Keys;

/// <summary>The recovery key on one page, for the place where only two adults find it. It is drawn when the key is made and at no other time.</summary>
/// <param name="Club">Name of the club.</param>
/// <param name="Key">The key in its groups: "7KQM-...".</param>
/// <param name="PrintedOn">Today.</param>
public sealed record RecoveryKeyContent(string Club, string Key, DateOnly PrintedOn);

/// <summary>Draws the recovery key.</summary>
public static class RecoveryKeyPaper
{
    // "Key", as on the page.
    private const string Slip = "鍵";
    private const int GroupsARow = 4;
    private const double KeySize = 27;
    private const double Body = 12.5;

    /// <summary>The page as a PDF.</summary>
    /// <exception cref="ArgumentException">Club or key is missing.</exception>
    public static PaperResult Draw(RecoveryKeyContent content, PaperSize size) => PdfWriter.Write(Lay(content, size));

    internal static Draft Lay(RecoveryKeyContent content, PaperSize size)
    {
        ArgumentNullException.ThrowIfNull(content);
        if (string.IsNullOrWhiteSpace(content.Club) || string.IsNullOrWhiteSpace(content.Key))
            throw new ArgumentException("A recovery key names the club, and the key.", nameof(content));
        var frame = new Frame(content.Club, "Recovery key", Slip, ["Of the club’s lock: sizes and care notes of children", $"Made on {PaperDate.Full(content.PrintedOn)}"], content.PrintedOn);
        var draft = new Draft(SheetFormat.Of(size), "Recovery key", content.Club, content.PrintedOn);
        var page = draft.NewPage();
        var y = KeyBox(page, content.Key, frame.Head(page) + 10) + 14;
        foreach (var (heading, text) in Words)
        {
            page.Tagged(PaperTag.Heading, () => y = page.Block([new Words(heading, true)], page.Inside.X, y, page.Inside.Width, Body));
            page.Tagged(PaperTag.Paragraph, () => y = page.Block([text], page.Inside.X, y, page.Inside.Width, Body));
            y += 7;
        }

        frame.Foot(draft);
        return draft;
    }

    private static readonly (string Heading, string Text)[] Words =
    [
        ("What it does", "It opens the club’s lock when nobody knows the passphrase any more. Type it on the page of the lock, in place of the passphrase; capitals or not, with or without the strokes, is the same."),
        ("What is on it", "Seven groups by chance, and an eighth that catches a slip of the pen. The signs 0, O, 1 and I are not in it."),
        ("Where it lies", "On paper only, where the head instructor and one other adult find it, and not in the bag with the laptop. It is not a photograph and not a file: when this page was opened in a browser, shut it, and delete it where it was kept."),
        ("Who has it", "reads the sizes and the care notes in this club’s file and in every copy of it. The program does not store it and shows it only once. Without it and without the passphrase nobody reads them again: they are asked for anew."),
    ];

    private static double KeyBox(Page page, string key, double y)
    {
        var inside = page.Inside;
        var rows = key.Split('-').Chunk(GroupsARow).Select(groups => LineBreaker.Measure([new Words(string.Join("  ", groups), true)], page.Missing)).ToList();
        var size = Math.Min(KeySize, (inside.Width - 40) / rows.Max(r => r.Width));
        var height = (rows.Count * size * 1.6) + 20;
        page.Add(new BoxInk(new Area(inside.X, y, inside.Width, height), 1.6));
        page.Tagged(PaperTag.Paragraph, () =>
        {
            for (var i = 0; i < rows.Count; i++)
                page.Line(rows[i], inside.X + (inside.Width / 2), y + 10 + ((i + 0.5) * size * 1.6) + (FontSet.CapitalHeight * size / 2), size, Align.Centre);
        });
        return y + height;
    }
}
