using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Sheets;

/// <summary>Papers of many children in one file, to print in one go. Each keeps its own count of pages, so that it can be handed out alone.</summary>
public static class SheetsPaper
{
    /// <summary>Requirement sheets in the order given.</summary>
    /// <exception cref="ArgumentException">There is none, or one of them cannot be drawn.</exception>
    public static PaperResult DrawAll(IReadOnlyList<RequirementSheetContent> contents, PaperSize size)
    {
        ArgumentNullException.ThrowIfNull(contents);
        return Write([.. contents.Select(content => RequirementSheetPaper.Lay(content, size))], "Sheets");
    }

    /// <summary>Parents' pages in the order given.</summary>
    /// <exception cref="ArgumentException">There is none, or one of them cannot be drawn.</exception>
    public static PaperResult DrawAll(IReadOnlyList<ParentsPageContent> contents, PaperSize size)
    {
        ArgumentNullException.ThrowIfNull(contents);
        return Write([.. contents.Select(content => ParentsPagePaper.Lay(content, size))], "Parents’ pages");
    }

    private static PaperResult Write(IReadOnlyList<Draft> drafts, string title) =>
        drafts.Count == 0 ? throw new ArgumentException("There is no child to print for.", nameof(drafts)) : PdfWriter.Write(drafts, title);
}
