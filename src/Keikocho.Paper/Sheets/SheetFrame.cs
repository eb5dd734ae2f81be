using System.Globalization;
using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Sheets;

/// <summary>Head and foot of a sheet or a letter to a family.</summary>
/// <param name="Club">Name of the club.</param>
/// <param name="Title">The title.</param>
/// <param name="Slip">A few kanji for the slip beside the title; decoration.</param>
/// <param name="Under">Lines under the title; the first is set larger.</param>
/// <param name="Again">What follows club and title on a later page.</param>
/// <param name="PrintedOn">Today.</param>
/// <param name="Belt">A belt at the right; null for none.</param>
/// <param name="SpeakTo">Whom to ask.</param>
internal sealed record SheetFrame(
    string Club, string Title, string Slip, IReadOnlyList<IReadOnlyList<Words>> Under, string Again, DateOnly PrintedOn, BeltPicture? Belt, string SpeakTo)
{
    private const double Small = 9;
    private const double BeltWidth = 104;

    /// <summary>Draws the head of the first page; the answer is where it ends.</summary>
    public double Head(Page page)
    {
        var inside = page.Inside;
        page.Add(new BoxInk(new Area(inside.X, inside.Y, inside.Width, 2.2), 0));
        var top = inside.Y + 9;
        var left = inside.X + TitleSlip.Width + 12;
        var right = Belt is null ? inside.Right : inside.Right - BeltWidth - 10;
        var printed = LineBreaker.Measure([$"Printed {PaperDate.Day(PrintedOn)}"], page.Missing);
        var y = top;
        page.Tagged(PaperTag.Paragraph, () => y = page.Block([Club], left, top, inside.Right - left - (printed.Width * Small) - 10, 11));
        page.Tagged(PaperTag.Paragraph, () => page.Line(printed, inside.Right, top + 11, Small, Align.Right));
        var title = y;
        page.Tagged(PaperTag.Title, () => y = page.Block([new Words(Title, true)], left, y, right - left, 22, 1.25));
        for (var i = 0; i < Under.Count; i++)
        {
            var words = Under[i];
            var size = i == 0 ? 11.3 : 10.5;
            page.Tagged(PaperTag.Paragraph, () => y = page.Block(words, left, y, right - left, size));
        }

        if (Belt is not null)
            BeltKnot.Draw(page, Belt, inside.Right - BeltWidth, title + 6, BeltWidth);
        y = Math.Max(y, Math.Max(top + TitleSlip.Height, Belt is null ? 0 : title + 6 + (BeltWidth * BeltKnot.Slope)));
        TitleSlip.Draw(page, new Area(inside.X, top, TitleSlip.Width, Math.Min(y - top, 84)), Slip);
        page.Rule(inside.X, inside.Right, y + 6, 0.9);
        page.Rule(inside.X, inside.Right, y + 8.2, 0.9);
        return y + 15;
    }

    /// <summary>Draws the short head of a later page; the answer is where it ends.</summary>
    public double HeadAgain(Page page)
    {
        var inside = page.Inside;
        page.Add(new BoxInk(new Area(inside.X, inside.Y, inside.Width, 2.2), 0));
        var y = page.Block([Club + ",  ", new Words(Title, true), ",  " + Again], inside.X, inside.Y + 9, inside.Width, 10.5);
        page.Rule(inside.X, inside.Right, y + 4, 0.9);
        return y + 12;
    }

    /// <summary>The lowest place for anything but the foot.</summary>
    public double Bottom(Page page) => page.Inside.Bottom - FootHeight(page) - 6;

    /// <summary>Draws the foot of every page, when their number is known.</summary>
    public void Foot(Draft draft)
    {
        for (var i = 0; i < draft.Pages.Count; i++)
        {
            var page = draft.Pages[i];
            var inside = page.Inside;
            var top = inside.Bottom - FootHeight(page);
            page.Rule(inside.X, inside.Right, top, 0.8);
            var end = Count(page, i + 1, draft.Pages.Count);
            var lines = Speak(page);
            page.Tagged(PaperTag.Paragraph, () =>
            {
                for (var line = 0; line < lines.Count; line++)
                    page.Line(lines[line], inside.X, top + 12 + (line * FootLine), FootSize);
            });
            var mark = LineBreaker.Measure(["Keikocho 稽古帳"], page.Missing);
            var from = inside.Right - (end.Width * FootSize) - 18 - (mark.Width * FootSize);
            if (lines.Count == 1 && inside.X + (lines[0].Width * FootSize) + 14 < from)
                page.Line(mark, from, top + 12, FootSize);
            page.Tagged(PaperTag.Paragraph, () => page.Line(end, inside.Right, top + 12, FootSize, Align.Right));
        }
    }

    private const double FootSize = 9.5;
    private const double FootLine = 12.5;

    private double FootHeight(Page page) => 3.5 + (Speak(page).Count * FootLine);

    private List<TextLine> Speak(Page page) =>
        LineBreaker.Break([$"Questions: speak to {SpeakTo} before or after a lesson."], FootSize, page.Inside.Width - 80, page.Missing);

    private static TextLine Count(Page page, int number, int of) =>
        LineBreaker.Measure([new Words(string.Create(CultureInfo.InvariantCulture, $"Page {number} of {of}"), true)], page.Missing);
}
