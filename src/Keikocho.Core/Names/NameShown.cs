using System.Text;

namespace Keikocho.Core.Names;

/// <summary>A name as a club shows it.</summary>
public static class NameShown
{
    /// <summary>
    /// The name; with <paramref name="macrons"/> its long vowels are marked as its kana says, where the name is spelt as its kana sounds.
    /// A spelling of the club's own that is not so is left alone.
    /// </summary>
    public static string Of(KnownName name, bool macrons)
    {
        ArgumentNullException.ThrowIfNull(name);
        if (!macrons || name.Kana is null || KanaElements.Split(name.Name, name.Kana) is not { } parts)
            return name.Name;

        // Only vowels change: each letter of the name stays, and takes the mark of the same letter in the kana's reading.
        var marked = string.Concat(parts.Select(p => Romanise.Of(p, RomajiSystem.ModifiedHepburn))).Where(char.IsLetter).ToArray();
        var shown = new StringBuilder(name.Name);
        var at = 0;
        for (var i = 0; i < shown.Length; i++)
        {
            if (!char.IsLetter(shown[i]))
                continue;
            if (at == marked.Length)
                return name.Name;
            var letter = marked[at++];
            if (letter >= '\u0080')
                shown[i] = char.IsUpper(shown[i]) ? char.ToUpperInvariant(letter) : letter;
            else if (char.ToLowerInvariant(shown[i]) != letter)
                return name.Name;
        }

        return at == marked.Length ? shown.ToString() : name.Name;
    }
}
