namespace Keikocho.Store.Starter;

/// <summary>
/// What a new club finds: sample ladders, notes for teaching, words, questions, a lesson. Open text files of the folder starter, carried
/// inside the program.
/// </summary>
public static class StarterKit
{
    /// <summary>Names of the sample ladders' files.</summary>
    public static IReadOnlyList<string> Ladders { get; } =
        [.. StarterFile.All.Where(file => file.StartsWith("ladder-", StringComparison.Ordinal) && file.EndsWith(".toml", StringComparison.Ordinal))];

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

    /// <summary>Games.</summary>
    public static TextReading<IReadOnlyList<StarterGame>> Games() => GamesText.Read(Text("games.toml"), "games.toml");

    /// <summary>Ready phrases for a note on a child.</summary>
    public static TextReading<IReadOnlyList<StarterPhrase>> Phrases() => PhrasesText.Read(Text("phrases.toml"), "phrases.toml");

    /// <summary>The text of one file.</summary>
    /// <exception cref="ArgumentException">The kit has no such file.</exception>
    public static string Text(string file)
    {
        using var reader = StarterFile.Open(file);
        return reader.ReadToEnd();
    }
}
