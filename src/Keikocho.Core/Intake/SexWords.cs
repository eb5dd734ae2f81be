namespace Keikocho.Core.Intake;

/// <summary>How lists write a child's sex, where a national form asks for it.</summary>
public static class SexWords
{
    private static readonly string[] Female = ["f", "female", "girl", "g", "w", "weiblich", "madchen", "fille", "feminin", "v", "vrouw", "meisje", "mujer", "nina"];
    private static readonly string[] Male = ["m", "male", "boy", "b", "mannlich", "junge", "garcon", "masculin", "man", "jongen", "h", "hombre", "nino"];
    private static readonly string[] Neither = ["x", "d", "other", "diverse", "divers"];

    /// <summary>F, M or X; empty where the word is none of those known.</summary>
    public static string Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var word = NameFold.Fold(text);
        return Female.Contains(word) ? "F" : Male.Contains(word) ? "M" : Neither.Contains(word) ? "X" : "";
    }
}
