using System.Globalization;
using Keikocho.App.Shared;
using Keikocho.Store.Club;

namespace Keikocho.App.Club.About;

/// <summary>Takes a hall's name and the measures of its mat.</summary>
internal static class HallPosts
{
    private const int LeastCm = 100;
    private const int MostCm = 10_000;

    /// <summary>What the fields of one hall begin with.</summary>
    public static string Key(Guid hall) => $"hall-{hall:N}-";

    public static async Task<IResult> ChangeAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        if (sent.Id("hall") is not { } id || club.Book.Halls.All(h => h.Id != id)) return SentForm.Gone("hall-part");
        var key = Key(id);
        var units = club.Book.Club.Units;
        var name = sent.Name(key + "name", "The hall has no name. “Hall” will do.");
        var length = Length(sent, key + "length", units, LeastCm);
        var width = Length(sent, key + "width", units, LeastCm);
        var strip = Length(sent, key + "strip", units, 0);
        if (strip is { } clear && length is { } mat && clear >= mat)
            sent.Refuse(key + "strip", TooWide(clear, mat, units));
        if (!sent.IsTaken) return sent.Again();

        return await club.House.Club.ChangeHallAsync(id, name, length, width, strip, club.Acting?.Id, club.Device, cancel)
            ? Redirects.SeeOther(ClubAddress.At("hall-part"), new FlashMessage("The mat is saved."))
            : SentForm.Gone("hall-part");
    }

    private static int? Length(SentForm sent, string id, UnitChoice units, int leastCm)
    {
        var text = sent.Text(id);
        if (text.Length == 0) return null;
        if (Lengths.Read(text, units) is { } cm && cm >= leastCm && cm <= MostCm) return cm;
        var least = leastCm == 0 ? "0" : Lengths.Text(leastCm, units);
        sent.Refuse(id, $"Type a length from {least} to {Lengths.Text(MostCm, units)} {Lengths.Word(units)}, or nothing.");
        return null;
    }

    // A missing decimal point is the usual slip, so a tenth is offered where it fits.
    private static string TooWide(int stripCm, int matCm, UnitChoice units)
    {
        var sign = Lengths.Sign(units);
        var said = string.Create(CultureInfo.InvariantCulture, $"The strip is {Lengths.Text(stripCm, units)} {sign}, the mat is {Lengths.Text(matCm, units)} {sign} long.");
        var tenth = stripCm / 10;
        return tenth > 0 && tenth * 2 < matCm ? $"{said} Did you mean {Lengths.Text(tenth, units)}?" : $"{said} Type a narrower strip.";
    }
}
