namespace Keikocho.App.Shared.Parts;

/// <summary>What a control of a <see cref="Field"/> must carry so that its label, hint and error belong to it.</summary>
public static class FieldControl
{
    /// <summary>The attributes: id, name, and where they apply <c>aria-invalid</c> and <c>aria-describedby</c>.</summary>
    /// <param name="id">The control's id and name.</param>
    /// <param name="hasHint">Whether the field has a hint.</param>
    /// <param name="hasError">Whether the field has an error.</param>
    public static IReadOnlyDictionary<string, object> Attributes(string id, bool hasHint, bool hasError)
    {
        var attributes = new Dictionary<string, object>(StringComparer.Ordinal) { ["id"] = id, ["name"] = id };
        if (hasError)
            attributes["aria-invalid"] = "true";
        if (hasHint || hasError)
            attributes["aria-describedby"] = string.Join(' ', new[] { hasHint ? id + "-hint" : null, hasError ? id + "-error" : null }.OfType<string>());
        return attributes;
    }

    /// <summary>The sentence that belongs to a control; null if there is none.</summary>
    public static string? ErrorOf(this IReadOnlyList<FieldError> errors, string control)
    {
        ArgumentNullException.ThrowIfNull(errors);
        return errors.FirstOrDefault(error => error.Control == control)?.Sentence;
    }
}
