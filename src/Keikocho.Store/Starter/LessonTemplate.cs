using System.Globalization;

namespace Keikocho.Store.Starter;

/// <summary>A part of a lesson.</summary>
/// <param name="Name">"Falls".</param>
/// <param name="Minutes">Its length.</param>
/// <param name="Does">What is done.</param>
public sealed record LessonPart(string Name, int Minutes, string Does);

/// <summary>A game for the warm-up.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Space">How much mat.</param>
/// <param name="Children">For how many.</param>
/// <param name="Contact">How much contact; never above the shoulders.</param>
/// <param name="Does">How it goes.</param>
/// <param name="Clears">Which skill it practises.</param>
public sealed record LessonGame(string Name, string Space, string Children, string Contact, string Does, string Clears);

/// <summary>What to do when something is missing.</summary>
/// <param name="Name">"No mats today".</param>
/// <param name="Does">What is done instead.</param>
public sealed record FallbackPlan(string Name, string Does);

/// <summary>A lesson by the clock.</summary>
/// <param name="Name">"75 minutes".</param>
/// <param name="Minutes">Its whole length.</param>
/// <param name="Parts">In order; their minutes make the whole.</param>
/// <param name="Games">Games for the warm-up.</param>
/// <param name="Plans">When something is missing.</param>
public sealed record LessonTemplate(
    string Name, int Minutes, IReadOnlyList<LessonPart> Parts, IReadOnlyList<LessonGame> Games, IReadOnlyList<FallbackPlan> Plans);

/// <summary>A lesson as a TOML text: docs/formats/starter.md.</summary>
public static class LessonText
{
    /// <summary>Reads a lesson; all of it or nothing.</summary>
    public static TextReading<LessonTemplate> Read(string text, string fileName) => WholeFile.Read(text, fileName, Lesson);

    private static LessonTemplate Lesson(Fields file)
    {
        var lesson = new LessonTemplate(
            file.Needed("name"),
            SyllabusReader.NeededNumber(file, "minutes", least: 1, most: 300),
            [.. (file.Blocks("part") ?? []).Select(Part)],
            [.. (file.Blocks("game") ?? []).Select(Game)],
            [.. (file.Blocks("plan") ?? []).Select(Plan)]);
        var sum = lesson.Parts.Sum(part => part.Minutes);
        if (sum != lesson.Minutes)
            file.Fault("minutes", string.Create(CultureInfo.InvariantCulture, $"The parts make {sum} minutes and not {lesson.Minutes}; mend one of them."));
        return lesson;
    }

    private static LessonPart Part(Fields block)
    {
        var part = new LessonPart(block.Needed("name"), SyllabusReader.NeededNumber(block, "minutes", least: 1, most: 300), block.Needed("does"));
        block.NothingElse();
        return part;
    }

    private static LessonGame Game(Fields block)
    {
        var game = new LessonGame(
            block.Needed("name"), block.Needed("space"), block.Needed("children"), block.Needed("contact"), block.Needed("does"), block.Needed("clears"));
        block.NothingElse();
        return game;
    }

    private static FallbackPlan Plan(Fields block)
    {
        var plan = new FallbackPlan(block.Needed("name"), block.Needed("does"));
        block.NothingElse();
        return plan;
    }
}
