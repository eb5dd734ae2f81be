using Keikocho.App.Club;
using Keikocho.App.ParentsPages;
using Keikocho.App.PromotionTests;
using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.App.Syllabus;
using Keikocho.Core.Kernel;
using Keikocho.Core.Readiness;
using Keikocho.Core.Syllabus;
using Keikocho.Paper;
using Keikocho.Paper.Sheets;
using Keikocho.Store.Promotion;

namespace Keikocho.App.Papers;

/// <summary>Hands out the papers of a promotion test: requirement sheets, the copy for the wall, the parent's page.</summary>
internal static class SheetEndpoints
{
    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app, SeenByAttribute seen)
    {
        app.MapGet(PapersAddress.Sheet, Sheet).WithMetadata(seen);
        app.MapGet(PapersAddress.Sheets, Sheets).WithMetadata(seen);
        app.MapGet(PapersAddress.Wall, Wall).WithMetadata(seen);
        app.MapGet(PapersAddress.ParentsPage, ParentsPage).WithMetadata(seen);
        app.MapGet(PapersAddress.KeptRoute, Kept).WithMetadata(seen);
    }

    private static IResult Sheet(OpenClub club, TestReckoning reckoning, HttpContext http, string? test, string? child, string? paper)
    {
        var ask = new PaperAsk(Test: test, Child: child, Paper: paper);
        if (One(club, reckoning, test, child, out var error) is not { } one) return PaperEndpoints.Again(ask, error!);
        if (PaperEndpoints.Size(club, paper) is not { } size) return PaperEndpoints.Again(ask, PaperEndpoints.NoSuchPaper("one-paper"));
        var content = SheetOf(club, one.Test, one.List, one.Child);
        return PaperEndpoints.Pdf(http, RequirementSheetPaper.Draw(content, size), $"sheet-{one.Test.Test.Date.Iso()}.pdf");
    }

    private static IResult Sheets(OpenClub club, TestReckoning reckoning, HttpContext http, string? test, string? children, string? paper)
    {
        var ask = new PaperAsk(Test: test, Children: children ?? "if", Paper: paper);
        var (found, error) = PaperTest.Read(club, test, "sheets-test");
        if (found is null) return PaperEndpoints.Again(ask, error!);
        if (PaperEndpoints.Size(club, paper) is not { } size) return PaperEndpoints.Again(ask, PaperEndpoints.NoSuchPaper("sheets-paper"));
        Func<ReadyWord, bool>? asked = children switch
        {
            "forward" => word => word == ReadyWord.PutForward,
            null or "" or "if" => word => word is ReadyWord.PutForward or ReadyWord.If,
            "all" => _ => true,
            _ => null,
        };
        if (asked is null) return PaperEndpoints.Again(ask, new FieldError("children", "Choose whose sheets to make."));
        var list = reckoning.Of(club, found.Test);
        var contents = list.Children.Where(c => c.Sheet is not null && asked(c.Answer.Verdict)).Select(c => SheetOf(club, found, list, c)).ToList();
        if (contents.Count == 0)
            return PaperEndpoints.Again(ask, new FieldError("children", $"Nobody stands so for the test on {found.Test.Date.Full()}. Choose others, or another test."));
        return PaperEndpoints.Pdf(http, SheetsPaper.DrawAll(contents, size), $"sheets-{found.Test.Date.Iso()}.pdf");
    }

    private static IResult Wall(OpenClub club, EditionsInHand editions, HttpContext http, string? test, string? rank, string? unit, string? paper)
    {
        var ask = new PaperAsk(Test: test, Rank: rank, Unit: unit, Paper: paper);
        var (found, error) = PaperTest.Read(club, test, "wall-test");
        if (found is null) return PaperEndpoints.Again(ask, error!);
        if (PaperEndpoints.Size(club, paper) is not { } size) return PaperEndpoints.Again(ask, PaperEndpoints.NoSuchPaper("wall-paper"));
        var inHand = editions.Of(found.Edition!);
        var asking = inHand.Edition.Ranks.Where(r => r.Requirements.Count > 0).ToList();
        var chosen = string.IsNullOrEmpty(rank) ? asking.FirstOrDefault() : asking.FirstOrDefault(r => r.Key == rank);
        if (chosen is null)
            return PaperEndpoints.Again(ask, new FieldError("rank", $"The syllabus of {found.Programme.Name} on {found.Test.Date.Full()} asks nothing for that rank. Choose another."));
        var taught = string.IsNullOrEmpty(unit) ? found.Unit : inHand.Edition.Units.FirstOrDefault(u => u.Key == unit)?.Key;
        if (taught is null && !string.IsNullOrEmpty(unit))
            return PaperEndpoints.Again(ask, new FieldError("unit", $"The syllabus of {found.Programme.Name} on {found.Test.Date.Full()} has no such unit. Choose another."));
        var sheet = MakeSheet.Make(new SheetSnapshot(inHand.Edition, chosen.Key, found.Test.Date, taught, editions.AgeRulesOf(club.Book), null), inHand.Prepared);
        return PaperEndpoints.Pdf(http, RequirementSheetPaper.Draw(SheetPaper.Wall(club, found, sheet), size), $"wall-{found.Test.Date.Iso()}-{Plain(chosen.Key)}.pdf");
    }

    private static IResult ParentsPage(OpenClub club, TestReckoning reckoning, HttpContext http, string? test, string? child, string? paper)
    {
        var ask = new PaperAsk(Test: test, Child: child, Paper: paper);
        if (One(club, reckoning, test, child, out var error) is not { } one) return PaperEndpoints.Again(ask, error!);
        if (PaperEndpoints.Size(club, paper) is not { } size) return PaperEndpoints.Again(ask, PaperEndpoints.NoSuchPaper("one-paper"));
        return Told(http, TellParents.Of(club, one.Test, one.List, one.Child).ToPaper(club.Today), size, one.Test.Test.Date);
    }

    private static IResult Kept(OpenClub club, HttpContext http, Guid id, string? paper)
    {
        if (KeptAnswerStore.Find(club.Db, id) is not { } held || PaperEndpoints.Size(club, paper) is not { } size) return Results.NotFound();
        return KeptPaper.ReadPage(held) is { } page
            ? Told(http, page.ToPaper(club.Clock.DayOf(held.MadeAt)), size, page.TestOn)
            : KeptPaper.ReadSheet(held) is { } sheet
                ? PaperEndpoints.Pdf(http, RequirementSheetPaper.Draw(sheet, size), $"sheet-{sheet.Sheet.TestOn.Iso()}.pdf")
                : Results.NotFound();
    }

    /// <summary>One child's sheet as the paper shows it.</summary>
    internal static RequirementSheetContent SheetOf(OpenClub club, PaperTest test, TestList list, TestChild child)
    {
        // Told apart from every child of the register, so that a sheet that lies about is nobody else's.
        var name = PaperName.Of(club.Book, test.Programme, list.Children.Select(c => c.Person.Id)).First(n => n.PersonId == child.Person.Id);
        return SheetPaper.Child(club, test, (child.Edition ?? list.Edition)!.Edition, child.Sheet!, name.Second is null ? name.First : $"{name.First} {name.Second}", child.Answer.Lines, child.WhichList);
    }

    /// <summary>One child at one test; the error names the field where there is none.</summary>
    internal static (PaperTest Test, TestList List, TestChild Child)? One(OpenClub club, TestReckoning reckoning, string? test, string? child, out FieldError? error)
    {
        (var found, error) = PaperTest.Read(club, test, "one-test");
        if (found is null) return null;
        if (!Guid.TryParse(child, out var id))
        {
            error = new FieldError("child", "Choose the child.");
            return null;
        }

        var list = reckoning.Of(club, found.Test);
        if (list.Children.FirstOrDefault(c => c.Person.Id == id && c.Sheet is not null) is { } one) return (found, list, one);
        error = list.AtTheTop.FirstOrDefault(p => p.Id == id) is { } top
            ? new FieldError("child", $"{top.CallName} wears the highest rank of the ladder, so there is nothing to be tested for.")
            : new FieldError("child", $"That child is not on the register of {found.Programme.Name} at the test on {found.Test.Date.Full()}. Choose one who is, or another test.");
        return null;
    }

    private static IResult Told(HttpContext http, ParentsPageContent page, PaperSize size, DateOnly test) =>
        PaperEndpoints.Pdf(http, ParentsPagePaper.Draw(page, size), $"parents-page-{test.Iso()}.pdf");

    // A key may hold letters that a file's name should not.
    private static string Plain(string key) => string.Concat(key.Where(c => char.IsAsciiLetterOrDigit(c) || c == '-'));
}
