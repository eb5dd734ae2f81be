using System.Globalization;
using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Folder;

/// <summary>One child: name, care notes, whom to ring. A block is never broken over two pages.</summary>
internal static class FolderChildBlock
{
    private const double Left = 40;

    // A block that is taller than a page is set smaller until it is one.
    private static readonly double[] Sizes = [13, 12, 11, 10, 9, 8, 7, 6];

    /// <summary>Lays it out in the largest type at which it fits a page.</summary>
    public static Block Lay(Draft draft, FolderChild child, double room)
    {
        Block? block = null;
        foreach (var size in Sizes)
        {
            block = Block.Lay(draft.Missing, page => Draw(page, draft.Format.Inside.Width, child, size));
            if (block.Height <= room) return block;
        }

        return block!;
    }

    private static double Draw(Page page, double width, FolderChild child, double size)
    {
        page.Rule(0, width, 0, 1.6);
        var y = 5.0;
        var top = y;
        page.Tagged(PaperTag.Heading, () =>
        {
            page.Line([new Words(child.Number.ToString(CultureInfo.InvariantCulture), true)], 0, top + (size * 1.35), size * 1.5);
            Words[] name = child.Second is null ? [new(child.First, true)] : [new(child.First, true), " ", new(child.Second, true)];
            y = page.Block([.. name, $"   {child.FullName}{(child.Age is null ? "" : $", {child.Age}")}"], Left, y, width - Left, size * 1.25, 1.3);
        });
        y += 2;
        if (child.Notes.Count > 0) y = Notes(page, width, child, size, y);
        if (child.Care is { } care) page.Tagged(PaperTag.Paragraph, () => y = page.Block([new Words(care, child.HasNotes)], Left, y, width - Left, size * 0.85));
        if (child.Contacts.Count == 0)
            page.Tagged(PaperTag.Paragraph, () => y = page.Block([new Words("Nobody to ring is written down: ask tonight.", true)], Left, y, width - Left, size));
        foreach (var contact in child.Contacts) y = Contact(page, width, contact, size, y);
        return y + 8;
    }

    // A heavy bar beside the notes: the eye finds it while the pages are turned.
    private static double Notes(Page page, double width, FolderChild child, double size, double y)
    {
        var top = y;
        foreach (var note in child.Notes)
            page.Tagged(PaperTag.Paragraph, () => y = page.Block([new Words($"{note.Heading}: ", true), Flowing(note.Text)], Left + 12, y, width - Left - 12, size));
        page.Add(new BoxInk(new Area(Left, top + 1, 4.5, y - top - 2), 0));
        return y + 3;
    }

    private static double Contact(Page page, double width, FolderContact contact, double size, double y)
    {
        Words[] who = contact.Relation is { } relation ? [contact.Name, $", {relation}"] : [contact.Name];
        Words[] number = [new(contact.Phone ?? "no number", true)];
        var measured = LineBreaker.Measure(number, page.Missing);
        var room = width - Left - (measured.Width * size) - 14;
        if (room < width / 3)
        {
            // What was typed for a number is as long as a sentence: it stands below.
            page.Tagged(PaperTag.Paragraph, () => y = page.Block([.. who, "  ", .. contact.CheckFirst ? [new Words("check with instructor", true), "  "] : Array.Empty<Words>(), .. number], Left, y, width - Left, size));
            return y;
        }

        page.Tagged(PaperTag.Paragraph, () =>
        {
            var line = y + (size * Page.TextLeading / 2) + (FontSet.CapitalHeight * size / 2);
            y = page.Block(contact.CheckFirst ? [.. who, new Words("  check with instructor", true)] : who, Left, y, room, size);
            page.Line(measured, width, line, size, Align.Right);
        });
        return y;
    }

    private static string Flowing(string text) => string.Join(' ', text.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries));
}
