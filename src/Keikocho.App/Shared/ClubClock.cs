using NodaTime;
using NodaTime.TimeZones;

namespace Keikocho.App.Shared;

/// <summary>
/// The club's clock: the day and the hour where the club is. The rules of the zones come with the program, not from the machine,
/// so that every machine gives the same answer.
/// </summary>
public sealed class ClubClock
{
    private readonly TimeProvider _time;
    private readonly DateTimeZone _zone;

    /// <summary>A clock for a zone.</summary>
    /// <param name="time">Where the instant comes from.</param>
    /// <param name="zoneId">An IANA name, "Europe/London".</param>
    /// <exception cref="ArgumentException">There is no such zone.</exception>
    public ClubClock(TimeProvider time, string zoneId)
    {
        ArgumentNullException.ThrowIfNull(time);
        _time = time;
        _zone = DateTimeZoneProviders.Tzdb.GetZoneOrNull(zoneId)
            ?? throw new ArgumentException($"There is no time zone '{zoneId}'.", nameof(zoneId));
    }

    /// <summary>The zone's IANA name.</summary>
    public string ZoneId => _zone.Id;

    /// <summary>Now, in UTC, in whole milliseconds: what the store keeps comes back the same.</summary>
    public DateTimeOffset Now => DateTimeOffset.FromUnixTimeMilliseconds(_time.GetUtcNow().ToUnixTimeMilliseconds());

    /// <summary>Today, where the club is.</summary>
    public DateOnly Today => DayOf(Now);

    /// <summary>The time of day where the club is, in whole minutes.</summary>
    public TimeOnly LocalTime => TimeOf(Now);

    /// <summary>The day of an instant, where the club is.</summary>
    public DateOnly DayOf(DateTimeOffset instant) => Local(instant).Date.ToDateOnly();

    /// <summary>The time of day of an instant where the club is, cut to the minute.</summary>
    public TimeOnly TimeOf(DateTimeOffset instant)
    {
        var local = Local(instant);
        return new TimeOnly(local.Hour, local.Minute);
    }

    /// <summary>
    /// The instant of a day and time at the club, in UTC. A time that a change of the clocks leaves out is moved on by as much as the
    /// clocks are; of a time that comes twice the first is meant.
    /// </summary>
    public DateTimeOffset ToInstant(DateOnly day, TimeOnly time) =>
        _zone.AtLeniently(LocalDate.FromDateOnly(day).At(NodaTime.LocalTime.FromTimeOnly(time))).ToInstant().ToDateTimeOffset();

    /// <summary>The zones to choose from, in the order of their names.</summary>
    public static IReadOnlyList<string> Zones { get; } =
    [
        .. TzdbDateTimeZoneSource.Default.ZoneLocations!.Select(place => place.ZoneId).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
        "Etc/UTC",
    ];

    /// <summary>Whether there is such a zone.</summary>
    public static bool Knows(string zoneId) => DateTimeZoneProviders.Tzdb.GetZoneOrNull(zoneId) is not null;

    /// <summary>The zone this machine is set to, or UTC where it does not say one that is known.</summary>
    public static string ZoneOfThisMachine()
    {
        try
        {
            return DateTimeZoneProviders.Tzdb.GetSystemDefault().Id;
        }
        catch (DateTimeZoneNotFoundException)
        {
            return "Etc/UTC";
        }
    }

    private LocalDateTime Local(DateTimeOffset instant) => Instant.FromDateTimeOffset(instant).InZone(_zone).LocalDateTime;
}
