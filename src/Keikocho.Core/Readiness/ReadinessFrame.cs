using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>The parts of one question, guarded and laid out once.</summary>
internal sealed record ReadinessFrame
{
    private ReadinessFrame(ReadinessParts parts, DateOnly[] lessons, DateOnly[] evenings, Dictionary<string, ItemSeen> seen, Blocks blocks)
    {
        Parts = parts;
        Lessons = lessons;
        Evenings = evenings;
        Seen = seen;
        Blocks = blocks;
        LessonsLeft = parts.Clock.Left ?? lessons.Length;
        FreshFrom = parts.TestOn.AddDays(-parts.Rule.CriticalFreshDays);
        Harder = HarderForms.Of(parts);
        Credited = [.. parts.Evidence.CreditedItems];
    }

    public ReadinessParts Parts { get; }

    /// <summary>Lessons left, in order; a day with two lessons is there twice.</summary>
    public DateOnly[] Lessons { get; }

    /// <summary>Days of the lessons left, each once.</summary>
    public DateOnly[] Evenings { get; }

    public Dictionary<string, ItemSeen> Seen { get; }

    public Blocks Blocks { get; }

    public int LessonsLeft { get; }

    /// <summary>The last sighting of a fall or a critical item is on or after this day.</summary>
    public DateOnly FreshFrom { get; }

    public Dictionary<string, List<string>>? Harder { get; }

    public HashSet<string> Credited { get; }

    public DateOnly AsOf => Parts.AsOf;

    public DateOnly TestOn => Parts.TestOn;

    public static ReadinessFrame Of(ReadinessParts parts)
    {
        Guard(parts);
        var lessons = parts.LessonsLeft.ToArray();
        Array.Sort(lessons);
        DateOnly[] evenings = [.. lessons.Distinct()];
        if (evenings.Length > 0 && (evenings[0] <= parts.AsOf || evenings[^1] >= parts.TestOn))
            throw Slip($"A lesson left is after {parts.AsOf.Full()} and before the test on {parts.TestOn.Full()}; {(evenings[0] <= parts.AsOf ? evenings[0] : evenings[^1]).Full()} is not.");
        if (parts.Clock.Left is { } left && left > lessons.Length)
            throw Slip($"The clock has {Words.Count(left, "lesson")} left and the list of lessons left has {lessons.Length}; give the days of all of them.");
        var seen = new Dictionary<string, ItemSeen>(parts.Evidence.Seen.Count, StringComparer.Ordinal);
        foreach (var item in parts.Evidence.Seen)
        {
            if (!seen.TryAdd(item.Item, item))
                throw Slip($"The item {item.Item} is twice in what was seen; give its evenings once.");
        }

        return new ReadinessFrame(parts, lessons, evenings, seen, Blocks.Of(parts.StandDowns, parts.AsOf, parts.TestOn));
    }

    /// <summary>Evenings left after a day.</summary>
    public int EveningsAfter(DateOnly day) => CountAfter(Evenings, day);

    /// <summary>Lessons left after a day, at most as many as count.</summary>
    public int LessonsAfter(DateOnly day) => Math.Min(LessonsLeft, CountAfter(Lessons, day));

    /// <summary>The last evening left is late enough for something that must be fresh.</summary>
    public bool CanBeFresh => Evenings.Length > 0 && Evenings[^1] >= FreshFrom;

    private static int CountAfter(DateOnly[] days, DateOnly day)
    {
        var from = 0;
        while (from < days.Length && days[from] <= day)
            from++;
        return days.Length - from;
    }

    private static void Guard(ReadinessParts parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        parts.Rule.Guard();
        parts.GateRule.Guard();
        NoGaps.In(parts.Evidence.Seen, "items seen");
        NoGaps.In(parts.Evidence.Falls, "falls");
        NoGaps.In(parts.StandDowns, "stand-downs");
        NoGaps.In(parts.Sheet.Lines, "lines of the sheet");
        if (parts.TestOn < parts.AsOf)
            throw Slip($"The test on {parts.TestOn.Full()} is before {parts.AsOf.Full()}: ask about the next test.");
        if (parts.NextTestOn <= parts.TestOn)
            throw Slip($"The next test on {parts.NextTestOn.Value.Full()} is not after the test on {parts.TestOn.Full()}.");
        if (parts.Sheet.TestOn != parts.TestOn)
            throw Slip($"The sheet is for a test on {parts.Sheet.TestOn.Full()} and the question for one on {parts.TestOn.Full()}; make the sheet for the same test.");
        if (parts.Papers.Born > parts.AsOf)
            throw Slip($"The birth date {parts.Papers.Born.Value.Full()} is after {parts.AsOf.Full()}; mend it.");
        if (parts.Papers.ReductionPercent is < 0 or > 100)
            throw Slip("The share of the least time that is taken off is from 0 to 100 percent.");
        if (parts.Papers.ReductionPercent > 0 && string.IsNullOrWhiteSpace(parts.Papers.ReductionWhy))
            throw Slip("A share of the least time is taken off without a reason; write why.");
        if (parts.LikelyPercent is < 50 or > 99)
            throw Slip("Lessons are likely from 50 to 99 percent.");
        foreach (var line in parts.Sheet.Lines)
        {
            if (line.Count < 0 || line.Count > line.Items.Count)
                throw Slip($"The line \"{line.Title}\" asks {line.Count} of {Words.Count(line.Items.Count, "item")}; mend the sheet.");
            foreach (var item in line.Items)
            {
                if (item.Item.Kind == ItemKind.Fall != (item.Item.Fall is not null))
                    throw Slip($"{item.Item.Name} is a fall without its direction and stage, or has them without being one; mend the item.");
                if (item.Item.Fall is { Stage: < 1 or > 6 })
                    throw Slip($"{item.Item.Name} asks a stage that is not from 1 to 6; mend the item.");
            }
        }
    }

    internal static ArgumentException Slip(string sentence) => new(sentence);
}
