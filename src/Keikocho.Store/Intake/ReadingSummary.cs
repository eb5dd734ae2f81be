using System.Globalization;
using System.Text.Json;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Intake;

/// <summary>A person whom an undo had to keep.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Why">What speaks of the person now.</param>
public sealed record KeptPerson(Guid PersonId, string Why);

/// <summary>What was done, in counts and sentences without names.</summary>
/// <param name="Counts">What was counted, by a fixed word: "new", "unchanged", "changed", "setAside", "marks" ...</param>
/// <param name="Sentences">The same in words.</param>
/// <param name="Undone">What the undo did, in words; empty before.</param>
/// <param name="Kept">Whom the undo had to keep.</param>
public sealed record ReadingSummary(
    IReadOnlyDictionary<string, int> Counts, IReadOnlyList<string> Sentences, IReadOnlyList<string> Undone, IReadOnlyList<KeptPerson> Kept)
{
    /// <summary>The summary of a reading; null before it is saved.</summary>
    public static ReadingSummary? Of(ReadingRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return row.Summary is { } held ? JsonSerializer.Deserialize<ReadingSummary>(Seal.Open(held)) : null;
    }

    /// <summary>A count; 0 where nothing was counted.</summary>
    public int Count(string what) => Counts.GetValueOrDefault(what);

    internal Sealed<string> Close() => Seal.Close(JsonSerializer.Serialize(this));
}

/// <summary>Gathers counts and says them.</summary>
internal sealed class SummaryDraft
{
    private readonly Dictionary<string, int> counts = new(StringComparer.Ordinal);
    private readonly List<string> sentences = [];

    public void Count(string what, int by = 1) => counts[what] = counts.GetValueOrDefault(what) + by;

    public int Of(string what) => counts.GetValueOrDefault(what);

    /// <summary>Says a sentence about a count where there is anything to say; "#" stands for the number.</summary>
    public void Say(string what, string one, string many)
    {
        var count = Of(what);
        if (count > 0) sentences.Add((count == 1 ? one : many).Replace("#", count.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal));
    }

    public void Say(string sentence) => sentences.Add(sentence);

    public ReadingSummary Done()
    {
        if (sentences.Count == 0) sentences.Add("Nothing was changed: everything in the file is here already.");
        return new(counts, sentences, [], []);
    }
}
