using System.Globalization;
using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Folder;

/// <summary>Head and foot of the red folder: what is not in it, and the day by which it is shredded, on every page.</summary>
internal sealed record FolderFrame(string Club, string For, DateOnly PrintedOn, DateOnly ShredBy, FolderCare Care)
{
    /// <summary>The first line of a folder without care notes.</summary>
    public const string WithoutCare = "Care notes are NOT in this folder: it was printed without them.";

    // "Important"; a word of the club's own notices.
    private const string Slip = "大切";
    private const double BandHeight = 24;
    private const double FootSize = 10;

    /// <summary>The lowest place for anything but the foot.</summary>
    public static double Bottom(Page page) => page.Inside.Bottom - 22;

    /// <summary>Draws the head of the first page; the answer is where it ends.</summary>
    public double Head(Page page)
    {
        var inside = page.Inside;
        var top = Band(page, inside.Y);
        var left = inside.X + TitleSlip.Width + 12;
        var y = top;
        page.Tagged(PaperTag.Paragraph, () => y = page.Block([Club], left, y, inside.Right - left, 11));
        page.Tagged(PaperTag.Title, () => y = page.Block([new Words("Red folder", true)], left, y, inside.Right - left, 24, 1.25));
        page.Tagged(PaperTag.Paragraph, () => y = page.Block([new Words(For, true)], left, y, inside.Right - left, 13));
        page.Tagged(PaperTag.Paragraph, () => y = page.Block(["For an emergency only. Keep it shut and with an adult of the club."], left, y, inside.Right - left, 10.5));
        y = Math.Max(y, top + TitleSlip.Height);
        TitleSlip.Draw(page, new Area(inside.X, top, TitleSlip.Width, Math.Min(y - top, 84)), Slip);
        page.Rule(inside.X, inside.Right, y + 6, 0.9);
        page.Rule(inside.X, inside.Right, y + 8.2, 0.9);
        return y + 16;
    }

    /// <summary>Draws the short head of a later page; the answer is where it ends.</summary>
    public double Again(Page page, string part)
    {
        var inside = page.Inside;
        var y = Band(page, inside.Y);
        y = page.Block([Club + ",  ", new Words("Red folder", true), ",  " + For], inside.X, y, inside.Width, 10.5);
        page.Tagged(PaperTag.Heading, () => y = page.Block([new Words(part, true)], inside.X, y + 2, inside.Width, 17, 1.3));
        return y + 4;
    }

    /// <summary>Draws the foot of every page, when their number is known.</summary>
    public void Foot(Draft draft)
    {
        for (var i = 0; i < draft.Pages.Count; i++)
        {
            var page = draft.Pages[i];
            var inside = page.Inside;
            var baseline = inside.Bottom - 3;
            page.Rule(inside.X, inside.Right, inside.Bottom - 16, 0.9);
            page.Tagged(PaperTag.Paragraph, () => page.Line(
                [$"Printed {PaperDate.Day(PrintedOn)}.  ", new Words($"Shred by {PaperDate.Day(ShredBy)}.", true)], inside.X, baseline, FootSize));
            var end = string.Create(CultureInfo.InvariantCulture, $"Page {i + 1} of {draft.Pages.Count}");
            page.Tagged(PaperTag.Paragraph, () => page.Line([new Words(end, true)], inside.Right, baseline, FootSize, Align.Right));
        }
    }

    // White on black, before anything else: nobody reads a missing note as none.
    private double Band(Page page, double y)
    {
        var inside = page.Inside;
        if (Care == FolderCare.InWords)
        {
            page.Add(new BoxInk(new Area(inside.X, y, inside.Width, 2.2), 0));
            return y + 9;
        }

        page.Add(new BoxInk(new Area(inside.X, y, inside.Width, BandHeight), 0));
        var words = LineBreaker.Measure([new Words(WithoutCare, true)], page.Missing);
        var size = Math.Min(13, (inside.Width - 16) / words.Width);
        page.Tagged(PaperTag.Paragraph, () => page.Line(words, inside.X + (inside.Width / 2), y + (BandHeight / 2) + (FontSet.CapitalHeight * size / 2), size, Align.Centre, white: true));
        return y + BandHeight + 7;
    }
}
