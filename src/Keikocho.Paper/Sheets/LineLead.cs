using Keikocho.Core.Syllabus;

namespace Keikocho.Paper.Sheets;

/// <summary>What stands before the items of a line. A title that was made from their names is not printed before the same names again.</summary>
internal static class LineLead
{
    /// <summary>"Either of:", "Drawn by lot:", the club's own title; null where the items stand for themselves.</summary>
    public static string? Of(SheetLine line)
    {
        if (!NamesAll(line))
            return line.Title;
        var before = line.Title[..line.Title.IndexOf(line.Items[0].Item.Name, StringComparison.OrdinalIgnoreCase)].TrimEnd();
        if (before.EndsWith(':'))
            return before;
        return line.IsAll ? null : line.IsEither ? SheetTexts.EitherOf : SheetTexts.Of(line.Count, line.Items.Count);
    }

    /// <summary>Whether the title has the name of every item.</summary>
    public static bool NamesAll(SheetLine line) => line.Items.Count > 0 && line.Items.All(item => ItemNotes.Says(line.Title, item.Item.Name));
}
