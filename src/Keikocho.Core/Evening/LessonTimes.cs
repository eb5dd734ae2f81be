using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>The hours of one lesson, local to the hall.</summary>
/// <param name="Start">The bow.</param>
/// <param name="End">The bow out; after <paramref name="Start"/>.</param>
/// <param name="UkemiFrom">Start of the falls practice.</param>
/// <param name="UkemiTo">End of the falls practice.</param>
/// <param name="HalfTime">On the mat before this time counts as a lesson attended.</param>
public sealed record LessonTimes(TimeOnly Start, TimeOnly End, TimeOnly UkemiFrom, TimeOnly UkemiTo, TimeOnly HalfTime)
{
    /// <summary>Throws when the times are out of order: start, half time, end; falls practice from, to.</summary>
    /// <exception cref="ArgumentException">A time is out of order.</exception>
    public void Guard()
    {
        if (End <= Start)
            throw new ArgumentException($"A lesson ends after it starts: {Start.Plain()} to {End.Plain()}.", nameof(End));
        if (UkemiTo < UkemiFrom)
            throw new ArgumentException($"The falls practice ends after it starts: {UkemiFrom.Plain()} to {UkemiTo.Plain()}.", nameof(UkemiTo));
        if (HalfTime <= Start || HalfTime > End)
            throw new ArgumentException($"Half time lies within the lesson: {HalfTime.Plain()} in {Start.Plain()} to {End.Plain()}.", nameof(HalfTime));
    }
}
