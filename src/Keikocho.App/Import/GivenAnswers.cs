using Keikocho.Core.Intake;
using Keikocho.Store.Intake;

namespace Keikocho.App.Import;

/// <summary>The answers in a sent form. A question's radio buttons are "a:" and its key, what is typed instead is "t:" and its key.</summary>
public static class GivenAnswers
{
    /// <summary>The answer that says "what is typed beside it".</summary>
    public const string Typed = "=";

    /// <summary>Reads them; an empty answer takes one back.</summary>
    /// <param name="form">The form.</param>
    /// <param name="held">The answers held so far.</param>
    /// <param name="otherKind">The file is to be read as the other kind, for which columns and sheet are guessed anew.</param>
    public static Dictionary<string, string> Read(IFormCollection form, Answers held, bool otherKind)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(held);
        var given = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (name, value) in form)
        {
            var said = value.ToString();
            if (name.StartsWith("a:", StringComparison.Ordinal) && said != Typed) given[name[2..]] = said;
            else if (name.StartsWith("t:", StringComparison.Ordinal) && said.Trim().Length > 0 && form["a:" + name[2..]].ToString() is "" or Typed) given[name[2..]] = "=" + said.Trim();
            else if (name.StartsWith("c:", StringComparison.Ordinal) && said != form["was-" + name].ToString()) given[ReadAgain.ColumnKey + name[2..]] = said;
        }

        if (form["sheet"].ToString() is { Length: > 0 } sheet) given[ReadAgain.SheetKey] = sheet;
        if (form["aside"].ToString() is { Length: > 0 } aside) given[aside] = "set-aside";
        if (form["back"].ToString() is { Length: > 0 } back) given[back] = "";
        // Another sheet has other columns.
        if (otherKind || given.TryGetValue(ReadAgain.SheetKey, out var now) && held.ByKey.GetValueOrDefault(ReadAgain.SheetKey, "1") != now)
            foreach (var key in held.ByKey.Keys.Concat(given.Keys).Where(key => key.StartsWith(ReadAgain.ColumnKey, StringComparison.Ordinal)).ToList()) given[key] = "";
        return given;
    }
}
