using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.App.Syllabus.Draft;
using Keikocho.App.Syllabus.Edits;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Syllabus;

/// <summary>The endpoints of the syllabus: one for each form, and the edition as a text.</summary>
public static class SyllabusPosts
{
    /// <summary>Adds them.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Teaching, Device.Laptop);
        app.MapPost(SyllabusAddress.Begin, BeginPosts.BeginAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.Undo, PublishPosts.UndoAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.ThrowAway, PublishPosts.ThrowAwayAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.Publish, PublishPosts.PublishAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.Text, TextPosts.SaveAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.Names, RankPosts.NamesAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.Ranks, RankPosts.OrderAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.AddRank, RankPosts.AddAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.ChangeRank, RankPosts.ChangeAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.Lines, LinePosts.OrderAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.AddLine, LinePosts.AddAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.ChangeLine, LinePosts.ChangeAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.ChangeItem, ItemPosts.ChangeAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.Units, UnitPosts.OrderAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.AddUnit, UnitPosts.AddAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.Taught, UnitPosts.TaughtAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.SetUnit, TermUnitPosts.SetAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.AddAgeRule, AgeRulePosts.AddAsync).WithMetadata(seen);
        app.MapPost(SyllabusAddress.EndAgeRule, AgeRulePosts.EndAsync).WithMetadata(seen);
        app.MapGet(SyllabusAddress.DownloadRoute, EditionDownload.Read).WithMetadata(seen);
    }

    /// <summary>Somebody must act on the device before anything is written.</summary>
    internal static IResult NobodyActs(string back) => Redirects.SeeOther(ActingAddress.From(back));

    /// <summary>What a form spoke of is not there any more.</summary>
    internal static IResult Gone(string back) => Redirects.SeeOther(
        back, new FlashMessage("Nothing was changed.", "What that form spoke of is not there any more, or it is so already. This is how it stands now.", NeedsALook: true));

    /// <summary>Stores one step of a draft: reads the form, changes the draft as it stands, and says what came of it.</summary>
    /// <param name="club">The club.</param>
    /// <param name="sent">The form; it names programme, draft and the step that was seen.</param>
    /// <param name="back">Where to go afterwards.</param>
    /// <param name="edit">The change; null where there is nothing to change. It may refuse answers of the form.</param>
    /// <param name="again">The page with the refused form.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    internal static async Task<IResult> StepAsync(
        OpenClub club, SentForm sent, Func<Guid, string> back, Func<DraftDesk, Edited?> edit, Func<DraftDesk, RefusedForm, IResult> again, CancellationToken cancel)
    {
        var desk = DraftDesk.Of(club, sent.Id("programme"));
        var programme = desk?.Programme.Id ?? club.Book.Programmes[0].Id;
        if (desk is null || desk.Draft.Id != sent.Id("draft")) return Gone(SyllabusAddress.Of(SyllabusAddress.Page, programme));
        if (club.Acting is not { } acting) return NobodyActs(back(programme));
        var edited = edit(desk);
        if (!sent.IsTaken) return again(desk, sent.Kept());
        if (edited is null) return Gone(back(programme));
        var outcome = await club.House.Syllabus.StepAsync(
            desk.Draft.Id, sent.WholeIfAny("step", 1, int.MaxValue, "Step") ?? 0, edited.Edition, edited.Said, acting.Id, club.Device, cancel);
        return Redirects.SeeOther(back(programme), outcome switch
        {
            StepOutcome.Stored => new FlashMessage(Cut(edited.Said)),
            StepOutcome.TheSame => new FlashMessage("Nothing was changed.", "The draft says so already."),
            StepOutcome.Stale => new FlashMessage("Nothing was changed.", "The draft was changed on another page since this one was shown. This is how it stands now; do it once more.", NeedsALook: true),
            _ => new FlashMessage("Nothing was changed.", "There is no draft any more.", NeedsALook: true),
        });
    }

    private static string Cut(string said) => said.Length <= 300 ? said : said[..300] + "…";
}
