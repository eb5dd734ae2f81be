namespace Keikocho.App.Shared.Problems;

/// <summary>What went wrong, in words for whoever sits before the screen.</summary>
/// <param name="Status">The HTTP status.</param>
/// <param name="Title">What happened, without a full stop.</param>
/// <param name="Text">What to do now.</param>
/// <param name="Stale">Whether a form was refused because its page is too old.</param>
public sealed record Problem(int Status, string Title, string Text, bool Stale = false)
{
    /// <summary>The words for an HTTP status.</summary>
    /// <param name="status">400 to 599.</param>
    /// <param name="stale">Whether a form was refused because its page is too old.</param>
    public static Problem ForStatus(int status, bool stale) => (status, stale) switch
    {
        (400, true) => new(400, "This page is old", "Nothing was stored. Load the page again, then do it once more.", Stale: true),
        (400, _) => new(400, "That could not be read", "Nothing was stored. Go back, load the page again and try once more."),
        (403, _) => new(403, "This page is not for this device", "Ask an instructor to open it on the laptop."),
        (404, _) => new(404, "There is no such page", "The address may be mistyped, or what it showed has been taken out."),
        (405, _) => new(405, "This address only takes what a form sends", "Open the page from the contents instead."),
        (413, _) => new(413, "That is too large", "Nothing was stored. Send a smaller file or fewer lines at once."),
        (415, _) => new(415, "That is not in a form that can be read here", "Nothing was stored. Use the form on the page."),
        ( >= 500, _) => new(status, "Something went wrong here", "What was stored before is safe. Go back and try again; if it happens again, start Keikocho anew."),
        _ => new(status, "That did not work", "Nothing was stored. Go back, load the page again and try once more."),
    };

    /// <summary>A refusal with its own sentence.</summary>
    public static Problem ForRefusal(string sentence) => new(StatusCodes.Status409Conflict, "That cannot be done", sentence);

    /// <summary>Something nobody expected.</summary>
    /// <param name="number">The number under which the details stand in the program's own window.</param>
    public static Problem ForSurprise(string number) => new(
        StatusCodes.Status500InternalServerError, "Something went wrong here",
        $"What was stored before is safe. Go back and try again. The details stand in the window where Keikocho runs, under number {number}.");
}
