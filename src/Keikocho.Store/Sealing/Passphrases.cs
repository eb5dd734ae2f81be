namespace Keikocho.Store.Sealing;

/// <summary>What a passphrase has to be. Ours, no source: long enough to type from memory, too long to guess one by one.</summary>
public static class Passphrases
{
    /// <summary>So many characters, or <see cref="LeastWords"/> words.</summary>
    public const int LeastLetters = 12;

    /// <summary>So many words of two letters or more.</summary>
    public const int LeastWords = 4;

    /// <summary>Longer ones are refused: a whole page typed by mistake.</summary>
    public const int MostLetters = 200;

    /// <summary>One sentence on what is wrong; null when it is long enough.</summary>
    public static string? Refusal(string? passphrase)
    {
        var text = (passphrase ?? "").Trim();
        if (text.Length == 0) return "The passphrase is missing. Type at least 12 characters, or four words.";
        if (text.Length > MostLetters) return "That is longer than 200 characters. Choose a shorter passphrase.";
        var words = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Count(w => w.Length > 1);
        return text.Length >= LeastLetters || words >= LeastWords ? null : "That passphrase is too short. Type at least 12 characters, or four words.";
    }
}
