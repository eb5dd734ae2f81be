using Keikocho.App.Commands;
using Keikocho.App.Hosting;

namespace Keikocho.App.Club;

/// <summary>Before the first page: the file is brought to this version's shape, the demo club is made, the heading is read.</summary>
public sealed class OpeningClub(ClubHouse house, ServedClub served, TimeProvider time, ClubHeading heading)
{
    /// <summary>Opens it, before the address is open to anybody.</summary>
    public async Task OpenAsync(CancellationToken cancellationToken)
    {
        await EngineChoice.DemandReachableAsync(house.Engine, cancellationToken);
        if (served.IsDemo) await DemoOfToday.MakeAsync(house.Engine, time, cancellationToken);
        await house.Engine.UpgradeAsync(time.GetUtcNow(), cancellationToken);

        await using var db = house.Engine.OpenDb();
        if (db.Clubs.FirstOrDefault() is { } club) heading.Take(club.Name, club.Zone);
    }
}
