using Keikocho.Store.Engines;

namespace Keikocho.App.Commands;

/// <summary>The one place that knows which exceptions are a clear no with a sentence for a person, ours and the store's.</summary>
public static class Refusals
{
    /// <summary>The refusal that it is; null when it is something nobody expected.</summary>
    public static RefusalException? Of(Exception thrown) => thrown switch
    {
        RefusalException refusal => refusal,
        StoreRefusal refusal => new RefusalException(AtStart(refusal.Message)),
        _ when FullDisk.Is(thrown) => new RefusalException(FullDisk.Sentence),
        _ => null,
    };

    /// <summary>A sentence with a capital where it begins with a word; a path at its start stays as it is.</summary>
    public static string AtStart(string sentence)
    {
        ArgumentNullException.ThrowIfNull(sentence);
        return sentence.StartsWith("the ", StringComparison.Ordinal) ? "T" + sentence[1..] : sentence;
    }
}
