using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;
using Keikocho.Core.Names;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Tests.Intake;

/// <summary>A small syllabus, five children, four lessons, and short questions about sign-off grids.</summary>
internal static class SignOffGrids
{
    internal static readonly IReadOnlyList<Item> Items =
    [
        new("back-fall", ItemKind.Fall, "Falling backward", Fall: new FallForm(FallDirection.Back, false, 3)),
        new("o-goshi", ItemKind.Throw, "O-goshi", "O-goshi"),
        new("o-goshi-moving", ItemKind.Throw, "O-goshi, moving", "O-goshi"),
        new("de-ashi-barai", ItemKind.Throw, "De-ashi-barai", "De-ashi-barai"),
        new("yoko", ItemKind.HoldDown, "Yoko-shiho-gatame, held for ten seconds", "Yoko-shiho-gatame"),
        new("kuzure", ItemKind.HoldDown, "Kuzure-yoko-shiho-gatame, both sides", "Kuzure-yoko-shiho-gatame"),
        new("out-bridge", ItemKind.Escape, "Out of Yoko-shiho-gatame: bridge and roll"),
        new("out-turn", ItemKind.Escape, "Out of Yoko-shiho-gatame: turn in and kneel"),
        new("ukemi", ItemKind.Word, "Ukemi"),
        new("mate", ItemKind.Word, "Mate"),
    ];

    internal static readonly NameIndex Names = NameIndex.Of(
    [
        new("O-goshi", "おおごし", null, null, "major hip throw", []),
        new("De-ashi-harai", "であしはらい", null, null, null, ["De-ashi-barai"]),
        new("Yoko-shiho-gatame", "よこしほうがため", null, null, null, []),
        new("Kuzure-yoko-shiho-gatame", "くずれよこしほうがため", null, null, null, [], "Yoko-shiho-gatame"),
        new("Tai-otoshi", "たいおとし", null, null, null, []),
    ]);

    internal static readonly KnownPerson[] Known =
    [
        Grids.Known(1, "Ada", "Brook", new(2016, 5, 4)), Grids.Known(2, "Ben", "Quay"), Grids.Known(3, "Cy", "Weir"), Grids.Known(4, "Dot", "Lock"), Grids.Known(5, "Dot", "Sluice"),
    ];

    // A Tuesday and a Thursday in two weeks, and one in March.
    internal static readonly IReadOnlyList<DateOnly> Lessons = [new(2026, 3, 10), new(2026, 11, 10), new(2026, 11, 12), new(2026, 11, 17), new(2026, 11, 24)];

    internal static PersonId Who(int number) => Known[number - 1].Id;

    internal static SignOffQuestion Question(Sheet sheet, Answers? answers = null, IReadOnlyDictionary<(PersonId, string, DateOnly), HeldSeen>? held = null)
        => new(sheet, Grids.Today, Known, ErasedPersons.None, Items, Names, Lessons, held ?? new Dictionary<(PersonId, string, DateOnly), HeldSeen>(), answers ?? Answers.None);

    internal static SignOffReading Read(string grid, Answers? answers = null, IReadOnlyDictionary<(PersonId, string, DateOnly), HeldSeen>? held = null) => Read(Grids.Of(grid), answers, held);

    internal static SignOffReading Read(Sheet sheet, Answers? answers = null, IReadOnlyDictionary<(PersonId, string, DateOnly), HeldSeen>? held = null)
    {
        var question = Question(sheet, answers, held);
        var reading = ReadSignOffs.Read(question);
        Assert.Empty(ReadingCheck.Faults(question, reading));
        return reading;
    }

    internal static IEnumerable<string> Say(this SignOffReading reading)
        => reading.Marks.Select(mark => $"{Known.Single(person => person.Id == mark.Person).Child.GivenName} {mark.Item} {mark.Day.Iso()} {mark.Word}{(mark.Settled ? " settled" : "")} {mark.Standing}");

    /// <summary>What a settled grid leaves held.</summary>
    internal static Dictionary<(PersonId, string, DateOnly), HeldSeen> Held(this SignOffReading reading)
        => reading.Marks.ToDictionary(mark => (mark.Person, mark.Item, mark.Day), mark => new HeldSeen(mark.Word, mark.Settled));
}
