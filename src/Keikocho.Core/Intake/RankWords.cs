using System.Globalization;

namespace Keikocho.Core.Intake;

/// <summary>What the words of a rank show: a cloth, a second colour, tips, or a number of kyu or mon.</summary>
/// <param name="Key">The same for every spelling of one rank: "White belt" and "white" are one.</param>
/// <param name="Cloth">The word of the look for the cloth (white, yellow, orange, green, blue, brown, black); null where it cannot be drawn.</param>
/// <param name="Tips">Red tips, 0 to 2; 0 where it cannot be drawn.</param>
/// <param name="Colour">Place of the first colour, 0 white to 6 black; null where no colour is named.</param>
/// <param name="Second">Place of a second colour, as in white-yellow; -1 without one.</param>
/// <param name="Marks">Tips or stripes as written.</param>
/// <param name="Number">Kyu as a negative number and mon as a positive one, so that both rise with the rank; null otherwise.</param>
public sealed record RankWord(string Key, string? Cloth, int Tips, int? Colour, int Second, int Marks, int? Number);

/// <summary>Reads the club's own words for ranks. The words are common practice, no source.</summary>
public static class RankWords
{
    private static readonly string[] Cloths = ["white", "yellow", "orange", "green", "blue", "brown", "black"];

    private static readonly Dictionary<string, int> Colours = new[]
    {
        "white weiss weis blanc blanche wit blanco", "yellow gelb jaune geel amarillo", "orange oranje naranja naranjo", "green grun gruen vert verte groen verde",
        "blue blau bleu bleue blauw azul", "brown braun marron brun brune bruin", "black schwarz noir noire zwart negro",
    }.SelectMany((words, place) => words.Split(' ').Select(word => (word, place))).ToDictionary(pair => pair.word, pair => pair.place);

    private static readonly string[] Silent = ["belt", "gurt", "gurtel", "guertel", "ceinture", "band", "gordel", "cinturon", "obi", "with", "and", "mit", "und", "avec", "et", "the"];
    private static readonly string[] TipWords = ["red", "rot", "rote", "rouge", "rood", "rojo", "tip", "tips", "tab", "tabs", "tag", "tags", "stripe", "stripes", "bar", "bars"];
    private static readonly string[] Numbers = ["zero", "one", "two", "three", "four", "five", "six"];

    /// <summary>What the words show.</summary>
    public static RankWord Read(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var folded = NameFold.Fold(words);
        var left = folded.Split(' ', StringSplitOptions.RemoveEmptyEntries).Where(word => !Silent.Contains(word)).ToList();
        var key = string.Join(' ', left);
        if (key.Length == 0) return new RankWord(folded, null, 0, null, -1, 0, null);
        if (Graded(left) is { } graded) return new RankWord(key, null, 0, null, -1, 0, graded);
        var colours = left.Where(Colours.ContainsKey).Select(word => Colours[word]).ToList();
        var tips = left.Any(TipWords.Contains);
        var counts = left.Select(Count).OfType<int>().ToList();
        var known = left.All(word => Colours.ContainsKey(word) || TipWords.Contains(word) || Count(word) is not null);
        if (!known || colours.Count is 0 or > 2 || counts.Count > 1 || counts.Count == 1 && !tips) return new RankWord(key, null, 0, null, -1, 0, null);
        var marks = !tips ? 0 : counts.Count == 1 ? counts[0] : 1;
        // A cloth of two colours, or with more than two tips, is not drawn: a wrong picture would be worse than none.
        var drawn = colours.Count == 1 && marks <= 2;
        return new RankWord(
            string.Create(CultureInfo.InvariantCulture, $"{colours[0]}/{(colours.Count == 2 ? colours[1] : -1)}/{marks}"),
            drawn ? Cloths[colours[0]] : null, drawn ? marks : 0, colours[0], colours.Count == 2 ? colours[1] : -1, marks, null);
    }

    private static int? Graded(List<string> words)
    {
        var kind = words.Find(word => word.EndsWith("kyu", StringComparison.Ordinal) || word.EndsWith("mon", StringComparison.Ordinal));
        if (kind is null || words.Count > 2) return null;
        var digits = string.Concat(string.Concat(words).Where(char.IsAsciiDigit));
        if (digits.Length is 0 or > 2) return null;
        var number = int.Parse(digits, CultureInfo.InvariantCulture);
        return kind.EndsWith("kyu", StringComparison.Ordinal) ? -number : number;
    }

    private static int? Count(string word)
        => word.Length == 1 && char.IsAsciiDigit(word[0]) ? word[0] - '0' : Array.IndexOf(Numbers, word) is var at && at >= 0 ? at : null;
}
