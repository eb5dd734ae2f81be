using Keikocho.App.Club;
using Keikocho.App.Papers;
using Keikocho.App.Shared;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Paper.Knocks;
using Keikocho.Store.Safety;

namespace Keikocho.App.Knocks;

/// <summary>Hands out the slip for the family and the accident record for the file; their file names hold days, never a name.</summary>
public static class KnockPapers
{
    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Teaching, Device.Laptop);
        app.MapGet(KnockAddress.SlipRoute, Slip).WithMetadata(seen);
        app.MapGet(KnockAddress.RecordRoute, Record).WithMetadata(seen);
    }

    private static IResult Slip(OpenClub club, HttpContext http, Guid id, string? paper)
    {
        if (KnockView.Of(club, id) is not { Held.Counts: true } view || PaperEndpoints.Size(club, paper) is not { } size) return Results.NotFound();
        return PaperEndpoints.Pdf(http, KnockSlipPaper.Draw(Content(club, view), size), $"knock-slip-{view.Held.On.Iso()}.pdf");
    }

    private static IResult Record(OpenClub club, HttpContext http, Guid id, string? paper)
    {
        if (KnockView.Of(club, id) is not { } view || PaperEndpoints.Size(club, paper) is not { } size) return Results.NotFound();
        var content = new AccidentRecordContent(
            club.Book.Club.Name, view.Person.FullName, club.Today, view.Held.On, view.When, view.Lesson is { } lesson ? club.Book.HallOf(lesson)?.Name : null, view.Activity, view.MarkedBy,
            [.. view.Lines.Select(l => new AccidentRecordLine(l.Written, l.By, l.Says, l.Words))], PaperTest.SpeakTo(club));
        return PaperEndpoints.Pdf(http, AccidentRecordPaper.Draw(content, size), $"accident-record-{view.Held.On.Iso()}.pdf");
    }

    private static KnockSlipContent Content(OpenClub club, KnockView view)
    {
        var rule = ClubRules.Knock(club.Book, club.Today);
        // Before a first day without symptoms is known: the earliest that there can be, as if none was ever seen.
        var best = new HeadKnockSnapshot(view.Held.On, view.Held.On, [view.Held.On], [], [], [], null, null, [], [], rule);
        IReadOnlyList<string> Of(params KnockLine[] kinds) => [.. view.Held.Lines.Where(l => kinds.Contains(l.Kind)).Select(l => l.Words).OfType<string>()];
        return new KnockSlipContent(
            club.Book.Club.Name, view.Person.FullName, club.Today, view.Held.On, view.When, view.Activity, Of(KnockLine.Seen), Of(KnockLine.Done), WatchFor.Signs,
            Number(club), view.Answer?.FallsAndContact ?? HeadKnock.Reckon(best).FallsAndContact!.Value, view.Answer?.FreeFrom,
            rule.Holding().Select(p => p.SymptomFreeDays).Append(rule.SymptomFreeDays).Max(), PaperTest.SpeakTo(club));
    }

    /// <summary>The emergency number as the club has set it.</summary>
    internal static string Number(OpenClub club) => FloorAndCareRules.EmergencyNumber(club.Book, club.Today);
}
