namespace Keikocho.Core.Names;

/// <summary>
/// The words that names are made of. A spelling that falls into nothing but such words is no slip of the pen: Morote-gake is
/// made of real words, and is not Morote-gari written badly.
/// </summary>
internal sealed class WholeWords
{
    private readonly HashSet<string> words = new(StringComparer.Ordinal);
    private readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> lookup;
    private int longest;

    public WholeWords() => lookup = words.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>Takes in a word, by its key.</summary>
    public void Add(string key)
    {
        if (key.Length == 0)
            return;
        words.Add(key);
        longest = Math.Max(longest, key.Length);
    }

    /// <summary>Whether the key is words from end to end.</summary>
    public bool Make(ReadOnlySpan<char> key)
    {
        Span<bool> reached = stackalloc bool[LetterKey.Room + 1];
        reached[..(key.Length + 1)].Clear();
        reached[0] = true;
        for (var at = 0; at < key.Length; at++)
        {
            if (!reached[at])
                continue;
            for (var length = 1; length <= longest && at + length <= key.Length; length++)
            {
                if (!reached[at + length] && lookup.Contains(key.Slice(at, length)))
                    reached[at + length] = true;
            }
        }

        return reached[key.Length];
    }
}
