using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Club;
using Keikocho.Store.People;
using Keikocho.Store.Sealing;

namespace Keikocho.App.Sizes;

/// <summary>Takes sizes: all of a form or none of it, and nothing before every slip that is asked about is settled.</summary>
public static class SizesPosts
{
    /// <summary>Adds the endpoint.</summary>
    public static void Map(WebApplication app) =>
        app.MapPost(SizesAddress.Enter, EnterAsync).WithMetadata(new SeenByAttribute(Role.Instructor, Device.Laptop));

    private static async Task<IResult> EnterAsync(HttpContext http, OpenClub club, CancellationToken cancel)
    {
        var form = await http.Request.ReadFormAsync(cancel);
        Guid? Id(string name) => Guid.TryParse(form[name], out var id) ? id : null;
        if (SizesView.Of(club, Id("programme"), Id("child")) is not { } view) return Results.NotFound();
        var page = view.Child is { } child ? SizesAddress.Of(child) : $"{SizesAddress.Page}?programme={view.Programme:D}";
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(page));
        if (club.House.Lock.Now(club.Reading) is not (LockState.Open, { } key)) return Shut(page);

        var errors = new List<FieldError>();
        var typed = form["on"].ToString();
        var on = Typed.Date(typed);
        if (on is null) errors.Add(new("on", "Type the day on which it was taken."));
        else if (on > club.Today) errors.Add(new("on", $"{on.Value.Full()} is still to come. Type the day on which it was taken."));
        else if (on < club.Today.AddYears(-5)) errors.Add(new("on", $"{on.Value.Full()} is more than five years ago. Type the day on which it was taken."));
        var sizes = new List<NewSize>();
        var sent = new Dictionary<Guid, TypedSize>();
        foreach (var line in view.Lines)
        {
            var text = form[SizesForm.Field(line.PersonId)].ToString().Trim();
            if (text.Length == 0) continue;
            // What was looked at again is that very number, not another one typed since.
            var isSure = form[SizesForm.Sure(line.PersonId)].ToString() == text;
            string? ask = null;
            if (Weights.Read(text, view.Units) is not { } grams)
                errors.Add(new(SizesForm.Field(line.PersonId), $"{line.Name}: “{text}” is no size in {Weights.Word(view.Units)}. Type a number such as {(view.Units == UnitChoice.Imperial ? "68.5" : "31.5")}."));
            else if (on is { } day)
            {
                if (!isSure && Question(club, line, grams, text, day, view.Units) is { } question)
                {
                    ask = question;
                    errors.Add(new(SizesForm.Field(line.PersonId), question));
                }

                sizes.Add(new NewSize(line.PersonId, day, grams));
            }

            sent[line.PersonId] = new TypedSize(text, isSure, ask);
        }

        if (errors.Count > 0)
        {
            return OnePage.Of<SizesBody>(new Dictionary<string, object?>
            {
                [nameof(SizesBody.View)] = view,
                [nameof(SizesBody.Errors)] = errors,
                [nameof(SizesBody.Sent)] = new SentSizes(typed, sent),
            });
        }

        if (sizes.Count == 0) return Redirects.SeeOther(page, new FlashMessage("Nothing was changed.", "No size was typed."));
        try
        {
            var stored = await club.House.Sizes.EnterAsync(sizes, key, acting.Id, club.Device, cancel);
            return Redirects.SeeOther(page, new FlashMessage($"Stored: {Counted.Of(stored, "size")}, closed by the club’s lock."));
        }
        catch (ObjectDisposedException)
        {
            return Shut(page);
        }
    }

    /// <summary>What is asked about a typed size; null for nothing. It judges the typing, never the child.</summary>
    private static string? Question(OpenClub club, SizeLine line, int grams, string text, DateOnly day, UnitChoice units)
    {
        if (club.Book.Person(line.PersonId)?.Born is not { } born) return null;
        if (born > day) return $"{line.Name}: {day.Full()} is before the birth date on the child’s page. Look at both.";
        var judged = WeightSlips.Judge(new WeightSnapshot(born, day, grams / 1000m, null, ClubRules.Weights(club.Book, club.Today)));
        if (!judged.Ask) return null;
        var readings = judged.Readings.Select(r => $"{Weights.Text((int)(r.Kilograms * 1000m), units)} {Weights.Sign(units)} ({Slip(r.Slip)})").ToList();
        var perhaps = readings.Count == 0 ? "" : $" Perhaps {string.Join(" or ", readings)}?";
        return $"{line.Name}: {text} {Weights.Sign(units)} is far from what is usual at that age.{perhaps} Type it again, or tick that you looked.";
    }

    private static string Slip(WeightSlip slip) => slip switch
    {
        WeightSlip.PoundsAsKilograms => "pounds typed as kilograms",
        WeightSlip.KilogramsAsPounds => "kilograms typed as pounds",
        WeightSlip.DigitTooMany => "a digit too many",
        WeightSlip.DigitTooFew => "a digit too few",
        _ => throw new ArgumentOutOfRangeException(nameof(slip), slip, "There is no such slip."),
    };

    private static IResult Shut(string page) => Redirects.SeeOther(
        page, new FlashMessage("Not stored.", "The club’s lock is shut, and a size is stored only under it. Open the lock first.", NeedsALook: true));
}
