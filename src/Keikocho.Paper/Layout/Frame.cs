using System.Globalization;

namespace Keikocho.Paper.Layout;

/// <summary>What stands at the top and the foot of every paper.</summary>
/// <param name="Club">Name of the club.</param>
/// <param name="Title">What paper this is, for whom.</param>
/// <param name="Slip">The same in kanji, for the slip beside the title; decoration.</param>
/// <param name="Under">Lines under the title; the first is set larger.</param>
/// <param name="PrintedOn">The day it was printed.</param>
internal sealed record Frame(string Club, string Title, string Slip, IReadOnlyList<string> Under, DateOnly PrintedOn)
{
    private const double Small = 9;
    private const double FootHeight = 16;

    /// <summary>The lowest place for anything but the foot.</summary>
    public static double Bottom(Page page) => page.Inside.Bottom - FootHeight;

    /// <summary>Draws the head of the first page; the answer is where it ends.</summary>
    public double Head(Page page)
    {
        var inside = page.Inside;
        page.Add(new BoxInk(new Area(inside.X, inside.Y, inside.Width, 2.2), 0));
        var top = inside.Y + 9;
        var left = inside.X + TitleSlip.Width + 12;
        var width = inside.Right - left;
        var y = top;
        page.Tagged(PaperTag.Paragraph, () => y = page.Block([Club], left, y, width, 11));
        page.Tagged(PaperTag.Title, () => y = page.Block([new Words(Title, true)], left, y, width, 21, 1.3));
        for (var i = 0; i < Under.Count; i++)
        {
            var size = i == 0 ? 12 : 10;
            page.Tagged(PaperTag.Paragraph, () => y = page.Block([Under[i]], left, y, width, size));
        }

        var bottom = Math.Max(y, top + TitleSlip.Height);
        TitleSlip.Draw(page, new Area(inside.X, top, TitleSlip.Width, Math.Max(TitleSlip.Height, y - top)), Slip);
        return bottom + 7;
    }

    /// <summary>Height of <see cref="Head"/>.</summary>
    public double HeadHeight(Draft draft)
    {
        var page = draft.Scratch();
        return Head(page) - page.Inside.Y;
    }

    /// <summary>Draws the short head of a later page; the answer is where it ends.</summary>
    public double Again(Page page)
    {
        var inside = page.Inside;
        page.Add(new BoxInk(new Area(inside.X, inside.Y, inside.Width, 2.2), 0));
        var y = inside.Y + 9;
        y = page.Block([Club + ",  ", new Words(Title, true), ",  " + Under[0]], inside.X, y, inside.Width, 10.5);
        return y + 5;
    }

    /// <summary>Height of <see cref="Again"/>.</summary>
    public double AgainHeight(Draft draft)
    {
        var page = draft.Scratch();
        return Again(page) - page.Inside.Y;
    }

    /// <summary>Draws the foot of every page, when their number is known.</summary>
    public void Foot(Draft draft)
    {
        for (var i = 0; i < draft.Pages.Count; i++)
        {
            var page = draft.Pages[i];
            var inside = page.Inside;
            var baseline = inside.Bottom - 2.5;
            page.Rule(inside.X, inside.Right, inside.Bottom - 13, 0.4);
            var count = string.Create(CultureInfo.InvariantCulture, $"Page {i + 1} of {draft.Pages.Count}");
            var end = LineBreaker.Measure([new Words(count, true)], page.Missing);
            var middle = LineBreaker.Measure(["Keikocho 稽古帳"], page.Missing);
            page.Line([$"Printed {PaperDate.Day(PrintedOn)}"], inside.X, baseline, Small);
            page.Line(middle, inside.X + (inside.Width / 2), baseline, Small, Align.Centre);
            page.Tagged(PaperTag.Paragraph, () => page.Line(end, inside.Right, baseline, Small, Align.Right));
        }
    }
}
