using System.Globalization;
using Keikocho.Core.Safety;

namespace Keikocho.Store.Starter;

/// <summary>Notes for teaching as a TOML text: docs/formats/starter.md.</summary>
public static class TechniqueText
{
    private static readonly WordList<TechniqueFamily> Families = new(
        ("hand", TechniqueFamily.Hand), ("hip", TechniqueFamily.Hip), ("foot", TechniqueFamily.Foot), ("sacrifice", TechniqueFamily.Sacrifice),
        ("hold", TechniqueFamily.Hold), ("escape", TechniqueFamily.Escape), ("turnover", TechniqueFamily.Turnover), ("fall", TechniqueFamily.Fall),
        ("movement", TechniqueFamily.Movement), ("grip", TechniqueFamily.Grip), ("bowing", TechniqueFamily.Bowing));

    private static readonly WordList<FallWay> Ways = new(
        ("back", new(FallDirection.Back, FallSide.None)), ("side left", new(FallDirection.Side, FallSide.Left)),
        ("side right", new(FallDirection.Side, FallSide.Right)), ("front", new(FallDirection.Front, FallSide.None)),
        ("rolling left", new(FallDirection.Rolling, FallSide.Left)), ("rolling right", new(FallDirection.Rolling, FallSide.Right)));

    /// <summary>Reads the notes; all of them or none.</summary>
    public static TextReading<IReadOnlyList<TechniqueNote>> Read(string text, string fileName) =>
        WholeFile.Read<IReadOnlyList<TechniqueNote>>(text, fileName, file =>
        {
            var names = new HashSet<string>(StringComparer.Ordinal);
            return [.. (file.Blocks("technique") ?? []).Select(block => Note(block, names))];
        });

    private static TechniqueNote Note(Fields block, HashSet<string> names)
    {
        var note = new TechniqueNote(
            block.Needed("name"),
            block.NeededWord("family", Families),
            block.Needed("meaning"),
            Lines(block, "look-for", 3),
            Lines(block, "faults", 2),
            Falls(block.Block("falls")),
            block.Texts("lead-ups") ?? [],
            block.Needed("easier"),
            block.Needed("harder"),
            Caution(block.Block("caution")),
            block.Truth("alone-at-home"),
            SyllabusReader.NeededNumber(block, "minutes", least: 1, most: 90));
        if (note.Name.Length > 0 && !names.Add(note.Name)) block.Fault("name", $"{note.Name} stands twice; take one out.");
        if (note.IsThrow && note.Falls is null && !block.Has("falls")) block.Fault("falls", "A throw must say how the partner falls; write falls = { ... }.");
        if (note.AloneAtHome && (note.IsThrow || note.Family is TechniqueFamily.Fall or TechniqueFamily.Hold))
            block.Fault("alone-at-home", "A throw, a fall or a hold is never practised alone at home; write false.");
        block.NothingElse();
        return note;
    }

    private static IReadOnlyList<string> Lines(Fields block, string name, int count)
    {
        var lines = block.Texts(name) ?? [];
        if (lines.Count != count)
            block.Fault(name, string.Create(CultureInfo.InvariantCulture, $"This takes {count} lines in brackets, and there are {lines.Count}; write {count}."));
        return lines;
    }

    private static SafetyLine? Caution(Fields? block)
    {
        if (block is null) return null;
        var line = new SafetyLine(block.Needed("text"), block.Needed("status"));
        block.NothingElse();
        return line;
    }

    private static PartnerFalls? Falls(Fields? block)
    {
        if (block is null) return null;
        var falls = new PartnerFalls(
            block.WordsOf("right", Ways) ?? [], block.WordsOf("left", Ways) ?? [],
            SyllabusReader.NeededNumber(block, "stage", least: 1, most: 6), block.Needed("status"));
        if (!block.Has("right") || !block.Has("left")) block.Fault("right", "Say how the partner falls for both hands, right = [...] and left = [...].");
        block.NothingElse();
        return falls;
    }
}
