namespace Keikocho.App.Shared;

/// <summary>A club that has told nothing yet: no name, and the zone of this machine.</summary>
public sealed class FirstDayHeading : IClubHeading
{
    /// <inheritdoc/>
    public string Name => "";

    /// <inheritdoc/>
    public string ZoneId { get; } = ClubClock.ZoneOfThisMachine();
}
