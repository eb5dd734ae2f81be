using Keikocho.App.Shared;
using Keikocho.Store.Club;
using Keikocho.Store.Evening;

namespace Keikocho.App.Club.About;

/// <summary>Takes what stands at a mat, or what stands there no more.</summary>
internal static class ObstaclePosts
{
    private const string Part = "obstacles-part";
    private const int MostCm = 10_000;
    private const int MostAtOneMat = 40;

    /// <summary>What the fields of one hall begin with.</summary>
    public static string Key(Guid hall) => $"obstacle-{hall:N}-";

    public static async Task<IResult> AddAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        if (sent.Id("hall") is not { } id || club.Book.Halls.FirstOrDefault(h => h.Id == id) is not { } hall || sent.Id("obstacle") is not { } obstacle) return SentForm.Gone(Part);
        var key = Key(id);
        var units = club.Book.Club.Units;
        var name = sent.Name(key + "name", "It has no name. “Pillar” will do.");
        var along = Place(sent, key + "along", units, hall.MatLengthCm);
        var across = Place(sent, key + "across", units, hall.MatWidthCm);
        var length = Size(sent, key + "length", units);
        var width = Size(sent, key + "width", units);
        if (ObstacleReader.Of(club.Reading, id).Count(o => o.Id != obstacle) >= MostAtOneMat)
            sent.Refuse(key + "name", $"{hall.Name} has {MostAtOneMat} of them already. Remove one first.");
        if (!sent.IsTaken) return sent.Again();
        var asked = new NewObstacle(obstacle, id, name, along!.Value, across!.Value, length!.Value, width!.Value);
        return await club.House.Obstacles.AddAsync(asked, club.Acting?.Id, club.Device, cancel)
            ? Redirects.SeeOther(ClubAddress.At(Part), new FlashMessage($"{name} is on the plan of {hall.Name}."))
            : SentForm.Gone(Part);
    }

    public static async Task<IResult> RemoveAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        if (new SentForm(fields).Id("obstacle") is not { } id || ObstacleReader.Of(club.Reading, null).FirstOrDefault(o => o.Id == id) is not { } row) return SentForm.Gone(Part);
        return await club.House.Obstacles.RemoveAsync(id, club.Acting?.Id, club.Device, cancel)
            ? Redirects.SeeOther(ClubAddress.At(Part), new FlashMessage($"{row.Name} is off the plan."))
            : SentForm.Gone(Part);
    }

    /// <summary>Where it begins; below nothing for what stands before or beside the mat, never beyond its other side.</summary>
    private static int? Place(SentForm sent, string id, UnitChoice units, int? matCm)
    {
        var text = sent.Text(id);
        var before = text.StartsWith('-') || text.StartsWith('−');
        var beyond = (matCm ?? MostCm) + 500;
        if (text.Length > 0 && Lengths.Read(before ? text[1..].Trim() : text, units) is { } cm && cm <= (before ? MostCm : beyond)) return before ? -cm : cm;
        sent.Refuse(id, $"Type how far from the corner it begins, from -{Lengths.Text(MostCm, units)} to {Lengths.Text(beyond, units)} {Lengths.Word(units)}; 0 at the corner.");
        return null;
    }

    private static int? Size(SentForm sent, string id, UnitChoice units)
    {
        if (Lengths.Read(sent.Text(id), units) is { } cm && cm is > 0 and <= MostCm) return cm;
        sent.Refuse(id, $"Type a size above 0 and up to {Lengths.Text(MostCm, units)} {Lengths.Word(units)}.");
        return null;
    }
}
