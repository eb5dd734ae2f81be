namespace Keikocho.Core.Calendar;

/// <summary>Days on which the club holds no lessons.</summary>
/// <param name="From">First day.</param>
/// <param name="To">Last day, included.</param>
/// <param name="Name">What it is called: "Spring break", "Hall lost".</param>
/// <param name="Programme">The one programme it closes; null for all.</param>
public sealed record Closure(DateOnly From, DateOnly To, string Name, string? Programme = null)
{
    /// <summary>Whether a lesson of <paramref name="programme"/> on <paramref name="day"/> falls out.</summary>
    public bool Covers(DateOnly day, string programme) =>
        day >= From && day <= To && (Programme is null || string.Equals(Programme, programme, StringComparison.Ordinal));
}
