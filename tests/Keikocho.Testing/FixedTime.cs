using System.Globalization;

namespace Keikocho.Testing;

/// <summary>
/// A clock that stands still until a test moves it. Timers made from it wait in real time: give what is tested its instants, not waits.
/// </summary>
/// <param name="now">What the clock says first; kept as UTC.</param>
/// <param name="zone">What the clock says the local zone is; UTC when not given.</param>
public sealed class FixedTime(DateTimeOffset now, TimeZoneInfo? zone = null) : TimeProvider
{
    private long utcTicks = now.UtcTicks;

    /// <summary>A clock at a time of day in UTC, written "2026-03-03T17:30".</summary>
    public static FixedTime At(string utc) =>
        new(DateTimeOffset.Parse(utc, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal));

    /// <inheritdoc />
    public override TimeZoneInfo LocalTimeZone { get; } = zone ?? TimeZoneInfo.Utc;

    /// <inheritdoc />
    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    /// <inheritdoc />
    public override DateTimeOffset GetUtcNow() => new(Interlocked.Read(ref utcTicks), TimeSpan.Zero);

    /// <inheritdoc />
    public override long GetTimestamp() => Interlocked.Read(ref utcTicks);

    /// <summary>Sets the clock, forward or back: a laptop's clock can be wrong in both directions.</summary>
    public void Set(DateTimeOffset to) => Interlocked.Exchange(ref utcTicks, to.UtcTicks);

    /// <summary>Moves the clock by <paramref name="by"/> (negative moves it back) and gives the new instant.</summary>
    public DateTimeOffset Step(TimeSpan by) => new(Interlocked.Add(ref utcTicks, by.Ticks), TimeSpan.Zero);
}
