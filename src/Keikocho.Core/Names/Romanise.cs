using System.Text;

namespace Keikocho.Core.Names;

/// <summary>Writes kana in Latin letters. Hyphens, blanks and middle dots in the kana part its elements; a long vowel is drawn together inside an element only, so that こ-うち is ko-uchi and not kōchi.</summary>
public static class Romanise
{
    /// <summary>The kana in Latin letters, in small letters; a hyphen stands where the kana had a boundary. What is not kana stays as it is.</summary>
    public static string Of(string kana, RomajiSystem system)
    {
        ArgumentNullException.ThrowIfNull(kana);
        var text = new StringBuilder(kana.Length * 2);
        foreach (var element in kana.Split(['-', ' ', '・', '　'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (text.Length > 0)
                text.Append('-');
            Append(text, Moras.Read(element), system);
        }

        return text.ToString();
    }

    private static void Append(StringBuilder text, List<Mora> beats, RomajiSystem system)
    {
        for (var i = 0; i < beats.Count; i++)
        {
            var beat = beats[i];
            var next = i + 1 < beats.Count ? (system == RomajiSystem.Kunrei ? beats[i + 1].Kunrei : beats[i + 1].Hepburn) : "";
            if (beat.IsN)
                text.Append(N(next, system));
            else if (beat.IsDoubling)
                text.Append(Doubling(next));
            else
                AppendSyllable(text, beat, system);
        }
    }

    private static string N(string next, RomajiSystem system)
    {
        if (next.Length == 0)
            return "n";
        if (next[0] is 'b' or 'm' or 'p')
            return system == RomajiSystem.TraditionalHepburn ? "m" : "n";
        if (!Moras.IsVowel(next[0]) && next[0] != 'y')
            return "n";
        return system switch { RomajiSystem.Plain => "n", RomajiSystem.TraditionalHepburn => "n-", _ => "n'" };
    }

    private static string Doubling(string next) =>
        next.StartsWith("ch", StringComparison.Ordinal) ? "t"
        : next.Length > 0 && char.IsAsciiLetterLower(next[0]) && !Moras.IsVowel(next[0]) ? next[..1]
        : "";

    private static void AppendSyllable(StringBuilder text, Mora beat, RomajiSystem system)
    {
        var letters = system == RomajiSystem.Kunrei ? beat.Kunrei : beat.Hepburn;
        if (!beat.IsLong)
        {
            text.Append(letters);
            return;
        }

        text.Append(letters, 0, letters.Length - 1);
        switch (system)
        {
            case RomajiSystem.Letters:
                text.Append(beat.Vowel).Append(beat.LengthenerLetter);
                break;
            case RomajiSystem.Plain:
                text.Append(beat.Vowel);
                break;
            default:
                var marked = system == RomajiSystem.Kunrei ? "âîûêô" : "āīūēō";
                text.Append(marked["aiueo".IndexOf(beat.Vowel, StringComparison.Ordinal)]);
                break;
        }
    }
}
