using Keikocho.Core.Syllabus;

namespace Keikocho.Store.Starter;

/// <summary>What came of a syllabus file. A closed set.</summary>
public abstract record SyllabusReading
{
    private SyllabusReading()
    {
    }

    /// <summary>The whole of it was read and it holds together.</summary>
    /// <param name="Edition">The edition.</param>
    /// <param name="Cautions">What may be published as it is, but should be looked at.</param>
    public sealed record Read(Edition Edition, IReadOnlyList<EditionFault> Cautions) : SyllabusReading;

    /// <summary>Nothing was read.</summary>
    /// <param name="Faults">At least one, in the order of the file.</param>
    public sealed record Faulty(IReadOnlyList<TextFault> Faults) : SyllabusReading;
}

/// <summary>A syllabus as a TOML text that an instructor can read and edit: docs/formats/syllabus.md.</summary>
public static class SyllabusText
{
    /// <summary>Reads a syllabus; all of it or nothing.</summary>
    /// <param name="text">The text of the file.</param>
    /// <param name="fileName">Its name, for the sentences.</param>
    public static SyllabusReading Read(string text, string fileName) => Read(text, fileName, CheckEdition.Faults);

    /// <summary>
    /// Reads a draft: whatever can be read is taken, with everything that stands against its publication among the cautions. Only a text that
    /// cannot be read, or an edition that cannot be shown because a key is empty or stands twice, is refused.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="fileName">Its name, for the sentences.</param>
    public static SyllabusReading ReadDraft(string text, string fileName) => Read(text, fileName, CheckEdition.Faults, isDraft: true);

    /// <summary>Writes an edition so that reading it gives the same again.</summary>
    public static string Write(Edition edition) => SyllabusWriter.Write(edition);

    /// <summary>The same with another judge of the edition.</summary>
    internal static SyllabusReading Read(string text, string fileName, Func<Edition, IReadOnlyList<EditionFault>> check, bool isDraft = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(fileName);
        var trace = new TextTrace(fileName);
        if (TomlFile.Parse(text, fileName, trace.Faults) is not { } root) return new SyllabusReading.Faulty(trace.Sorted());
        var edition = SyllabusReader.Read(new Fields(root, "", "", trace));
        if (trace.Faults.Count > 0) return new SyllabusReading.Faulty(trace.Sorted());
        var judged = check(edition);
        foreach (var fault in judged.Where(fault => fault.Blocks && (!isDraft || IsOfKey(fault))))
        {
            var (line, field) = trace.Of(fault.Path);
            trace.Fault(line, field, fault.Sentence);
        }

        return trace.Faults.Count > 0
            ? new SyllabusReading.Faulty(trace.Sorted())
            : new SyllabusReading.Read(edition, [.. judged.Where(fault => isDraft || !fault.Blocks)]);
    }

    // Pages find ranks, lines, items and units by their keys: of two alike nobody could say which one is meant.
    private static bool IsOfKey(EditionFault fault) => fault.Path.EndsWith(".key", StringComparison.Ordinal);
}
