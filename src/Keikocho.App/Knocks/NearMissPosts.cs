using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Kernel;
using Keikocho.Store.Safety;

namespace Keikocho.App.Knocks;

/// <summary>Takes a near miss: nobody was hurt, and no child is named.</summary>
public static class NearMissPosts
{
    /// <summary>Adds the endpoint.</summary>
    public static void Map(WebApplication app) => app.MapPost(KnockAddress.NearMiss, EnterAsync).WithMetadata(new SeenByAttribute(Role.Teaching, Device.Laptop));

    private static async Task<IResult> EnterAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var page = sent.Id("lesson") is { } lesson && club.Book.Lesson(lesson) is not null ? KnockAddress.OfLesson(lesson) : KnockAddress.Page;
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(page));
        var on = sent.Day("nearOn", "Write the day.");
        if (on > club.Today) sent.Refuse("nearOn", $"{on.Value.Full()} is still to come. Write the day on which it happened.");
        var at = sent.TimeIfAny("nearAt");
        KnockActivity? activity = int.TryParse(sent.Text("nearActivity"), out var number) && Enum.IsDefined((KnockActivity)number) ? (KnockActivity)number : null;
        if (activity is null) sent.Refuse("nearActivity", "Choose what was going on.");
        var words = sent.Text("nearWords").ReplaceLineEndings("\n");
        if (words.Length == 0) sent.Refuse("nearWords", "Write what happened, without a name.");
        else if (words.Length > NearMissStore.LongestWords) sent.Refuse("nearWords", $"That is longer than {NearMissStore.LongestWords} characters. Write what would have hurt somebody, and what you changed.");
        if (!sent.IsTaken)
        {
            return OnePage.Of<KnocksPage>(new Dictionary<string, object?>
            {
                [nameof(KnocksPage.Refused)] = sent.Kept(),
                [nameof(KnocksPage.Shown)] = sent.Id("lesson"),
            });
        }

        var asked = new NewNearMiss(AnotherId.Of(sent.Id("command") ?? Guid.CreateVersion7(club.Clock.Now), "near miss"), on!.Value, at, activity!.Value, words);
        var outcome = await club.House.NearMisses.EnterAsync(asked, club.Today, acting.Id, club.Device, cancel);
        return Redirects.SeeOther($"{page}#near", outcome switch
        {
            KnockOutcome.Stored => new FlashMessage("The near miss is written down.", "It is counted apart from knocks, by activity."),
            KnockOutcome.AlreadyStored => new FlashMessage("It is entered already."),
            _ => new FlashMessage("Nothing was stored.", "The day or the words do not fit. Look at them and try once more.", NeedsALook: true),
        });
    }
}
