using Keikocho.Core.Names;
using Keikocho.Core.Syllabus;
using Keikocho.Paper.Sheets;
using Keikocho.Store.Starter;

namespace Keikocho.App.Papers;

/// <summary>Kanji and kana of the items of a sheet: from the item, else from the club's own techniques, else from the name library.</summary>
internal static class ItemScripts
{
    private static readonly Lazy<NameIndex> Library = new(() => NameIndex.Of(StarterNames.Known));
    private static readonly Lazy<IReadOnlyDictionary<string, KnownName>> Known = new(() =>
        Library.Value.Names.GroupBy(n => n.Name, StringComparer.OrdinalIgnoreCase).ToDictionary(g => g.Key, g => g.First(), StringComparer.OrdinalIgnoreCase));

    /// <summary>By the key of the item; who has neither is not in it.</summary>
    public static IReadOnlyDictionary<string, ItemScript> Of(Edition edition, RequirementSheet sheet)
    {
        var own = (edition.Techniques ?? []).GroupBy(t => t.Name, StringComparer.OrdinalIgnoreCase).ToDictionary(g => g.Key, g => g.First(), StringComparer.OrdinalIgnoreCase);
        var scripts = new Dictionary<string, ItemScript>(StringComparer.Ordinal);
        foreach (var item in sheet.Lines.SelectMany(l => l.Items).Select(i => i.Item))
        {
            if (item.Kanji is not null && item.Kana is not null) continue;
            var found = item.Technique is { } technique ? Find(own, technique) : null;
            var script = new ItemScript(item.Kanji ?? found?.Kanji, item.Kana ?? found?.Kana);
            if (script is not { Kanji: null, Kana: null }) scripts[item.Key] = script;
        }

        return scripts;
    }

    private static ItemScript? Find(Dictionary<string, OwnTechnique> own, string technique)
    {
        if (own.TryGetValue(technique, out var ours) && (ours.Kanji ?? ours.Kana) is not null) return new ItemScript(ours.Kanji, ours.Kana);
        if (Known.Value.TryGetValue(technique, out var listed)) return Of(listed);
        // Another way to write the name is enough; a slip of the pen is not: a wrong character is worse than none.
        return Library.Value.Resolve(technique) is NameOutcome.One one && !one.How.Contains("from it", StringComparison.Ordinal)
            && Known.Value.TryGetValue(one.CountedFrom ?? one.Name, out var found) ? Of(found) : null;
    }

    private static ItemScript Of(KnownName name) => new(name.Kanji, name.Kana);
}
