using Keikocho.App.Club;
using Keikocho.App.Papers;
using Keikocho.App.PromotionTests;
using Keikocho.App.Shared;
using Keikocho.Core.Kernel;
using Keikocho.Core.Readiness;
using Keikocho.Store.Promotion;

namespace Keikocho.App.ParentsPages;

/// <summary>Keeps a parent's page as it is told, and a sheet as it is printed.</summary>
public static class KeepPosts
{
    // The sheet's own sum has no version of its own on record yet; what was kept says which form it has.
    private const string SheetVersion = "sheet 1";

    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Teaching, Device.Laptop);
        app.MapPost(ParentsPageAddress.KeepRoute, KeepAsync).WithMetadata(seen);
        app.MapPost(ParentsPageAddress.KeepSheetRoute, KeepSheetAsync).WithMetadata(seen);
    }

    private static async Task<IResult> KeepAsync(Guid id, OpenClub club, TestReckoning reckoning, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        if (Asked(id, club, reckoning, sent, out var instead) is not { } one) return instead!;
        var question = TellParents.Question(club, one.Test, one.List, one.Child);
        var told = TellParents.Of(club, one.List, one.Child, question);
        var asked = new NewKeptAnswer(Command(club, sent), KeptAnswerStore.ParentsPage, id, SumJson.Write(question), ParentsPage.SumVersion, KeptPaper.Write(told));
        var kept = await club.House.Kept.KeepAsync(asked, club.Acting!.Id, club.Device, cancel);
        return Redirects.SeeOther($"{ParentsPageAddress.Of(id, one.Test.Test.Id)}#kept", kept switch
        {
            null => Gone,
            { } other when other != asked.Id => new FlashMessage("It is kept already.", "Nothing has changed since it was told."),
            _ => new FlashMessage($"Kept as told to the family of {told.Child}.", "It can be read and printed again just so."),
        });
    }

    private static async Task<IResult> KeepSheetAsync(Guid id, OpenClub club, TestReckoning reckoning, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        if (Asked(id, club, reckoning, sent, out var instead) is not { } one) return instead!;
        var content = SheetEndpoints.SheetOf(club, one.Test, one.List, one.Child);
        var answer = KeptPaper.Write(content);
        var asked = new NewKeptAnswer(Command(club, sent), KeptAnswerStore.Sheet, id, answer, SheetVersion, answer);
        return await club.House.Kept.KeepAsync(asked, club.Acting!.Id, club.Device, cancel) is { } kept
            ? Redirects.SeeOther(PapersAddress.KeptOf(kept))
            : Redirects.SeeOther(ParentsPageAddress.Of(id), Gone);
    }

    private static FlashMessage Gone => new("Nothing was kept.", "There is nothing to tell of that child and that test any more. This is how it stands now.", NeedsALook: true);

    private static (PaperTest Test, TestList List, TestChild Child)? Asked(Guid id, OpenClub club, TestReckoning reckoning, SentForm sent, out IResult? instead)
    {
        instead = null;
        if (club.Book.Person(id) is not { IsErased: false })
        {
            instead = Results.NotFound();
            return null;
        }

        if (club.Acting is null)
        {
            instead = Redirects.SeeOther(ActingAddress.From(ParentsPageAddress.Of(id)));
            return null;
        }

        if (sent.Id("test") is { } test && SheetEndpoints.One(club, reckoning, test.ToString("D"), id.ToString("D"), out _) is { } one) return one;
        instead = Redirects.SeeOther(ParentsPageAddress.Of(id), Gone);
        return null;
    }

    private static Guid Command(OpenClub club, SentForm sent) => sent.Id("command") ?? Guid.CreateVersion7(club.Clock.Now);
}
