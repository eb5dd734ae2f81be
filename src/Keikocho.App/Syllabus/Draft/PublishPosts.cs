using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.Core.Kernel;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Syllabus.Draft;

/// <summary>Takes undo, throwing away, and publication of a draft.</summary>
internal static class PublishPosts
{
    public static async Task<IResult> UndoAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var programme = DraftDesk.Chosen(club, sent.Id("programme"));
        var back = SyllabusAddress.Of(SyllabusAddress.Draft, programme.Id, "steps-part");
        if (club.Acting is not { } acting) return SyllabusPosts.NobodyActs(back);
        if (sent.Id("draft") is not { } draft) return SyllabusPosts.Gone(back);
        return await club.House.Syllabus.UndoAsync(draft, sent.WholeIfAny("step", 1, int.MaxValue, "Step") ?? 0, acting.Id, club.Device, cancel) switch
        {
            StepOutcome.Stored => Redirects.SeeOther(back, new FlashMessage("The last step was taken back.")),
            StepOutcome.Stale => Redirects.SeeOther(back, new FlashMessage("Nothing was taken back.", "The draft was changed on another page since this one was shown. This is how it stands now.", NeedsALook: true)),
            StepOutcome.FirstStep => Redirects.SeeOther(back, new FlashMessage("Nothing was taken back.", "This is how the draft began. Throw it away to begin another.")),
            _ => SyllabusPosts.Gone(back),
        };
    }

    public static async Task<IResult> ThrowAwayAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var programme = DraftDesk.Chosen(club, sent.Id("programme"));
        var back = SyllabusAddress.Of(SyllabusAddress.Page, programme.Id);
        if (club.Acting is not { } acting) return SyllabusPosts.NobodyActs(back);
        return sent.Id("draft") is { } draft && await club.House.Syllabus.ThrowAwayAsync(draft, acting.Id, club.Device, cancel) == StepOutcome.Stored
            ? Redirects.SeeOther(back, new FlashMessage("The draft was thrown away.", "What was published stays as it is."))
            : SyllabusPosts.Gone(back);
    }

    public static async Task<IResult> PublishAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var desk = DraftDesk.Of(club, sent.Id("programme"));
        var page = SyllabusAddress.Of(SyllabusAddress.Page, (desk?.Programme ?? club.Book.Programmes[0]).Id);
        if (desk is null || desk.Draft.Id != sent.Id("draft")) return SyllabusPosts.Gone(page);
        if (club.Acting is not { } acting) return SyllabusPosts.NobodyActs(SyllabusAddress.Of(SyllabusAddress.Draft, desk.Programme.Id));
        var name = sent.Name("publish-name", "The edition has no name. “edition 1” will do.");
        var from = sent.Day("publish-from", "Choose the day from which it holds.");
        var changeover = sent.DayIfAny("publish-changeover");
        if (sent.IsTaken && changeover <= from) sent.Refuse("publish-changeover", $"{changeover!.Value.Full()} is not after the day from which it holds; choose a later day, or leave it empty.");
        if (!sent.IsTaken) return RankPosts.DraftAgain(desk, sent.Kept());
        switch (await club.House.Syllabus.PublishAsync(
            desk.Draft.Id, sent.WholeIfAny("step", 1, int.MaxValue, "Step") ?? 0, name, from!.Value, club.Today, acting.Id, club.Device, cancel, changeover))
        {
            case PublishOutcome.Published { Kept: var kept }:
                return Redirects.SeeOther(page, new FlashMessage(
                    $"{AskWords.Capital(name)} is published. It holds from {from.Value.Full()} on.{(changeover is { } until ? $" Tests before {until.Full()} go by the list that a child is nearer to." : "")}",
                    kept.Count == 0 ? "" : $"In the history of those who wore them stay: {string.Join(", ", kept.Take(10))}."));
            case PublishOutcome.Refused { Sentences: var sentences }:
                foreach (var sentence in sentences) sent.Refuse("publish-from", sentence);
                return RankPosts.DraftAgain(desk, sent.Kept());
            case PublishOutcome.Stale:
                return Redirects.SeeOther(SyllabusAddress.Of(SyllabusAddress.Draft, desk.Programme.Id), new FlashMessage(
                    "Not published.", "The draft was changed on another page since this one was shown. Look at it as it is now, then publish.", NeedsALook: true));
            default: return SyllabusPosts.Gone(page);
        }
    }
}
