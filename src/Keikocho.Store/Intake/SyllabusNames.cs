using Keikocho.Core.Names;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Engines;
using Keikocho.Store.Starter;
using Keikocho.Store.Syllabus;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Intake;

/// <summary>What the headings of a sign-off grid may name: the items of an edition, and the techniques by every spelling that is known.</summary>
/// <param name="Items">The items; none where the programme has no syllabus yet.</param>
/// <param name="Techniques">The names by which techniques are found.</param>
public sealed record SyllabusNames(IReadOnlyList<Item> Items, NameIndex Techniques)
{
    private static readonly Lazy<NameIndex> Library = new(() => NameIndex.Of(StarterNames.Known));

    /// <summary>No syllabus.</summary>
    public static SyllabusNames None => new([], Library.Value);

    /// <summary>Those of an edition; none for null.</summary>
    public static SyllabusNames Of(Edition? edition)
    {
        if (edition is null) return None;
        var known = StarterNames.Known.Select(name => name.Name).ToHashSet(StringComparer.OrdinalIgnoreCase);
        // A spelling of the club's own stands for itself, or for the listed technique that it is counted as.
        List<KnownName> own =
        [
            .. (edition.Techniques ?? []).Where(t => t.Name.Trim().Length > 0 && !known.Contains(t.Name.Trim())).DistinctBy(t => t.Name.Trim().ToUpperInvariant())
                .Select(t => new KnownName(t.Name.Trim(), t.Kana, t.Kanji, null, t.Meaning, [], t.CountedAs is { } listed && known.Contains(listed.Trim()) ? listed.Trim() : null)),
        ];
        return new(edition.Items, own.Count == 0 ? Library.Value : NameIndex.Of([.. StarterNames.Known, .. own]));
    }

    /// <summary>Those of the edition of a ladder that holds on a day, as the file has it.</summary>
    public static SyllabusNames On(KeikochoDb db, Guid? ladder, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(db);
        if (ladder is null) return None;
        var row = db.Editions.AsNoTracking().Where(e => e.LadderId == ladder && e.PublishedAt != null).AsEnumerable()
            .Where(e => (e.From ?? DateOnly.MinValue) <= day).OrderBy(e => e.From ?? DateOnly.MinValue).ThenBy(e => e.PublishedAt).LastOrDefault();
        return row is null ? None : Of(EditionDocument.Read(row.Document));
    }
}
