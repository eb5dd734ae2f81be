using System.Globalization;
using Keikocho.App.Shared;

namespace Keikocho.App.Tests.Time;

public sealed class ClubClockTests
{
    [Theory]
    [InlineData("2026-03-03T23:30:00Z", "Europe/London", "2026-03-03", "23:30")]
    [InlineData("2026-07-03T23:30:00Z", "Europe/London", "2026-07-04", "00:30")]
    [InlineData("2026-03-03T23:30:00Z", "Asia/Tokyo", "2026-03-04", "08:30")]
    [InlineData("2026-03-03T02:30:00Z", "America/New_York", "2026-03-02", "21:30")]
    [InlineData("2026-03-03T12:00:59.999Z", "Etc/UTC", "2026-03-03", "12:00")]
    public void The_day_and_the_hour_are_the_clubs(string now, string zone, string day, string time)
    {
        var clock = new ClubClock(new StoppedTime(now), zone);
        Assert.Equal(DateOnly.Parse(day, CultureInfo.InvariantCulture), clock.Today);
        Assert.Equal(TimeOnly.Parse(time, CultureInfo.InvariantCulture), clock.LocalTime);
    }

    [Fact]
    public void Now_is_in_whole_milliseconds_of_UTC()
    {
        var now = new ClubClock(new StoppedTime("2026-03-03T12:00:00.1239876+01:00"), "Europe/Paris").Now;
        Assert.Equal(TimeSpan.Zero, now.Offset);
        Assert.Equal("2026-03-03T11:00:00.1230000+00:00", now.ToString("O", CultureInfo.InvariantCulture));
    }

    // Dates of the changes: Directive 2000/84/EC (last Sundays of March and October, 01:00 UTC); 15 U.S.C. 260a (second Sunday of
    // March and first of November, 2 o'clock local time).
    [Theory]
    [InlineData("Europe/London", "2026-03-29", "00:59", "2026-03-29T00:59:00Z")]
    [InlineData("Europe/London", "2026-03-29", "01:30", "2026-03-29T01:30:00Z")] // left out: moved on to 02:30
    [InlineData("Europe/London", "2026-03-29", "02:00", "2026-03-29T01:00:00Z")]
    [InlineData("Europe/London", "2026-03-29", "17:30", "2026-03-29T16:30:00Z")]
    [InlineData("Europe/London", "2026-10-25", "01:30", "2026-10-25T00:30:00Z")] // comes twice: the first
    [InlineData("Europe/London", "2026-10-25", "17:30", "2026-10-25T17:30:00Z")]
    [InlineData("America/New_York", "2026-03-08", "02:30", "2026-03-08T07:30:00Z")] // left out: moved on to 03:30
    [InlineData("America/New_York", "2026-11-01", "01:30", "2026-11-01T05:30:00Z")] // comes twice: the first
    public void A_day_and_time_becomes_an_instant_also_when_the_clocks_change(string zone, string day, string time, string instant)
    {
        var clock = new ClubClock(TimeProvider.System, zone);
        var expected = DateTimeOffset.Parse(instant, CultureInfo.InvariantCulture);
        Assert.Equal(expected, clock.ToInstant(DateOnly.Parse(day, CultureInfo.InvariantCulture), TimeOnly.Parse(time, CultureInfo.InvariantCulture)));
    }

    [Fact]
    public void Every_listed_zone_is_known_and_the_list_is_in_order()
    {
        Assert.All(ClubClock.Zones, zone => Assert.True(ClubClock.Knows(zone)));
        Assert.Contains("Europe/London", ClubClock.Zones);
        Assert.Contains("Asia/Tokyo", ClubClock.Zones);
        Assert.Equal(ClubClock.Zones.Distinct(), ClubClock.Zones);
        Assert.True(ClubClock.Knows(ClubClock.ZoneOfThisMachine()));
    }

    [Fact]
    public void A_zone_that_does_not_exist_is_misuse() => Assert.Throws<ArgumentException>(() => new ClubClock(TimeProvider.System, "Europe/Nowhere"));

    private sealed class StoppedTime(string now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => DateTimeOffset.Parse(now, CultureInfo.InvariantCulture);
    }
}
