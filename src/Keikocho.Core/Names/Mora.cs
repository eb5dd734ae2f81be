using System.Collections.Frozen;

namespace Keikocho.Core.Names;

/// <summary>One beat of a Japanese word.</summary>
/// <param name="Hepburn">Its letters in Hepburn; the kana itself for ん and っ, whose letters depend on what follows.</param>
/// <param name="Kunrei">Its letters in Kunrei.</param>
/// <param name="Lengthener">The kana that makes its vowel long; a null character where it is short.</param>
internal readonly record struct Mora(string Hepburn, string Kunrei, char Lengthener)
{
    public bool IsLong => Lengthener != '\0';

    public bool IsN => Hepburn == "ん";

    public bool IsDoubling => Hepburn == "っ";

    /// <summary>The vowel it ends in; anything else where it ends in none.</summary>
    public char Vowel => Hepburn[^1];

    /// <summary>What the lengthening kana is by itself.</summary>
    public char LengthenerLetter => Lengthener switch { 'う' => 'u', 'お' => 'o', 'あ' => 'a', 'え' => 'e', _ => Vowel };
}

/// <summary>Reads kana beat by beat.</summary>
internal static class Moras
{
    // Rows of the kana table: the letters of one row in Hepburn, and in Kunrei where they differ. Common knowledge; checked
    // against another program's converter in the tests.
    private static readonly (string Kana, string Hepburn, string? Kunrei)[] Rows =
    [
        ("あいうえお", "a i u e o", null),
        ("かきくけこ", "ka ki ku ke ko", null),
        ("がぎぐげご", "ga gi gu ge go", null),
        ("さしすせそ", "sa shi su se so", "sa si su se so"),
        ("ざじずぜぞ", "za ji zu ze zo", "za zi zu ze zo"),
        ("たちつてと", "ta chi tsu te to", "ta ti tu te to"),
        ("だぢづでど", "da ji zu de do", "da zi zu de do"),
        ("なにぬねの", "na ni nu ne no", null),
        ("はひふへほ", "ha hi fu he ho", "ha hi hu he ho"),
        ("ばびぶべぼ", "ba bi bu be bo", null),
        ("ぱぴぷぺぽ", "pa pi pu pe po", null),
        ("まみむめも", "ma mi mu me mo", null),
        ("やゆよ", "ya yu yo", null),
        ("らりるれろ", "ra ri ru re ro", null),
        ("わゐゑを", "wa i e o", null),
        ("ゔ", "vu", null),
        ("んっ", "ん っ", null),
    ];

    private static readonly FrozenDictionary<char, (string Hepburn, string Kunrei)> Table = Rows
        .SelectMany(row => row.Kana.Zip(row.Hepburn.Split(' '), (row.Kunrei ?? row.Hepburn).Split(' ')))
        .ToFrozenDictionary(cell => cell.First, cell => (cell.Second, cell.Third));

    /// <summary>Hiragana for katakana; everything else as it is.</summary>
    public static char Hiragana(char letter) => letter is >= 'ァ' and <= 'ヶ' ? (char)(letter - 'ァ' + 'ぁ') : letter;

    /// <summary>Whether the letter is hiragana, katakana or the mark of a long vowel.</summary>
    public static bool IsKana(char letter) => letter is >= 'ぁ' and <= 'ゖ' or >= 'ァ' and <= 'ヶ' or 'ー';

    /// <summary>The beats of one element of a word. A letter that is not kana is a beat of its own.</summary>
    public static List<Mora> Read(ReadOnlySpan<char> kana)
    {
        var beats = new List<Mora>(kana.Length);
        foreach (var raw in kana)
        {
            var letter = Hiragana(raw);
            if (beats.Count > 0 && Joined(beats[^1], letter) is { } joined)
                beats[^1] = joined;
            else if (Table.TryGetValue(letter, out var cell))
                beats.Add(new Mora(cell.Hepburn, cell.Kunrei, '\0'));
            else if (SmallVowel(letter) is { } vowel)
                beats.Add(new Mora(vowel.ToString(), vowel.ToString(), '\0'));
            else
                beats.Add(new Mora(raw.ToString(), raw.ToString(), '\0'));
        }

        return beats;
    }

    private static Mora? Joined(Mora last, char letter)
    {
        if (last.IsN || last.IsDoubling || last.IsLong)
            return null;
        if (letter is 'ゃ' or 'ゅ' or 'ょ')
        {
            if (last.Hepburn.Length < 2 || last.Vowel != 'i')
                return null;
            var vowel = letter switch { 'ゃ' => "a", 'ゅ' => "u", _ => "o" };
            var stem = last.Hepburn[..^1];
            return new Mora(stem + (stem is "sh" or "ch" or "j" ? "" : "y") + vowel, last.Kunrei[..^1] + "y" + vowel, '\0');
        }

        if (SmallVowel(letter) is { } small && last.Hepburn.Length > 1)
            return new Mora(last.Hepburn[..^1] + small, last.Kunrei[..^1] + small, '\0');
        var lengthens = (last.Vowel, letter) is ('o', 'う') or ('o', 'お') or ('u', 'う') or ('a', 'あ') or ('e', 'え')
            || (letter == 'ー' && IsVowel(last.Vowel));
        return lengthens ? last with { Lengthener = letter } : null;
    }

    /// <summary>Whether the letter is one of the five vowels.</summary>
    public static bool IsVowel(char letter) => letter is 'a' or 'i' or 'u' or 'e' or 'o';

    private static char? SmallVowel(char letter) => letter switch { 'ぁ' => 'a', 'ぃ' => 'i', 'ぅ' => 'u', 'ぇ' => 'e', 'ぉ' => 'o', _ => null };
}
