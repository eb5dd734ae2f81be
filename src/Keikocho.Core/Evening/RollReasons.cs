using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>Marked here and not marked left.</summary>
/// <param name="At">Arrival; null when nobody noted it.</param>
/// <param name="Lesson">Start of the lesson.</param>
public sealed record MarkedHere(TimeOnly? At, TimeOnly Lesson) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"Marked here at the {Lesson.Plain()} lesson{(At is { } at ? $", came at {at.Plain()}" : "")}, and not marked left.";
}

/// <summary>Left one lesson and is here at another.</summary>
/// <param name="LeftLesson">Start of the lesson that was left.</param>
/// <param name="LeftAt">When; null when nobody noted it.</param>
/// <param name="HereAt">Start of the lesson of the presence.</param>
public sealed record LeftOneLessonHereAtAnother(TimeOnly LeftLesson, TimeOnly? LeftAt, TimeOnly HereAt) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"Left the {LeftLesson.Plain()} lesson{(LeftAt is { } at ? $" at {at.Plain()}" : "")}, but marked here at the {HereAt.Plain()} lesson.";
}

/// <summary>Is to leave later; until then on the roll.</summary>
/// <param name="At">The time that was marked.</param>
public sealed record LeavesLater(TimeOnly At) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"The leaving is marked for {At.Plain()}, which is still to come.";
}

/// <summary>One device marked a leaving, another a later arrival.</summary>
/// <param name="Arrived">The arrival.</param>
/// <param name="LeftAt">The leaving.</param>
public sealed record ArrivedAfterLeaving(TimeOnly Arrived, TimeOnly LeftAt) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"Left at {LeftAt.Plain()} on one device, but here at {Arrived.Plain()} on another: may have come back, look.";
}

/// <summary>Marked left.</summary>
/// <param name="At">When; null when nobody noted it.</param>
/// <param name="Lesson">Start of the lesson.</param>
public sealed record MarkedLeft(TimeOnly? At, TimeOnly Lesson) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"Left the {Lesson.Plain()} lesson{(At is { } at ? $" at {at.Plain()}" : "; nobody noted when")}.";
}

/// <summary>The counts of the roll.</summary>
/// <param name="Children">Children on the premises.</param>
/// <param name="Adults">Adults on the premises.</param>
/// <param name="Gone">People who have left.</param>
/// <param name="NotMarked">People whom nobody has marked.</param>
/// <param name="People">Everybody asked about.</param>
/// <param name="Now">The time of the roll.</param>
public sealed record RollCounts(int Children, int Adults, int Gone, int NotMarked, int People, TimeOnly Now) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var counts = $"At {Now.Plain()} {Words.Count(Children, "child", "children")} and {Words.Count(Adults, "adult")} of {Words.Count(People, "person", "people")} {Words.Is(Children + Adults)} on the premises; {Gone} {(Gone == 1 ? "has" : "have")} left.";
            return NotMarked == 0 ? counts : $"{counts} Nobody has marked {NotMarked} of the {People}: look for them too.";
        }
    }
}
