namespace Keikocho.Store.Starter;

/// <summary>A ready phrase of two lines for a note on a child.</summary>
/// <param name="Key">What a note holds of it; it stays when the words are mended.</param>
/// <param name="Seen">What was seen.</param>
/// <param name="Next">What to work on next.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record StarterPhrase(string Key, string Seen, string Next, string Source);

/// <summary>Ready phrases as a TOML text: docs/formats/starter.md.</summary>
public static class PhrasesText
{
    private const int LongestKey = 40;
    private const int LongestLine = 60;

    /// <summary>Reads the phrases; all of them or none.</summary>
    public static TextReading<IReadOnlyList<StarterPhrase>> Read(string text, string fileName) => WholeFile.Read<IReadOnlyList<StarterPhrase>>(text, fileName, Phrases);

    private static IReadOnlyList<StarterPhrase> Phrases(Fields file)
    {
        var phrases = new List<StarterPhrase>();
        foreach (var block in file.Blocks("phrase") ?? [])
        {
            var phrase = new StarterPhrase(block.Needed("key"), Line(block, "seen"), Line(block, "next"), block.Needed("source"));
            if (phrase.Key.Length > LongestKey || !phrase.Key.All(c => c is >= 'a' and <= 'z' or '-')) block.Fault("key", "A key is small letters and hyphens, at most 40.");
            if (phrases.Any(p => p.Key == phrase.Key)) block.Fault("key", $"{phrase.Key} is there twice; take one out.");
            block.NothingElse();
            phrases.Add(phrase);
        }

        if (phrases.Count == 0) file.Fault("phrase", "There is no phrase; write one that begins with [[phrase]].");
        return phrases;
    }

    // A thumb reads it at a glance.
    private static string Line(Fields block, string name)
    {
        var line = block.Needed(name);
        if (line.Length > LongestLine) block.Fault(name, $"This is {line.Length} signs long; a line of a phrase has at most {LongestLine}.");
        return line;
    }
}

/// <summary>The ready phrases that the program ships.</summary>
public static class StarterPhrases
{
    private static readonly Lazy<IReadOnlyList<StarterPhrase>> Shipped = new(() => StarterKit.Phrases() is TextReading<IReadOnlyList<StarterPhrase>>.Read read
        ? read.Value
        : throw new InvalidOperationException("The program was built with faulty phrases."));

    /// <summary>All, in the order of their file; read once.</summary>
    public static IReadOnlyList<StarterPhrase> All => Shipped.Value;

    /// <summary>The phrase of a key; null where it is not there any more.</summary>
    public static StarterPhrase? Of(string key) => All.FirstOrDefault(p => p.Key == key);

    /// <summary>Both lines of a key in words.</summary>
    public static string Words(string key) => Of(key) is { } phrase ? $"{phrase.Seen} {phrase.Next}" : "A phrase that is not in the list any more.";
}
