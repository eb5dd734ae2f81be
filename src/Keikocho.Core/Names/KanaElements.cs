namespace Keikocho.Core.Names;

/// <summary>Parts kana where a name has its hyphens: おおうちがり of O-uchi-gari is おお, うち, がり.</summary>
public static class KanaElements
{
    /// <summary>The kana of each element; null when the kana does not read as the name does.</summary>
    public static string[]? Split(string name, string kana)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(kana);
        var letters = Parts(name).Select(LetterKey.Of).Where(p => p.Length > 0).ToArray();
        var parts = new string[letters.Length];
        return letters.Length > 0 && Fill(letters, 0, kana, parts) ? parts : null;
    }

    /// <summary>The parts of a spelling between its hyphens and blanks.</summary>
    internal static string[] Parts(string spelling) => spelling.Split(['-', ' ', '‐', '‑', '–', '　'], StringSplitOptions.RemoveEmptyEntries);

    private static bool Fill(string[] letters, int at, string rest, string[] parts)
    {
        if (at == letters.Length)
            return rest.Length == 0;
        for (var length = 1; length <= rest.Length; length++)
        {
            if (LetterKey.Of(Romanise.Of(rest[..length], RomajiSystem.Plain)) != letters[at])
                continue;
            parts[at] = rest[..length];
            if (Fill(letters, at + 1, rest[length..], parts))
                return true;
        }

        return false;
    }
}
