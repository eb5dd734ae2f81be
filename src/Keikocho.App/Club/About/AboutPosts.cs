using Keikocho.App.Shared;
using Keikocho.Store.Club;

namespace Keikocho.App.Club.About;

/// <summary>Takes name, zone, units and usual paper.</summary>
internal static class AboutPosts
{
    public static async Task<IResult> ChangeAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var name = sent.Name("club-name", "The club has no name. Type it as it stands on your papers.");
        var zone = sent.Text("club-zone");
        if (!ClubClock.Knows(zone)) sent.Refuse("club-zone", "Choose the time zone of the hall.");
        UnitChoice? units = sent.Text("club-units") switch { "metric" => UnitChoice.Metric, "imperial" => UnitChoice.Imperial, _ => null };
        if (units is null) sent.Refuse("club-units", "Choose metres or feet.");
        PaperChoice? paper = sent.Text("club-paper") switch { "a4" => PaperChoice.A4, "letter" => PaperChoice.Letter, _ => null };
        if (paper is null) sent.Refuse("club-paper", "Choose A4 or US Letter.");
        if (!sent.IsTaken) return sent.Again();

        var changed = await club.House.Club.ChangeAsync(name, zone, paper!.Value, units!.Value, club.Acting?.Id, club.Device, cancel);
        return Redirects.SeeOther(ClubAddress.At("club-part"), new FlashMessage(changed ? "The club is saved." : "Nothing was different."));
    }
}
