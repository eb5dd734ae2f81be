using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Kernel;
using Keikocho.Store.Safety;

namespace Keikocho.App.Knocks;

/// <summary>What the forms about knocks post.</summary>
public static class KnockPosts
{
    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Teaching, Device.Laptop);
        app.MapPost(KnockAddress.Mark, MarkAsync).WithMetadata(seen);
        app.MapPost($"{KnockAddress.OneRoute}/told", ToldAsync).WithMetadata(seen);
        app.MapPost($"{KnockAddress.OneRoute}/line", LineAsync).WithMetadata(seen);
        app.MapPost($"{KnockAddress.OneRoute}/free", FreeAsync).WithMetadata(seen);
        app.MapPost($"{KnockAddress.OneRoute}/again", AgainAsync).WithMetadata(seen);
        app.MapPost($"{KnockAddress.OneRoute}/advice", AdviceAsync).WithMetadata(seen);
        app.MapPost($"{KnockAddress.OneRoute}/wrong", WrongAsync).WithMetadata(seen);
        app.MapPost($"{KnockAddress.OneRoute}/ease", EaseAsync).WithMetadata(seen);
    }

    private static async Task<IResult> MarkAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        if (sent.Id("lesson") is not { } asked || club.Book.Lesson(asked) is not { } lesson || sent.Id("child") is not { } child) return Gone();
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(KnockAddress.OfLesson(lesson.Id)));
        var activity = int.TryParse(sent.Text("activity"), out var number) && Enum.IsDefined((KnockActivity)number) ? (KnockActivity)number : KnockActivity.NotSaid;
        // The page holds one id for all its buttons.
        var id = AnotherId.Of(sent.Id("command") ?? Guid.CreateVersion7(club.Clock.Now), $"{child:D} knock");
        var outcome = await club.House.Knocks.MarkAsync(new NewKnock(id, lesson.Id, child, activity), club.Today, acting.Id, club.Device, cancel);
        var name = club.Book.Person(child)?.CallName;
        return outcome switch
        {
            KnockOutcome.Stored => Redirects.SeeOther(KnockAddress.Of(id), new FlashMessage($"{name} is off for tonight.", "First aid first. Then hand the slip over before they go home.")),
            KnockOutcome.AlreadyStored => Redirects.SeeOther(KnockAddress.Of(id), new FlashMessage("It is entered already.")),
            KnockOutcome.NotSaid => Redirects.SeeOther(KnockAddress.OfLesson(lesson.Id), new FlashMessage("Nothing was stored.", "That lesson is still to come.", NeedsALook: true)),
            _ => Gone(),
        };
    }

    private static Task<IResult> ToldAsync(Guid id, OpenClub club, IFormCollection fields, CancellationToken cancel) => AddAsync(id, club, fields, "slip", sent =>
    {
        var whom = sent.Text("toldWhom");
        if (whom.Length == 0) sent.Refuse("toldWhom", "Write who took the slip, or who was told.");
        return new Said(sent.Text("how") == "phone" ? KnockLine.ToldByPhone : KnockLine.HandedOver, null, whom, sent.Text("how") == "phone" ? "Told by phone." : "The slip is handed over.");
    }, cancel);

    private static Task<IResult> LineAsync(Guid id, OpenClub club, IFormCollection fields, CancellationToken cancel) => AddAsync(id, club, fields, "record", sent =>
    {
        var words = sent.Text("lineWords");
        if (words.Length == 0) sent.Refuse("lineWords", "Write what the line says.");
        else if (words.Length > KnockStore.LongestLine) sent.Refuse("lineWords", $"That is longer than {KnockStore.LongestLine} characters. Write two lines.");
        KnockLine? kind = sent.Text("lineKind") switch { "seen" => KnockLine.Seen, "done" => KnockLine.Done, "witness" => KnockLine.Witness, "added" => KnockLine.Added, _ => null };
        if (kind is null) sent.Refuse("lineKind", "Choose what the line says.");
        return new Said(kind ?? KnockLine.Added, null, words, "Added below.");
    }, cancel);

    private static Task<IResult> FreeAsync(Guid id, OpenClub club, IFormCollection fields, CancellationToken cancel) =>
        AddAsync(id, club, fields, "days", sent => new Said(KnockLine.FreeFrom, sent.Day("freeOn", "Write the first day without any symptom."), null, "Recorded. The days are counted from it."), cancel, "freeOn");

    private static Task<IResult> AgainAsync(Guid id, OpenClub club, IFormCollection fields, CancellationToken cancel) =>
        AddAsync(id, club, fields, "days", sent => new Said(KnockLine.SymptomsAgain, sent.Day("againOn", "Write the day on which symptoms were there again."), null, "Recorded. Everything is shut; see a doctor."), cancel, "againOn");

    private static Task<IResult> AdviceAsync(Guid id, OpenClub club, IFormCollection fields, CancellationToken cancel) => AddAsync(id, club, fields, "days", sent =>
    {
        var on = sent.Day("adviceOn", "Write the date on the advice.");
        var whose = sent.Name("adviceWhose", "Write whose advice it is.");
        return new Said(KnockLine.Advice, on, whose, "Recorded. It opens nothing by itself.");
    }, cancel, "adviceOn");

    private static Task<IResult> WrongAsync(Guid id, OpenClub club, IFormCollection fields, CancellationToken cancel) => AddAsync(id, club, fields, "record", sent =>
    {
        var why = sent.Text("wrongWhy");
        if (why.Length == 0) sent.Refuse("wrongWhy", "Write how you know that it was not this child.");
        return new Said(KnockLine.WrongChild, null, why, "The record stays and counts no more. The stand-down still stands: lift it on the child’s page.");
    }, cancel);

    private sealed record Said(KnockLine Kind, DateOnly? On, string? Words, string Stored);

    private static async Task<IResult> AddAsync(Guid id, OpenClub club, IFormCollection fields, string part, Func<SentForm, Said> read, CancellationToken cancel, string? dayField = null)
    {
        if (KnockView.Of(club, id) is not { } view) return Results.NotFound();
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(KnockAddress.Of(id)));
        var sent = new SentForm(fields);
        var said = read(sent);
        if (dayField is not null && said.On is { } day && (day < view.Held.On || day > club.Today))
            sent.Refuse(dayField, $"{day.Full()} is not between the knock of {view.Held.On.Full()} and today. Check the day.");
        if (!sent.IsTaken) return Again(view, sent);
        var line = new NewKnockLine(AnotherId.Of(sent.Id("command") ?? Guid.CreateVersion7(club.Clock.Now), $"{id:D} {said.Kind}"), id, said.Kind, said.On, said.Words);
        var outcome = await club.House.Knocks.AddAsync(line, club.Today, acting.Id, club.Device, cancel);
        return Redirects.SeeOther($"{KnockAddress.Of(id)}#{part}", outcome switch
        {
            KnockOutcome.Stored => new FlashMessage(said.Stored),
            KnockOutcome.AlreadyStored => new FlashMessage("Nothing was changed.", "It stands in the record already."),
            KnockOutcome.NoAdult => new FlashMessage(
                "Nothing was changed.", said.Kind == KnockLine.WrongChild ? "Only an instructor says that." : "Only an adult of 18 or over with a duty in the club records that.", NeedsALook: true),
            _ => new FlashMessage("Nothing was changed.", "A day or the words do not fit. Look at the record and try once more.", NeedsALook: true),
        });
    }

    private static async Task<IResult> EaseAsync(Guid id, OpenClub club, CancellationToken cancel)
    {
        if (KnockView.Of(club, id) is not { } view) return Results.NotFound();
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(KnockAddress.Of(id)));
        var outcome = await club.House.Knocks.EaseAsync(id, club.Today, acting.Id, club.Device, cancel);
        return Redirects.SeeOther($"{KnockAddress.Of(id)}#dates", outcome switch
        {
            KnockOutcome.Stored => new FlashMessage($"{view.Person.CallName}: no contact, in place of off the mat.", "Falls and contact stay shut. Any symptom stops everything."),
            KnockOutcome.NoAdult => new FlashMessage("Nothing was changed.", "Only an adult of 18 or over with a duty in the club does this.", NeedsALook: true),
            _ => new FlashMessage("Nothing was changed.", "The earliest day of drills has not come, or advice is missing.", NeedsALook: true),
        });
    }

    private static IResult Again(KnockView view, SentForm sent) => OnePage.Of<KnockBody>(new Dictionary<string, object?>
    {
        [nameof(KnockBody.View)] = view,
        [nameof(KnockBody.Refused)] = sent.Kept(),
    });

    private static IResult Gone() =>
        Redirects.SeeOther("/tonight", new FlashMessage("Nothing was stored.", "That lesson or child is not in this club’s file any more.", NeedsALook: true));
}
