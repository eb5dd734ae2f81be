using Keikocho.Core.Kernel;

namespace Keikocho.App.Papers;

/// <summary>Addresses of the papers.</summary>
public static class PapersAddress
{
    /// <summary>The page.</summary>
    public const string Page = "/papers";

    /// <summary>The register of one evening.</summary>
    public const string Register = "/papers/register.pdf";

    /// <summary>The register to fill in with a pen.</summary>
    public const string Blank = "/papers/blank-register.pdf";

    /// <summary>The red folder.</summary>
    public const string Folder = "/papers/red-folder.pdf";

    /// <summary>Where the page asks for it.</summary>
    public const string FolderPart = "/papers#folder-part";

    /// <summary>The requirement sheet of one child.</summary>
    public const string Sheet = "/papers/sheet.pdf";

    /// <summary>The requirement sheets of a test.</summary>
    public const string Sheets = "/papers/sheets.pdf";

    /// <summary>The copy for the wall.</summary>
    public const string Wall = "/papers/wall.pdf";

    /// <summary>The parent's page of one child.</summary>
    public const string ParentsPage = "/papers/parents-page.pdf";

    /// <summary>A paper that was kept as it was told or printed, as a route.</summary>
    public const string KeptRoute = "/papers/kept/{id:guid}";

    /// <summary>The papers of one test.</summary>
    public static string OfTest(Guid test) => $"{Page}?test={test:D}#sheets-part";

    /// <summary>The requirement sheet of one child for a test, on the club's usual paper.</summary>
    public static string SheetOf(Guid child, Guid test) => $"{Sheet}?child={child:D}&test={test:D}";

    /// <summary>The parent's page of one child for a test, on the club's usual paper.</summary>
    public static string ParentsPageOf(Guid child, Guid test) => $"{ParentsPage}?child={child:D}&test={test:D}";

    /// <summary>A kept paper, on the club's usual paper.</summary>
    public static string KeptOf(Guid id) => $"/papers/kept/{id:D}";

    /// <summary>The register of one lesson, on the club's usual paper.</summary>
    public static string RegisterOf(Guid lesson) => $"{Register}?lesson={lesson:D}";

    /// <summary>The blank register of a programme and a span, on the club's usual paper.</summary>
    public static string BlankOf(Guid programme, DateOnly from, DateOnly to) => $"{Blank}?programme={programme:D}&from={from.Iso()}&to={to.Iso()}";
}
