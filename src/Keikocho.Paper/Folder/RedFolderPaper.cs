using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Folder;

/// <summary>
/// The red folder: what an adult takes in hand when the power is gone or a child is hurt. First whom to ring and where the ambulance goes,
/// then a register for a pen, then every child with care notes and numbers, each in one piece. Black on white, in large type.
/// </summary>
public static class RedFolderPaper
{
    private const string Part = "Children, in register order";

    /// <summary>The folder as a PDF.</summary>
    /// <exception cref="ArgumentException">Club, what it is for, or the emergency number is missing, or a register names a child who is not in it.</exception>
    public static PaperResult Draw(RedFolderContent content, PaperSize size) => PdfWriter.Write(Lay(content, size));

    internal static Draft Lay(RedFolderContent content, PaperSize size)
    {
        ArgumentNullException.ThrowIfNull(content);
        if (new[] { content.Club, content.For, content.EmergencyNumber }.Any(string.IsNullOrWhiteSpace))
            throw new ArgumentException("A red folder names the club, what it is for and the emergency number.", nameof(content));
        var children = content.Children.ToDictionary(c => c.Number);
        if (content.Registers.SelectMany(r => r.Children).FirstOrDefault(n => !children.ContainsKey(n)) is var stray and not 0)
            throw new ArgumentException($"A register of the red folder names child {stray}, who is not in it.", nameof(content));
        var frame = new FolderFrame(content.Club, content.For, content.PrintedOn, content.ShredBy, content.Care);
        // The file's own title is shown by readers: it holds no name.
        var draft = new Draft(SheetFormat.Of(size), $"Red folder, {PaperDate.Day(content.PrintedOn)}", content.Club, content.PrintedOn);
        FolderFirstPage.Draw(draft, frame, content);
        foreach (var register in content.Registers) FolderRegisterPages.Draw(draft, frame, register, children);
        Children(draft, frame, content.Children);
        frame.Foot(draft);
        return draft;
    }

    private static void Children(Draft draft, FolderFrame frame, IReadOnlyList<FolderChild> children)
    {
        if (children.Count == 0) return;
        var scratch = draft.Scratch();
        var room = FolderFrame.Bottom(scratch) - frame.Again(scratch, Part);
        var page = draft.NewPage();
        var y = frame.Again(page, Part);
        var isFirst = true;
        foreach (var child in children)
        {
            var block = FolderChildBlock.Lay(draft, child, room);
            if (!isFirst && y + block.Height > FolderFrame.Bottom(page))
            {
                page = draft.NewPage();
                y = frame.Again(page, Part);
            }

            block.Place(page, page.Inside.X, y);
            y += block.Height;
            isFirst = false;
        }
    }
}
