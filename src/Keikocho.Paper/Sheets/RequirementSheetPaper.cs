using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Sheets;

/// <summary>The requirement sheet: what one child must show at one test, or, as the copy on the wall, what a rank asks.</summary>
public static class RequirementSheetPaper
{
    /// <summary>The most things to show and words on a sheet that is promised to be one page, with ordinary texts.</summary>
    public static (int Items, int Words) OnePage => (12, 10);

    /// <summary>
    /// The sheet as a PDF: one page where the smallest type does it, else as few as it takes; in the largest type at which there are no more.
    /// </summary>
    /// <exception cref="ArgumentException">The copy on the wall holds something about one child, or a text is longer than a page.</exception>
    public static PaperResult Draw(RequirementSheetContent content, PaperSize size) => PdfWriter.Write(Lay(content, size));

    internal static Draft Lay(RequirementSheetContent content, PaperSize size)
    {
        ArgumentNullException.ThrowIfNull(content);
        content.Guard();
        var format = SheetFormat.Of(size);
        var scales = content.Child is null ? SheetSizes.OnTheWall : SheetSizes.InTheHand;
        var (draft, frame) = SheetLayout.Lay(content, format, scales[0]);

        // Larger type never needs fewer pages, so halving finds the largest that needs no more.
        var pages = draft.Pages.Count;
        for (var (low, high) = (0, pages > 1 ? SheetSizes.LargestRunningOn + 1 : scales.Count); high - low > 1;)
        {
            var middle = (low + high) / 2;
            var larger = SheetLayout.Lay(content, format, scales[middle]);
            if (larger.Draft.Pages.Count > pages)
            {
                high = middle;
                continue;
            }

            low = middle;
            (draft, frame) = larger;
        }

        frame.Foot(draft);
        return draft;
    }
}
