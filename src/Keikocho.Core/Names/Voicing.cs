using System.Collections.Frozen;

namespace Keikocho.Core.Names;

/// <summary>Words whose first sound is voiced behind another word, or is not: harai and barai are one word.</summary>
internal static class Voicing
{
    // The pairs of judo's names (read: published lists write now the one, now the other) and of its practice words.
    private static readonly (string Clear, string Voiced)[] Pairs =
    [
        ("harai", "barai"), ("kari", "gari"), ("kake", "gake"), ("koshi", "goshi"), ("katame", "gatame"), ("shime", "jime"),
        ("kuruma", "guruma"), ("kaeshi", "gaeshi"), ("karami", "garami"), ("hasami", "basami"), ("keiko", "geiko"),
        ("kachi", "gachi"), ("tori", "dori"), ("taoshi", "daoshi"), ("tsuri", "zuri"),
    ];

    private static readonly FrozenDictionary<string, string> Other =
        Pairs.Concat(Pairs.Select(p => (p.Voiced, p.Clear))).ToFrozenDictionary(p => p.Item1, p => p.Item2);

    /// <summary>The same word with its first sound the other way; null for a word that has only one.</summary>
    public static string? OtherWay(string element) => Other.GetValueOrDefault(element);
}
