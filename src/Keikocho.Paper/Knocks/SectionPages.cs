using Keikocho.Paper.Layout;
using Keikocho.Paper.Sheets;

namespace Keikocho.Paper.Knocks;

/// <summary>A heading with its lines, and with room for a pen.</summary>
/// <param name="Heading">The heading.</param>
/// <param name="Lines">The lines.</param>
/// <param name="PenLines">Empty lines to write on.</param>
internal sealed record PaperSection(string Heading, IReadOnlyList<IReadOnlyList<Words>> Lines, int PenLines = 0);

/// <summary>Sections one below the other, in the largest type that is one page; what fits none goes on, and nothing is cut.</summary>
internal static class SectionPages
{
    private const double PenHeight = 21;
    private const double SignHeight = 34;

    public static Draft Lay(SheetFrame frame, SheetFormat format, string title, IReadOnlyList<PaperSection> sections, double[] sizes, IReadOnlyList<string> signed)
    {
        foreach (var size in sizes)
        {
            var draft = Run(frame, format, title, sections, size, signed);
            if (draft.Pages.Count == 1) return draft;
        }

        return Run(frame, format, title, sections, sizes[^1], signed);
    }

    private static Draft Run(SheetFrame frame, SheetFormat format, string title, IReadOnlyList<PaperSection> sections, double size, IReadOnlyList<string> signed)
    {
        var draft = new Draft(format, title, frame.Club, frame.PrintedOn);
        var page = draft.NewPage();
        var y = frame.Head(page) + 2;
        foreach (var section in sections)
        {
            // A heading does not stand alone at the foot of a page.
            Room(size * 4.5);
            y += size * 0.4;
            page.Rule(page.Inside.X, page.Inside.Right, y, 0.8);
            y += size * 0.3;
            page.Tagged(PaperTag.Heading, () => y = page.Block([new Words(section.Heading, true)], page.Inside.X, y, page.Inside.Width, size * 1.12));
            foreach (var line in section.Lines)
            {
                Room(draft.Scratch().BlockHeight(line, page.Inside.Width, size));
                page.Tagged(PaperTag.Paragraph, () => y = page.Block(line, page.Inside.X, y, page.Inside.Width, size));
                y += size * 0.15;
            }

            for (var i = 0; i < section.PenLines; i++)
            {
                Room(PenHeight);
                y += PenHeight;
                page.Rule(page.Inside.X, page.Inside.Right, y, 0.4);
            }
        }

        if (signed.Count > 0) Sign();
        frame.Foot(draft);
        return draft;

        void Room(double height)
        {
            if (y + height <= frame.Bottom(page)) return;
            page = draft.NewPage();
            y = frame.HeadAgain(page) + 2;
        }

        void Sign()
        {
            Room(SignHeight + 14);
            var width = (page.Inside.Width - ((signed.Count - 1) * 14)) / signed.Count;
            var line = y + SignHeight;
            for (var i = 0; i < signed.Count; i++)
            {
                var x = page.Inside.X + (i * (width + 14));
                page.Rule(x, x + width, line, 0.6);
                var words = signed[i];
                page.Tagged(PaperTag.Paragraph, () => page.Line([words], x, line + 11, 9));
            }
        }
    }
}
