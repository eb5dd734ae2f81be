using System.Text;

namespace Keikocho.Store.Starter;

/// <summary>
/// What a new club finds: sample ladders, notes for teaching, words, questions, a lesson. Open text files of the folder starter, carried
/// inside the program.
/// </summary>
public static class StarterKit
{
    private const string Prefix = "starter/";

    /// <summary>Names of the files, in order.</summary>
    public static IReadOnlyList<string> Files { get; } =
    [
        .. typeof(StarterKit).Assembly.GetManifestResourceNames()
            .Select(name => name.Replace('\\', '/'))
            .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))
            .Select(name => name[Prefix.Length..])
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>Names of the sample ladders' files.</summary>
    public static IReadOnlyList<string> Ladders { get; } =
        [.. Files.Where(file => file.StartsWith("ladder-", StringComparison.Ordinal) && file.EndsWith(".toml", StringComparison.Ordinal))];

    /// <summary>A sample ladder.</summary>
    /// <param name="file">One of <see cref="Ladders"/>.</param>
    public static SyllabusReading Ladder(string file) => SyllabusText.Read(Text(file), file);

    /// <summary>Notes for teaching.</summary>
    public static TextReading<IReadOnlyList<TechniqueNote>> Techniques() => TechniqueText.Read(Text("techniques.toml"), "techniques.toml");

    /// <summary>Words.</summary>
    public static TextReading<IReadOnlyList<VocabularyWord>> Vocabulary() => VocabularyText.Read(Text("vocabulary.csv"), "vocabulary.csv");

    /// <summary>Questions.</summary>
    public static TextReading<IReadOnlyList<StarterQuestion>> Questions() => QuestionBank.Read(Text("questions.toml"), "questions.toml");

    /// <summary>A lesson by the clock.</summary>
    public static TextReading<LessonTemplate> Lesson() => LessonText.Read(Text("lesson-template.toml"), "lesson-template.toml");

    /// <summary>The text of one file.</summary>
    /// <exception cref="ArgumentException">The kit has no such file.</exception>
    public static string Text(string file)
    {
        ArgumentNullException.ThrowIfNull(file);
        if (!Files.Contains(file)) throw new ArgumentException($"The starter kit has no file {file}; it has {string.Join(", ", Files)}.", nameof(file));
        var name = typeof(StarterKit).Assembly.GetManifestResourceNames().First(resource => resource.Replace('\\', '/') == Prefix + file);
        using var stream = typeof(StarterKit).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
