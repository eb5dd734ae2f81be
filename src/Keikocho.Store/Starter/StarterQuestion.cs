namespace Keikocho.Store.Starter;

/// <summary>A question for the oral part of a test.</summary>
/// <param name="Key">Stable key.</param>
/// <param name="Text">The question.</param>
/// <param name="Answers">What counts; empty only for the club's own.</param>
/// <param name="ClubsOwn">The answers are the club's own and stand empty here.</param>
/// <param name="Help">Another way of asking: a picture, a sign; null for none.</param>
/// <param name="Safety">Comes first.</param>
/// <param name="Source">How we know.</param>
/// <param name="HoldsOn">A day on which it held, for what changes with time; null otherwise.</param>
public sealed record StarterQuestion(
    string Key, string Text, IReadOnlyList<string> Answers, bool ClubsOwn, string? Help, bool Safety, string Source, DateOnly? HoldsOn);

/// <summary>Questions as a TOML text: docs/formats/starter.md.</summary>
public static class QuestionBank
{
    /// <summary>Reads the questions; all of them or none.</summary>
    public static TextReading<IReadOnlyList<StarterQuestion>> Read(string text, string fileName) =>
        WholeFile.Read<IReadOnlyList<StarterQuestion>>(text, fileName, file =>
        {
            var keys = new HashSet<string>(StringComparer.Ordinal);
            return [.. (file.Blocks("question") ?? []).Select(block => Question(block, keys))];
        });

    private static StarterQuestion Question(Fields block, HashSet<string> keys)
    {
        var question = new StarterQuestion(
            block.Needed("key"),
            block.Needed("text"),
            block.Texts("answers") ?? [],
            block.Truth("club"),
            block.Text("help"),
            block.Truth("safety"),
            block.Needed("source"),
            block.Day("holds-on"));
        if (question.Key.Length > 0 && !keys.Add(question.Key)) block.Fault("key", $"{question.Key} stands twice; take one out.");
        if (question.ClubsOwn && question.Answers.Count > 0) block.Fault("answers", "A question about the club is kept without answers here; write them in the club's own copy.");
        if (!question.ClubsOwn && question.Answers.Count == 0) block.Fault("answers", "No answer counts; write at least one, or club = true.");
        block.NothingElse();
        return question;
    }
}
