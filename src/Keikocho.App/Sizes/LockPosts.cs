using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.Paper;
using Keikocho.Paper.Keys;
using Keikocho.Store.Club;
using Keikocho.Store.Sealing;

namespace Keikocho.App.Sizes;

/// <summary>Makes, opens, shuts the club's lock, and changes its passphrase. Nothing that was typed is ever sent back.</summary>
public static class LockPosts
{
    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Instructor, Device.Laptop);
        app.MapPost(SizesAddress.Make, MakeAsync).WithMetadata(seen);
        app.MapPost(SizesAddress.KeyPaper, KeyPaper).WithMetadata(seen);
        app.MapPost(SizesAddress.Open, OpenAsync).WithMetadata(seen);
        app.MapPost(SizesAddress.Shut, Shut).WithMetadata(seen);
        app.MapPost(SizesAddress.Change, ChangeAsync).WithMetadata(seen);
    }

    private static async Task<IResult> MakeAsync(HttpContext http, OpenClub club, CancellationToken cancel)
    {
        var form = await http.Request.ReadFormAsync(cancel);
        var passphrase = form["passphrase"].ToString();
        if (Wrong(passphrase, form["again"].ToString()) is { } wrong) return Refuse(wrong);
        var made = await club.House.Lock.MakeAsync(passphrase, club.Acting?.Id, club.Device, cancel);
        return made.Outcome switch
        {
            LockOutcome.Done => OnePage.Of<RecoveryPaper>(new Dictionary<string, object?> { [nameof(RecoveryPaper.Key)] = made.RecoveryKey }, StatusCodes.Status200OK),
            LockOutcome.TooSoon => Refuse(Waits("passphrase", made, club)),
            _ => Redirects.SeeOther(SizesAddress.Lock, new FlashMessage("Nothing was changed.", "The club has a lock already. Open it with its passphrase.", NeedsALook: true)),
        };
    }

    // The key comes back from the page that shows it: the program has it nowhere else.
    private static IResult KeyPaper(HttpContext http, OpenClub club, IFormCollection fields)
    {
        var key = fields["key"].ToString();
        if (RecoveryKey.Read(key) is null) return Results.BadRequest();
        var size = club.Book.Club.Paper == PaperChoice.Letter ? PaperSize.Letter : PaperSize.A4;
        http.Response.Headers.ContentDisposition = "inline; filename=\"recovery-key.pdf\"";
        return Results.Bytes(RecoveryKeyPaper.Draw(new RecoveryKeyContent(club.Book.Club.Name, key, club.Today), size).Pdf, "application/pdf");
    }

    private static async Task<IResult> OpenAsync(HttpContext http, OpenClub club, CancellationToken cancel)
    {
        var form = await http.Request.ReadFormAsync(cancel);
        var opened = await club.House.Lock.OpenAsync(form["typed"].ToString(), cancel);
        return opened.Outcome switch
        {
            LockOutcome.Done => Redirects.SeeOther(SizesAddress.Lock, new FlashMessage("The lock is open.", "Shut it when you are done, or close the program.")),
            LockOutcome.Wrong => Refuse(Is("typed", opened, club)),
            LockOutcome.TooSoon => Refuse(Waits("typed", opened, club)),
            _ => Redirects.SeeOther(SizesAddress.Lock, new FlashMessage("Nothing was opened.", "The club has no lock yet. Set a passphrase first.", NeedsALook: true)),
        };
    }

    private static IResult Shut(OpenClub club)
    {
        club.House.Lock.Shut();
        return Redirects.SeeOther(SizesAddress.Lock, new FlashMessage("The lock is shut.", "Pairs go by age and experience until it is opened."));
    }

    private static async Task<IResult> ChangeAsync(HttpContext http, OpenClub club, CancellationToken cancel)
    {
        var form = await http.Request.ReadFormAsync(cancel);
        var passphrase = form["passphrase"].ToString();
        if (Wrong(passphrase, form["again"].ToString()) is { } wrong) return Refuse(wrong);
        var changed = await club.House.Lock.ChangeAsync(form["old"].ToString(), passphrase, club.Acting?.Id, club.Device, cancel);
        return changed.Outcome switch
        {
            LockOutcome.Done => Redirects.SeeOther(SizesAddress.Lock, new FlashMessage("The passphrase is changed, and the lock is open.", "Copies of the file made before still open with the old one.")),
            LockOutcome.Wrong => Refuse(Is("old", changed, club)),
            LockOutcome.TooSoon => Refuse(Waits("old", changed, club)),
            _ => Redirects.SeeOther(SizesAddress.Lock, new FlashMessage("Nothing was changed.", "The club has no lock yet. Set a passphrase first.", NeedsALook: true)),
        };
    }

    private static FieldError? Wrong(string passphrase, string again) =>
        Passphrases.Refusal(passphrase) is { } refusal ? new("passphrase", refusal)
        : passphrase.Trim() != again.Trim() ? new("again", "The two are not the same. Type the passphrase twice.")
        : null;

    private static FieldError Is(string field, LockAnswer answer, OpenClub club) =>
        new(field, $"That is not the passphrase, and not the recovery key. Type it again{From(answer, club)}.");

    private static FieldError Waits(string field, LockAnswer answer, OpenClub club) =>
        new(field, answer.NextAt is null ? "Another attempt is under way. Try again in a moment." : $"Too soon after a wrong one. Type it again{From(answer, club)}.");

    private static string From(LockAnswer answer, OpenClub club) => answer.NextAt is { } at && at > club.Clock.Now
        ? $", in {Counted.Of((int)Math.Ceiling((at - club.Clock.Now).TotalSeconds), "second")}"
        : "";

    private static IResult Refuse(FieldError error) => OnePage.Of<LockBody>(new Dictionary<string, object?> { [nameof(LockBody.Errors)] = new[] { error } });
}
