using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;

namespace Keikocho.App.Sightings;

/// <summary>One child's row.</summary>
/// <param name="Child">Who.</param>
/// <param name="Stands">What stands for this way and stage on this evening; null for nothing.</param>
/// <param name="Touched">A touched head stands: a clean fall changes nothing about it.</param>
/// <param name="Gate">The gate of this way in words.</param>
public sealed record FallRowView(GridChild Child, string? Stands, bool Touched, string Gate);

/// <summary>Falls of an evening in one way at one stage.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="Line">Programme and day.</param>
/// <param name="Lessons">Lessons to choose from.</param>
/// <param name="Way">Which way.</param>
/// <param name="Stage">Which stage.</param>
/// <param name="Exists">Whether there is such a fall.</param>
/// <param name="Children">Whom it holds.</param>
/// <param name="Rows">A row a child.</param>
public sealed record FallsView(
    LessonRow Lesson,
    string Line,
    IReadOnlyList<(string Value, string Words)> Lessons,
    FallWay Way,
    int Stage,
    bool Exists,
    EveningChildren Children,
    ImmutableArray<FallRowView> Rows)
{
    /// <summary>Reads it.</summary>
    public static FallsView Of(OpenClub club, LessonRow lesson, MatEnd? end, FallWay way, int stage)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        var children = EveningChildren.Of(club, lesson, end);
        var seen = EvidenceReader.Of(club.Reading, [.. children.Children.Select(c => c.PersonId)], null, lesson.Date);
        return new FallsView(
            lesson,
            $"{club.Book.Programme(lesson.ProgrammeId)!.Name}, {lesson.Date.WithWeekday()}",
            LessonChoice.List(club, lesson),
            way,
            stage,
            FallForms.Exists(way, stage),
            children,
            [.. children.Children.Select(c => Row(club, lesson, c, seen[c.PersonId], way, stage))]);
    }

    private static FallRowView Row(OpenClub club, LessonRow lesson, GridChild child, ChildEvidence evidence, FallWay way, int stage)
    {
        var own = evidence.Falls.Where(f => f.On == lesson.Date && f.Direction == way.Direction && f.Side == way.Side && f.Stage == stage).ToList();
        var touched = own.Any(f => !f.Clean);
        var words = own.Count == 0 ? null : $"{(touched ? "head touched" : "clean")}{(own.All(f => !f.Confirmed) ? ", suggested" : "")}";
        return new FallRowView(child, words, touched, GateLine(ChildGates.Of(club.Book, evidence, lesson.Date).Of(way)));
    }

    /// <summary>"open to stage 3 (standing)", "shut".</summary>
    public static string GateLine(WayGate gate)
    {
        ArgumentNullException.ThrowIfNull(gate);
        return gate.OpenTo == 0 ? "shut" : $"open to {FallWords.Stage(gate.OpenTo)}";
    }
}
