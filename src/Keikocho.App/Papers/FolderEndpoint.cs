using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Kernel;
using Keikocho.Paper.Folder;

namespace Keikocho.App.Papers;

/// <summary>Hands out the red folder. With care notes in words only while the lock is open; else only where it is said that they are left out.</summary>
public static class FolderEndpoint
{
    /// <summary>Adds the endpoint.</summary>
    public static void Map(WebApplication app) =>
        app.MapGet(PapersAddress.Folder, Folder).WithMetadata(new SeenByAttribute(Role.Instructor, Device.Laptop));

    private static IResult Folder(OpenClub club, HttpContext http, string? @for, string? paper, string? withoutCare)
    {
        var ask = new PaperAsk(For: @for, Paper: paper, WithoutCare: withoutCare);
        if (FolderScope.Read(club, @for) is not { } scope)
            return PaperEndpoints.Again(ask, new FieldError("folder-for", "That evening or group is not in this club. Choose one from the list."));
        if (PaperEndpoints.Size(club, paper) is not { } size) return PaperEndpoints.Again(ask, PaperEndpoints.NoSuchPaper("folder-paper"));
        try
        {
            if (FolderPaper.Of(club, scope, withoutCare == "yes") is { } content)
                return PaperEndpoints.Pdf(http, RedFolderPaper.Draw(content, size), $"red-folder-{club.Today.Iso()}.pdf");
        }
        catch (ObjectDisposedException)
        {
            // Shut while the folder was made: nothing half open goes to a printer.
        }

        return PaperEndpoints.Again(ask, new FieldError(
            "folder-without", "There are care notes, and the club’s lock is shut. Open the lock first, or tick that the folder is printed without them."));
    }
}
