using System.Globalization;
using Keikocho.Core.Evening;

namespace Keikocho.Store.Starter;

/// <summary>A part of a lesson.</summary>
/// <param name="Kind">What it is for.</param>
/// <param name="Name">"Falls".</param>
/// <param name="Minutes">Its length.</param>
/// <param name="Does">What is done.</param>
public sealed record LessonPart(CardPartKind Kind, string Name, int Minutes, string Does);

/// <summary>What to do when something is missing.</summary>
/// <param name="Name">"No mats today".</param>
/// <param name="Does">What is done instead.</param>
public sealed record FallbackPlan(string Name, string Does);

/// <summary>A lesson by the clock.</summary>
/// <param name="Name">"75 minutes".</param>
/// <param name="Minutes">Its whole length.</param>
/// <param name="Parts">In order; their minutes make the whole.</param>
/// <param name="Plans">When something is missing.</param>
public sealed record LessonTemplate(
    string Name, int Minutes, IReadOnlyList<LessonPart> Parts, IReadOnlyList<FallbackPlan> Plans);

/// <summary>A lesson as a TOML text: docs/formats/starter.md.</summary>
public static class LessonText
{
    private static readonly WordList<CardPartKind> Kinds = new(
        ("bow", CardPartKind.Bow), ("warm-up", CardPartKind.WarmUp), ("falls", CardPartKind.Falls), ("slot", CardPartKind.Slot),
        ("game", CardPartKind.Game), ("words", CardPartKind.Words), ("close", CardPartKind.Close));

    /// <summary>Reads a lesson; all of it or nothing.</summary>
    public static TextReading<LessonTemplate> Read(string text, string fileName) => WholeFile.Read(text, fileName, Lesson);

    private static LessonTemplate Lesson(Fields file)
    {
        var lesson = new LessonTemplate(
            file.Needed("name"),
            SyllabusReader.NeededNumber(file, "minutes", least: 1, most: 300),
            [.. (file.Blocks("part") ?? []).Select(Part)],
            [.. (file.Blocks("plan") ?? []).Select(Plan)]);
        var sum = lesson.Parts.Sum(part => part.Minutes);
        if (sum != lesson.Minutes)
            file.Fault("minutes", string.Create(CultureInfo.InvariantCulture, $"The parts make {sum} minutes and not {lesson.Minutes}; mend one of them."));
        var order = lesson.Parts.Select(part => part.Kind).ToList();
        var (falls, slot) = (order.IndexOf(CardPartKind.Falls), order.IndexOf(CardPartKind.Slot));
        if (slot >= 0 && (falls < 0 || falls > slot)) file.Fault("part", "Falls come before the first slot; put them there.");
        return lesson;
    }

    private static LessonPart Part(Fields block)
    {
        var part = new LessonPart(
            block.NeededWord("kind", Kinds), block.Needed("name"), SyllabusReader.NeededNumber(block, "minutes", least: 1, most: 300), block.Needed("does"));
        block.NothingElse();
        return part;
    }

    private static FallbackPlan Plan(Fields block)
    {
        var plan = new FallbackPlan(block.Needed("name"), block.Needed("does"));
        block.NothingElse();
        return plan;
    }
}
