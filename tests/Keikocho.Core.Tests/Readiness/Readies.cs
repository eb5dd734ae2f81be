using Keikocho.Core.Attendance;
using Keikocho.Core.Calendar;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Readiness;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Tests.Readiness;

/// <summary>An autumn of a Tuesday class: the evening just closed is 3 November 2026, the test 8 December, four lessons left.</summary>
internal static class Readies
{
    public static readonly DateOnly AsOf = Day(11, 3);
    public static readonly DateOnly TestOn = Day(12, 8);
    public static readonly DateOnly NextTestOn = new(2027, 3, 23);
    public static readonly DateOnly[] Left = [Day(11, 10), Day(11, 17), Day(11, 24), Day(12, 1)];
    public static readonly DateOnly[] Tuesdays = [Day(9, 8), Day(9, 15), Day(9, 22), Day(9, 29), Day(10, 6), Day(10, 13), Day(10, 20), Day(11, 3)];

    public static DateOnly Day(int month, int day) => new(2026, month, day);

    public static Item Throw(string key, string name, params string[] covers) => new(key, ItemKind.Throw, name, name, Covers: covers.Length == 0 ? null : covers);

    public static Item Thing(ItemKind kind, string key, string name) => new(key, kind, name);

    public static Item Fall(string key, string name, FallDirection direction, int stage, bool bothSides = false) =>
        new(key, ItemKind.Fall, name, Fall: new FallForm(direction, bothSides, stage));

    public static SheetLine All(params Item[] items) => Line(items.Length, items);

    public static SheetLine Line(int count, params Item[] items) => new(
        string.Join('+', items.Select(i => i.Key)), SheetPart.Standing, count, [.. items.Select(i => new SheetItem(i))],
        string.Join(", ", items.Select(i => i.Name)), null, false, Carry.ThisRank, null, null);

    public static RequirementSheet Sheet(params SheetLine[] lines) => new(
        "yellow-2", "Yellow, two red tips", "Yellow, one red tip", "edition 1", Day(1, 1), null, null, TestOn, lines, new Minima(Lessons: 10), null, [], [], []);

    public static ItemSeen Good(string item, params DateOnly[] days) => new(item, [.. days.Select(d => SeenOn(d, SeenWord.Good))]);

    public static SeenEvening SeenOn(DateOnly on, SeenWord? word, bool confirmed = true, bool settled = false) =>
        new(on, word, confirmed, settled, word is { } w ? [w] : [SeenWord.Good, SeenWord.NotYet]);

    public static FallMark Clean(DateOnly on, FallDirection direction, FallSide side, int stage, bool confirmed = true) => new(on, direction, side, stage, true, confirmed);

    public static FallMark Touched(DateOnly on, FallDirection direction, FallSide side, int stage) => new(on, direction, side, stage, false);

    /// <summary>A clock with so many lessons attended since the promotion on 7 July 2026.</summary>
    public static ClockAnswer Clocked(int attended, int held = 12, DateOnly[]? left = null)
    {
        var lessons = new List<ClockLesson>();
        for (var i = 0; i < held; i++)
            lessons.Add(new ClockLesson(
                Day(7, 8).AddDays(i * 5), i < attended ? AttendanceState.Untouched with { Word = AttendanceWord.Present, Counts = true, Ukemi = true } : null));
        lessons.AddRange((left ?? Left).Select(d => new ClockLesson(d)));
        return Clock.Reckon(new ClockSnapshot(AsOf, Day(7, 7), ClockStart.Promotion, new ClockRule(0, 0), lessons, TestOn, NextTestOn));
    }

    public static ReadinessParts Parts(int attended, RequirementSheet sheet, params ItemSeen[] seen) => new(
        AsOf, TestOn, NextTestOn, Clocked(attended), sheet, new Evidence(seen, [], Tuesdays, [], Day(7, 7)), [],
        new TestPapers(new DateOnly(2016, 5, 14), true, new DateOnly(2027, 3, 31)), new BetaPrior(7, 3, 0, PriorSource.TooFewChildren), Left, null,
        new FallGateRule(), new ReadinessRule());

    public static ReadinessParts With(this ReadinessParts parts, params FallMark[] falls) => parts with { Evidence = parts.Evidence with { Falls = falls } };

    public static ReadinessParts Under(this ReadinessParts parts, params StandDown[] standDowns) => parts with { StandDowns = standDowns };

    public static string[] Said(this IEnumerable<Reason> reasons) => [.. reasons.Select(r => r.Sentence)];
}
