using Keikocho.Core.Kernel;

namespace Keikocho.Core.Club;

/// <summary>What a lesson was for a child who was expected.</summary>
public enum LessonWas
{
    /// <summary>Was there.</summary>
    There = 0,
    /// <summary>Did not come and said nothing.</summary>
    Missed = 1,
    /// <summary>Did not come and told us: neither a miss nor a presence.</summary>
    Excused = 2,
}

/// <summary>One lesson held for a child.</summary>
/// <param name="On">The day.</param>
/// <param name="Was">What it was.</param>
public sealed record HeldLesson(DateOnly On, LessonWas Was);

/// <summary>A child and the lessons held since it joined.</summary>
/// <param name="Child">Who; a key or a name.</param>
/// <param name="InFirstCourse">Still in the first course.</param>
/// <param name="Lessons">Held lessons; an evening without a register is left out.</param>
public sealed record ChildLessons(string Child, bool InFirstCourse, IReadOnlyList<HeldLesson> Lessons);

/// <summary>Who may be slipping away.</summary>
/// <param name="Today">The day asked about.</param>
/// <param name="Children">In register order.</param>
/// <param name="Rule">The figures.</param>
public sealed record SlippingQuestion(DateOnly Today, IReadOnlyList<ChildLessons> Children, SlippingRule Rule);

/// <summary>What a club may set.</summary>
/// <param name="InFirstCourse">Lessons missed running in the first course.</param>
/// <param name="After">Lessons missed running after it.</param>
public sealed record SlippingRule(int InFirstCourse = 2, int After = 3)
{
    private static readonly WholeNumberSetting First = new("slipping.inFirstCourse", "Ring after so many lessons missed running in the first course", 2, "lessons", 1, 10, "the club's own, no source");

    private static readonly WholeNumberSetting Later = new("slipping.after", "Ring after so many lessons missed running after the first course", 3, "lessons", 1, 20, "the club's own, no source");

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [First, Later];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() => [First.Use(InFirstCourse), Later.Use(After)];

    internal void Guard()
    {
        First.Guard(InFirstCourse, nameof(InFirstCourse));
        Later.Guard(After, nameof(After));
    }
}

/// <summary>A family to ring this week.</summary>
/// <param name="Child">Who.</param>
/// <param name="InFirstCourse">Still in the first course.</param>
/// <param name="Missed">Lessons missed running.</param>
/// <param name="Since">The first of them.</param>
/// <param name="LastThere">Last lesson attended; null for none since joining.</param>
/// <param name="Because">Why.</param>
public sealed record RingThisWeek(string Child, bool InFirstCourse, int Missed, DateOnly Since, DateOnly? LastThere, Reason Because);

/// <summary>The list.</summary>
/// <param name="Ring">First course first, then the longest silence, then register order.</param>
/// <param name="Reasons">Why.</param>
/// <param name="Settings">The settings used.</param>
public sealed record SlippingAnswer(IReadOnlyList<RingThisWeek> Ring, IReadOnlyList<Reason> Reasons, IReadOnlyList<SettingUsed> Settings);

/// <summary>Who missed so many lessons running that a kind word is due. Excused lessons count neither way.</summary>
public static class SlippingAway
{
    /// <summary>Makes the list.</summary>
    /// <exception cref="ArgumentException">A lesson after today, or lessons out of order.</exception>
    public static SlippingAnswer List(SlippingQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        NoGaps.In(question.Children, "children");
        var rule = question.Rule ?? new SlippingRule();
        rule.Guard();
        var ring = new List<(int Place, RingThisWeek Line)>();
        for (var place = 0; place < question.Children.Count; place++)
        {
            var child = question.Children[place];
            NoGaps.In(child.Lessons, $"lessons of {child.Child}");
            var (missed, since, last, before) = (0, (DateOnly?)null, (DateOnly?)null, DateOnly.MinValue);
            foreach (var lesson in child.Lessons)
            {
                if (lesson.On > question.Today) throw new ArgumentException($"{child.Child}: the lesson of {lesson.On.Full()} is after {question.Today.Full()}.", nameof(question));
                if (lesson.On < before) throw new ArgumentException($"{child.Child}: the lessons come in the order of their days.", nameof(question));
                before = lesson.On;
                if (lesson.Was == LessonWas.There) (missed, since, last) = (0, null, lesson.On);
                else if (lesson.Was == LessonWas.Missed) (missed, since) = (missed + 1, since ?? lesson.On);
            }

            var limit = child.InFirstCourse ? rule.InFirstCourse : rule.After;
            if (missed >= limit)
                ring.Add((place, new RingThisWeek(child.Child, child.InFirstCourse, missed, since!.Value, last, new MissedRunning(child.Child, child.InFirstCourse, missed, since.Value, last, limit))));
        }

        RingThisWeek[] list = [.. ring.OrderByDescending(r => r.Line.InFirstCourse).ThenBy(r => r.Line.LastThere ?? DateOnly.MinValue).ThenBy(r => r.Place).Select(r => r.Line)];
        return new SlippingAnswer(list, [.. list.Select(r => r.Because)], rule.Used());
    }
}

/// <summary>So many lessons missed running.</summary>
public sealed record MissedRunning(string Child, bool InFirstCourse, int Missed, DateOnly Since, DateOnly? LastThere, int Limit) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"{Child}: {Words.Count(Missed, "lesson")} missed running since {Since.Full()}, {(LastThere is { } last ? $"last there on {last.Full()}" : "never there")}; "
        + $"{Words.Count(Limit, "lesson")} {(InFirstCourse ? "in the first course" : "after the first course")} {Words.Is(Limit)} enough to ring.";
}
