using System.Globalization;
using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Folder;

/// <summary>The first page: whom to ring, where the ambulance goes, and what every adult does.</summary>
internal static class FolderFirstPage
{
    private const double Body = 15;
    private const double Small = 12;
    private const double PenHeight = 22;
    private const double LabelWidth = 150;

    /// <summary>Draws it; it goes on to further pages where a club has many halls.</summary>
    public static void Draw(Draft draft, FolderFrame frame, RedFolderContent content)
    {
        var page = draft.NewPage();
        var y = frame.Head(page);
        y = Ring(page, content.EmergencyNumber, y);
        foreach (var hall in content.Halls)
        {
            Block block = Block.Lay(draft.Missing, at => Hall(at, draft.Format.Inside.Width, hall, content.Halls.Count > 1));
            Put(block);
        }

        Put(Block.Lay(draft.Missing, at => Section(at, draft.Format.Inside.Width, "Children with care notes", [CareLine(content)], 0)));
        Put(Block.Lay(draft.Missing, at => Section(at, draft.Format.Inside.Width, "Everybody at once",
            ["One adult stays with the child. One rings. One meets the ambulance. One looks after the others, at the far end."], 0)));
        Put(Block.Lay(draft.Missing, at => Section(
            at, draft.Format.Inside.Width, "Worried about a child’s welfare", content.Welfare, content.Welfare.Count == 0 ? 2 : 0)));

        void Put(Block block)
        {
            if (y + block.Height > FolderFrame.Bottom(page))
            {
                page = draft.NewPage();
                y = frame.Again(page, "Where and whom to ring");
            }

            block.Place(page, page.Inside.X, y);
            y += block.Height + 9;
        }
    }

    private static string CareLine(RedFolderContent content)
    {
        var marked = content.Children.Where(c => c.HasNotes)
            .Select(c => string.Create(CultureInfo.InvariantCulture, $"{c.Number} {(c.Second is null ? c.First : $"{c.First} {c.Second}")}")).ToList();
        var unknown = content.Children.Count(c => c.NotAsked);
        var rest = unknown switch
        {
            0 => "",
            1 => " One family was never asked.",
            _ => string.Create(CultureInfo.InvariantCulture, $" {unknown} families were never asked."),
        };
        if (marked.Count == 0)
            return unknown > 0 && unknown == content.Children.Count ? "Not known: no family was asked yet." : $"No care note is entered.{rest}";
        return content.Care == FolderCare.InWords ? $"{string.Join(",  ", marked)}.{rest}" : $"{string.Join(",  ", marked)}. They are on the laptop, under its lock.{rest}";
    }

    private static double Ring(Page page, string number, double y)
    {
        var inside = page.Inside;
        // A club that has not set its number reads "your country's emergency number" in a size that fits the box.
        var words = LineBreaker.Measure([new Words($"Ring {number}", true)], page.Missing);
        var size = Math.Min(34, (inside.Width - 24) / words.Width);
        var height = size + 22;
        page.Add(new BoxInk(new Area(inside.X, y, inside.Width, height), 2.4));
        page.Tagged(PaperTag.Heading, () => page.Line(words, inside.X + (inside.Width / 2), y + (height / 2) + (FontSet.CapitalHeight * size / 2), size, Align.Centre));
        return y + height + 10;
    }

    private static double Hall(Page page, double width, FolderHall hall, bool several)
    {
        var y = Heading(page, width, several ? $"Tell them where: {hall.Name}" : "Tell them where", 0);
        y = Line("Address", several || hall.Address is null ? hall.Address : $"{hall.Name}, {hall.Address}");
        y = Line("Ambulance comes in", hall.Entrance);
        return Line("Nearest hospital", hall.Hospital);

        double Line(string label, string? text)
        {
            page.Tagged(PaperTag.Paragraph, () =>
            {
                var first = y + (Body * Page.TextLeading / 2) + (FontSet.CapitalHeight * Body / 2);
                page.Line([label], 0, first, Small);
                if (text is not null) y = page.Block([new Words(text, true)], LabelWidth, y, width - LabelWidth, Body);
            });
            if (text is not null) return y + 2;
            page.Rule(LabelWidth, width, y + PenHeight, 0.5);
            return y + PenHeight + 4;
        }
    }

    private static double Section(Page page, double width, string heading, IReadOnlyList<string> lines, int penLines)
    {
        var y = Heading(page, width, heading, 0);
        foreach (var line in lines) page.Tagged(PaperTag.Paragraph, () => y = page.Block([line], 0, y, width, Body));
        for (var i = 0; i < penLines; i++)
        {
            y += PenHeight;
            page.Rule(0, width, y, 0.5);
        }

        return y + 2;
    }

    private static double Heading(Page page, double width, string heading, double y)
    {
        page.Rule(0, width, y, 0.9);
        y += 4;
        page.Tagged(PaperTag.Heading, () => y = page.Block([new Words(heading, true)], 0, y, width, 13));
        return y + 2;
    }
}
