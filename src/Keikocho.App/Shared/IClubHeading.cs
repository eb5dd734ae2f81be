namespace Keikocho.App.Shared;

/// <summary>The little that every page needs to know of the club. Read on every request, so it answers from memory.</summary>
public interface IClubHeading
{
    /// <summary>The club's name; empty until it has one.</summary>
    string Name { get; }

    /// <summary>The club's time zone, an IANA name that <see cref="ClubClock.Knows"/> knows.</summary>
    string ZoneId { get; }
}
