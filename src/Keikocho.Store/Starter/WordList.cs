namespace Keikocho.Store.Starter;

/// <summary>The words that a file writes for the values of a closed list.</summary>
/// <param name="pairs">Word and value, in the order to list them.</param>
internal sealed class WordList<T>(params (string Word, T Value)[] pairs)
    where T : struct
{
    /// <summary>Every word, for a sentence.</summary>
    public string All => string.Join(", ", pairs.Select(pair => $"\"{pair.Word}\""));

    /// <summary>The value of a word; null for no such word.</summary>
    public T? Of(string word)
    {
        foreach (var pair in pairs)
        {
            if (pair.Word == word) return pair.Value;
        }

        return null;
    }

    /// <summary>The word of a value.</summary>
    public string Of(T value) => pairs.First(pair => EqualityComparer<T>.Default.Equals(pair.Value, value)).Word;
}
