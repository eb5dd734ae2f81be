using Keikocho.App.Shared;

namespace Keikocho.App.Club.About;

/// <summary>Takes where the ambulance goes, and whom to ring about a child's welfare.</summary>
internal static class EmergencyPosts
{
    /// <summary>Most characters of a line.</summary>
    public const int Longest = 200;

    /// <summary>Most characters of whom to ring.</summary>
    public const int LongestWelfare = 600;

    /// <summary>What the fields of one hall begin with.</summary>
    public static string Key(Guid hall) => $"place-{hall:N}-";

    public static async Task<IResult> PlaceAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        if (sent.Id("hall") is not { } id || club.Book.Halls.All(h => h.Id != id)) return SentForm.Gone("emergency-part");
        var key = Key(id);
        var (address, entrance, hospital) = (Line(sent, key + "address"), Line(sent, key + "entrance"), Line(sent, key + "hospital"));
        if (!sent.IsTaken) return sent.Again();
        return await club.House.Club.ChangePlaceAsync(id, address, entrance, hospital, club.Acting?.Id, club.Device, cancel)
            ? Redirects.SeeOther(ClubAddress.At("emergency-part"), new FlashMessage("Saved.", "Print the red folder anew, and shred the old one."))
            : SentForm.Gone("emergency-part");
    }

    public static async Task<IResult> WelfareAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var text = sent.Text("welfare").ReplaceLineEndings("\n");
        if (text.Length > LongestWelfare) sent.Refuse("welfare", $"That is longer than {LongestWelfare} characters. Keep the numbers that are rung first.");
        if (!sent.IsTaken) return sent.Again();
        await club.House.Club.ChangeWelfareAsync(text, club.Acting?.Id, club.Device, cancel);
        return Redirects.SeeOther(ClubAddress.At("emergency-part"), new FlashMessage("Saved.", "Print the red folder anew, and shred the old one."));
    }

    private static string? Line(SentForm sent, string id)
    {
        var text = sent.Text(id);
        if (text.Length > Longest) sent.Refuse(id, $"That is longer than {Longest} characters. Write what is said on the telephone.");
        return text.Length == 0 ? null : text;
    }
}
