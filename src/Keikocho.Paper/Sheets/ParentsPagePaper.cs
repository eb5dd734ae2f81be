using Keikocho.Core.Readiness;
using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Sheets;

/// <summary>All that a parent's page shows: facts about one child.</summary>
/// <param name="Club">Name of the club.</param>
/// <param name="Child">The child's name as the family knows it.</param>
/// <param name="PrintedOn">Today.</param>
/// <param name="Page">What it says.</param>
/// <param name="SpeakTo">Whom to ask.</param>
public sealed record ParentsPageContent(string Club, string Child, DateOnly PrintedOn, ParentsPageAnswer Page, string SpeakTo);

/// <summary>The parent's page: one page that can be read aloud; where a rank asks for very much, more than one.</summary>
public static class ParentsPagePaper
{
    // A letter-writing notebook that goes between a teacher and a family.
    private const string Slip = "連絡帳";
    private const double RunningSize = 11;
    private static readonly double[] Sizes = [13.5, 13, 12.5, 12, 11.5, 11, 10.5, 10, 9.5];

    /// <summary>The page as a PDF, in the largest type at which it is one page; what fits none in the smallest type that can be read goes on.</summary>
    /// <exception cref="ArgumentException">Club, child or whom to speak to is missing.</exception>
    public static PaperResult Draw(ParentsPageContent content, PaperSize size) => PdfWriter.Write(Lay(content, size));

    internal static Draft Lay(ParentsPageContent content, PaperSize size)
    {
        ArgumentNullException.ThrowIfNull(content);
        if (string.IsNullOrWhiteSpace(content.Club) || string.IsNullOrWhiteSpace(content.Child) || string.IsNullOrWhiteSpace(content.SpeakTo))
            throw new ArgumentException("A parent's page names the club, the child and whom to speak to.", nameof(content));
        var frame = new SheetFrame(
            content.Club, content.Page.Title, Slip,
            [ItemNotes.Says(content.Page.Title, content.Child) ? ["For the family"] : ["For the family of ", new Words(content.Child, true)]],
            content.Child, content.PrintedOn, null, content.SpeakTo);
        foreach (var text in Sizes)
        {
            var draft = new Draft(SheetFormat.Of(size), $"{content.Page.Title}, {PaperDate.Full(content.PrintedOn)}", content.Club, content.PrintedOn);
            var page = draft.NewPage();
            if (Body(page, content.Page, frame.Head(page) + 4, text) > frame.Bottom(page))
                continue;
            frame.Foot(draft);
            return draft;
        }

        return Running(content, frame, SheetFormat.Of(size));
    }

    // Nothing is left out: what does not fit one page goes on, in type that can be read without effort.
    private static Draft Running(ParentsPageContent content, SheetFrame frame, SheetFormat format)
    {
        var draft = new Draft(format, $"{content.Page.Title}, {PaperDate.Full(content.PrintedOn)}", content.Club, content.PrintedOn);
        var page = draft.NewPage();
        var y = frame.Head(page) + 4;
        foreach (var sentence in content.Page.Opening)
            Put(sentence);
        foreach (var section in content.Page.Sections.Where(section => section.Sentences.Count > 0))
        {
            // A heading does not stand alone at the foot of a page.
            if (y + (RunningSize * 5) > frame.Bottom(page))
                Next();
            y += RunningSize * 0.45;
            page.Rule(page.Inside.X, page.Inside.Right, y, 0.8);
            y += RunningSize * 0.35;
            page.Tagged(PaperTag.Heading, () => y = page.Block([new Words(section.Heading, true)], page.Inside.X, y, page.Inside.Width, RunningSize * 1.15));
            foreach (var sentence in section.Sentences)
                Put(sentence);
        }

        frame.Foot(draft);
        return draft;

        void Next()
        {
            page = draft.NewPage();
            y = frame.HeadAgain(page) + 4;
        }

        void Put(string sentence)
        {
            var end = Sentence(draft.Scratch(), sentence, y, page.Inside.Width, RunningSize);
            if (end > frame.Bottom(page))
                Next();
            y = Sentence(page, sentence, y, page.Inside.Width, RunningSize) + (RunningSize * 0.25);
        }
    }

    private static double Body(Page page, ParentsPageAnswer answer, double y, double size)
    {
        var width = page.Inside.Width;
        foreach (var sentence in answer.Opening)
            y = Sentence(page, sentence, y, width, size) + (size * 0.25);
        foreach (var section in answer.Sections.Where(section => section.Sentences.Count > 0))
        {
            y += size * 0.45;
            page.Rule(page.Inside.X, page.Inside.Right, y, 0.8);
            y += size * 0.35;
            page.Tagged(PaperTag.Heading, () => y = page.Block([new Words(section.Heading, true)], page.Inside.X, y, page.Inside.Width, size * 1.15));
            foreach (var sentence in section.Sentences)
                y = Sentence(page, sentence, y, width, size) + (size * 0.25);
        }

        return y;
    }

    private static double Sentence(Page page, string sentence, double y, double width, double size)
    {
        page.Tagged(PaperTag.Paragraph, () => y = page.Block([sentence], page.Inside.X, y, width, size));
        return y;
    }
}
