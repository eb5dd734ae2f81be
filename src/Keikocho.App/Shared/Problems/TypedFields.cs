namespace Keikocho.App.Shared.Problems;

/// <summary>What was typed into a form that could not be taken, so that it is not lost.</summary>
/// <param name="Action">Where the form is posted to.</param>
/// <param name="Fields">Names and values in the order of the form.</param>
/// <param name="MayBeSentAgain">Whether the browser vouches that the form stood on a page of ours.</param>
/// <param name="HadFiles">Whether files came with it; those cannot be kept.</param>
public sealed record TypedFields(string Action, IReadOnlyList<KeyValuePair<string, string>> Fields, bool MayBeSentAgain, bool HadFiles)
{
    /// <summary>Reads them from a refused post; null if there is nothing to keep.</summary>
    public static async Task<TypedFields?> ReadAsync(HttpContext context, Problem problem)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(problem);
        if (!problem.Stale || !context.Request.HasFormContentType)
            return null;
        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        var fields = form
            .Where(field => field.Key != Hosting.PageTokens.FieldName)
            .SelectMany(field => field.Value, (field, value) => new KeyValuePair<string, string>(field.Key, value ?? ""))
            .ToList();
        // Another site can make a browser post a form, but not make it say that the form came from here.
        var ownPage = context.Request.Headers["Sec-Fetch-Site"] == "same-origin";
        return new TypedFields(context.Request.Path + context.Request.QueryString, fields, ownPage, form.Files.Count > 0);
    }
}
