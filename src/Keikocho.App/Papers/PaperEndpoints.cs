using System.Globalization;
using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Kernel;
using Keikocho.Paper;
using Keikocho.Paper.Register;
using Keikocho.Store.Club;

namespace Keikocho.App.Papers;

/// <summary>Hands out papers. Their addresses and file names hold days, never a name.</summary>
public static class PaperEndpoints
{
    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Teaching, Device.Laptop);
        app.MapGet(PapersAddress.Register, Register).WithMetadata(seen);
        app.MapGet(PapersAddress.Blank, Blank).WithMetadata(seen);
        SheetEndpoints.Map(app, seen);
        FolderEndpoint.Map(app);
    }

    private static IResult Register(OpenClub club, HttpContext http, string? lesson, string? paper)
    {
        var ask = new PaperAsk(Lesson: lesson, Paper: paper);
        var chosen = string.IsNullOrEmpty(lesson) ? PapersView.UsualLesson(club) : Guid.TryParse(lesson, out var id) ? club.Book.Lesson(id) : null;
        if (chosen is null) return Again(ask, new FieldError("lesson", "That lesson is not on the calendar. Choose one from the list."));
        if (Size(club, paper) is not { } size) return Again(ask, NoSuchPaper("paper"));
        return Pdf(http, RegisterSheet.Render(RegisterPaper.Of(club, chosen), size), $"register-{chosen.Date.Iso()}-{Clock(chosen.Start)}.pdf");
    }

    private static IResult Blank(OpenClub club, HttpContext http, string? programme, string? span, string? from, string? to, string? paper)
    {
        var ask = new PaperAsk(Programme: programme, Span: span, From: from, To: to, Paper: paper);
        var chosen = string.IsNullOrEmpty(programme) ? club.Book.Programmes.FirstOrDefault() : Guid.TryParse(programme, out var id) ? club.Book.Programme(id) : null;
        if (chosen is null) return Again(ask, new FieldError("programme", "That programme is not in this club. Choose one from the list."));
        var (days, error) = PaperSpan.Read(club.Book, club.Today, span, from, to);
        if (days is not { } some) return Again(ask, error!);
        if (Size(club, paper) is not { } size) return Again(ask, NoSuchPaper("blank-paper"));
        if (BlankPaper.Of(club, chosen, some.From, some.To) is not { } content)
            return Again(ask, new FieldError("span", $"{chosen.Name} have no lesson from {some.From.Full()} to {some.To.Full()}. Choose other days, or add the term on the club’s page."));
        return Pdf(http, BlankRegister.Render(content, size), $"blank-register-{some.From.Iso()}-to-{some.To.Iso()}.pdf");
    }

    /// <summary>The size that was asked for, the club's own where nothing was said; null for one that there is not.</summary>
    internal static PaperSize? Size(OpenClub club, string? paper) => paper switch
    {
        null or "" => club.Book.Club.Paper == PaperChoice.Letter ? PaperSize.Letter : PaperSize.A4,
        "a4" => PaperSize.A4,
        "letter" => PaperSize.Letter,
        _ => null,
    };

    internal static FieldError NoSuchPaper(string control) => new(control, "Choose A4 or US Letter.");

    private static string Clock(TimeOnly start) => start.ToString("HHmm", CultureInfo.InvariantCulture);

    internal static IResult Pdf(HttpContext http, PaperResult paper, string fileName)
    {
        http.Response.Headers.ContentDisposition = $"inline; filename=\"{fileName}\"";
        return Results.Bytes(paper.Pdf, "application/pdf");
    }

    /// <summary>The page with what was asked and what is wrong with it.</summary>
    internal static IResult Again(PaperAsk ask, FieldError error) => OnePage.Of<PapersPage>(new Dictionary<string, object?>
    {
        [nameof(PapersPage.Ask)] = ask,
        [nameof(PapersPage.Errors)] = new List<FieldError> { error },
    });
}
