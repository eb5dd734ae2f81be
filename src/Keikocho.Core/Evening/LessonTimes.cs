namespace Keikocho.Core.Evening;

/// <summary>The hours of one lesson, local to the hall.</summary>
/// <param name="Start">The bow.</param>
/// <param name="End">The bow out; after <paramref name="Start"/>.</param>
/// <param name="UkemiFrom">Start of the falls practice.</param>
/// <param name="UkemiTo">End of the falls practice.</param>
/// <param name="HalfTime">On the mat before this time counts as a lesson attended (C1).</param>
public sealed record LessonTimes(TimeOnly Start, TimeOnly End, TimeOnly UkemiFrom, TimeOnly UkemiTo, TimeOnly HalfTime);
