using Keikocho.App.Shared;

namespace Keikocho.App.Club;

/// <summary>Name and zone of the club, from memory; taken from the book whenever a request opens it.</summary>
public sealed class ClubHeading : IClubHeading
{
    private volatile Heading now = new("", ClubClock.ZoneOfThisMachine());

    /// <inheritdoc/>
    public string Name => now.Name;

    /// <inheritdoc/>
    public string ZoneId => now.ZoneId;

    /// <summary>Takes what the book says.</summary>
    public void Take(string name, string zoneId)
    {
        if (now.Name == name && now.ZoneId == zoneId) return;
        now = new Heading(name, ClubClock.Knows(zoneId) ? zoneId : now.ZoneId);
    }

    private sealed record Heading(string Name, string ZoneId);
}
