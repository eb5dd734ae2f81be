using System.Globalization;
using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Cards;

/// <summary>The cards of an evening: one page an end, in the largest type at which it is one page.</summary>
public static class EndCardPaper
{
    private const string Slip = "指導案";
    private const double Foot = 34, Small = 9.5;
    private static readonly double[] Sizes = [14, 13.5, 13, 12.5, 12, 11.5, 11, 10.5, 10, 9.5, 9, 8.5, 8];

    /// <summary>The cards as a PDF, one after the other.</summary>
    /// <exception cref="ArgumentException">There is no card, or one without club or title.</exception>
    public static PaperResult Draw(IReadOnlyList<EndCardContent> cards, PaperSize size) => PdfWriter.Write(Lay(cards, size));

    internal static Draft Lay(IReadOnlyList<EndCardContent> cards, PaperSize size)
    {
        ArgumentNullException.ThrowIfNull(cards);
        if (cards.Count == 0 || cards.Any(c => string.IsNullOrWhiteSpace(c.Club) || string.IsNullOrWhiteSpace(c.Title)))
            throw new ArgumentException("There is a card to draw, and each names the club and its end.", nameof(cards));
        var draft = new Draft(SheetFormat.Of(size), $"Cards, {PaperDate.Full(cards[0].Date)}", cards[0].Club, cards[0].Date);
        var owners = new List<EndCardContent>();
        foreach (var card in cards)
        {
            var text = Sizes.FirstOrDefault(s => Fits(draft, card, s));
            var before = draft.Pages.Count;
            if (text > 0) One(draft, card, text);
            else Running(draft, card);
            owners.AddRange(Enumerable.Repeat(card, draft.Pages.Count - before));
        }

        for (var i = 0; i < draft.Pages.Count; i++)
            DrawFoot(draft.Pages[i], owners[i], i + 1, draft.Pages.Count);
        return draft;
    }

    private static double Bottom(Page page) => page.Inside.Bottom - Foot;

    private static bool Fits(Draft draft, EndCardContent card, double size)
    {
        var page = draft.Scratch();
        var y = Head(page, card);
        foreach (var piece in Pieces(card, size)) y = piece(page, y);
        return y <= Bottom(page);
    }

    private static void One(Draft draft, EndCardContent card, double size)
    {
        var page = draft.NewPage();
        var y = Head(page, card);
        foreach (var piece in Pieces(card, size)) y = piece(page, y);
    }

    // More than a page holds in type that can be read goes on; nothing is left out.
    private static void Running(Draft draft, EndCardContent card)
    {
        var page = draft.NewPage();
        var y = Head(page, card);
        foreach (var piece in Pieces(card, Sizes[^1]))
        {
            var scratch = draft.Scratch();
            if (y + piece(scratch, scratch.Inside.Y) - scratch.Inside.Y > Bottom(page))
            {
                page = draft.NewPage();
                y = page.Inside.Y;
            }

            y = piece(page, y);
        }
    }

    private static double Head(Page page, EndCardContent card)
    {
        var inside = page.Inside;
        page.Add(new BoxInk(new Area(inside.X, inside.Y, inside.Width, 2.2), 0));
        var top = inside.Y + 8;
        var left = inside.X + TitleSlip.Width + 12;
        var y = top;
        page.Tagged(PaperTag.Paragraph, () => y = page.Block([$"{card.Club}, {PaperDate.Full(card.Date)}, {Clock(card.Start)} to {Clock(card.End)}"], left, top, inside.Right - left, 11));
        page.Tagged(PaperTag.Title, () => y = page.Block([new Words(card.Title, true)], left, y, inside.Right - left, 24, 1.2));
        string[] lines =
        [
            .. card.Lead.Length > 0 ? [$"Leads: {card.Lead}{(card.Drills.Length > 0 ? $". Drills: {card.Drills}" : "")}"] : Array.Empty<string>(),
            .. card.Unit is { } unit ? [$"Unit: {unit}"] : Array.Empty<string>(),
            .. card.Edition is { } edition ? [$"Syllabus: {edition}"] : Array.Empty<string>(),
        ];
        if (lines.Length > 0) page.Tagged(PaperTag.Paragraph, () => y = page.Block([string.Join(". ", lines)], left, y, inside.Right - left, 10.5));
        y = Math.Max(y, top + TitleSlip.Height);
        TitleSlip.Draw(page, new Area(inside.X, top, TitleSlip.Width, y - top), Slip);
        page.Rule(inside.X, inside.Right, y + 4, 0.9);
        return y + 8;
    }

    private static IEnumerable<Func<Page, double, double>> Pieces(EndCardContent card, double size)
    {
        if (card.Empty is { } empty)
        {
            yield return Text([new Words(empty, true)], size * 1.2);
            yield break;
        }

        if (card.LookAt.Length > 0) yield return Text([new Words("Look at: ", true), card.LookAt], size);
        foreach (var part in card.Parts)
            yield return (page, y) => Part(page, y, part, size);
        if (card.Falls.Count > 0)
        {
            yield return Heading("Falls first", size);
            foreach (var fall in card.Falls) yield return Text([fall], size * 0.92);
        }

        yield return Heading($"Who: {card.Children.Count.ToString(CultureInfo.InvariantCulture)}", size);
        for (var i = 0; i < card.Children.Count; i += 2)
        {
            var pair = card.Children.Skip(i).Take(2).ToArray();
            yield return (page, y) => Row(page, y, pair, size * 0.92);
        }

        if (card.Words.Length > 0) yield return Text([new Words("Words: ", true), card.Words], size);
        yield return Text([new Words("Plan B: ", true), string.Join(" ", card.PlanB)], size * 0.92);
    }

    private static Func<Page, double, double> Text(IReadOnlyList<Words> words, double size) => (page, y) =>
    {
        page.Tagged(PaperTag.Paragraph, () => y = page.Block(words, page.Inside.X, y, page.Inside.Width, size, 1.3));
        return y + (size * 0.2);
    };

    private static Func<Page, double, double> Heading(string words, double size) => (page, y) =>
    {
        page.Rule(page.Inside.X, page.Inside.Right, y + (size * 0.2), 0.8);
        page.Tagged(PaperTag.Heading, () => y = page.Block([new Words(words, true)], page.Inside.X, y + (size * 0.3), page.Inside.Width, size * 1.05, 1.3));
        return y;
    };

    private static double Part(Page page, double y, CardPaperPart part, double size)
    {
        var column = size * 8;
        var left = page.Inside.X + column;
        var top = y;
        page.Tagged(PaperTag.Paragraph, () =>
        {
            page.Block([$"{Clock(part.From)}  {part.Minutes.ToString(CultureInfo.InvariantCulture)} min"], page.Inside.X, top, column, size, 1.3);
            y = page.Block([new Words(part.Title, true)], left, top, page.Inside.Right - left, size * 1.08, 1.25);
            foreach (var line in part.Lines)
                y = page.Block([line], left, y, page.Inside.Right - left, size * 0.9, 1.25);
        });
        page.Rule(page.Inside.X, page.Inside.Right, y + 1.2, 0.3);
        return y + 3;
    }

    private static double Row(Page page, double y, CardPaperChild[] children, double size)
    {
        var width = (page.Inside.Width - 12) / 2;
        var end = y;
        for (var i = 0; i < children.Length; i++)
        {
            var child = children[i];
            var x = page.Inside.X + (i * (width + 12));
            page.Tagged(PaperTag.Paragraph, () => end = Math.Max(end, page.Block(
                [new Words(child.Name, true), $"{(child.Mark.Length > 0 ? $" ({child.Mark})" : "")}, {child.Belt}: {child.Role}"], x, y, width, size, 1.25)));
        }

        return end + 1;
    }

    private static void DrawFoot(Page page, EndCardContent card, int number, int of)
    {
        var inside = page.Inside;
        var top = inside.Bottom - Foot + 6;
        page.Rule(inside.X, inside.Right, top, 0.8);
        var end = string.Create(CultureInfo.InvariantCulture, $"Page {number} of {of}");
        page.Tagged(PaperTag.Paragraph, () => page.Block(
            [new Words("Stop: ", true), $"at “mate” or a tap everybody lets go. A knock: stop, sit the child down, call the first-aider ({card.FirstAider}); off for the rest of the evening."],
            inside.X, top + 2, inside.Width - 70, Small, 1.25));
        page.Tagged(PaperTag.Paragraph, () => page.Line([new Words(end, true)], inside.Right, top + 12, Small, Align.Right));
    }

    private static string Clock(TimeOnly time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);
}
