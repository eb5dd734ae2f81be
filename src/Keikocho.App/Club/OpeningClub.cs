using Keikocho.App.Commands;
using Keikocho.App.Hosting;
using Keikocho.App.Shared;

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

        // The book is read while the server opens its door; the first page finds it, or waits for the rest of it.
        _ = Task.Run(ReadAhead, CancellationToken.None);
    }

    private void ReadAhead()
    {
        try
        {
            using var reading = house.Engine.OpenReading();
            if (house.Books.Now(reading, Guid.Empty, new ClubClock(time, heading.ZoneId).Today) is { } now)
                heading.Take(now.Book.Club.Name, now.Book.Club.Zone);
        }
        catch (System.Data.Common.DbException)
        {
            // The first page asks again, and its reader is told what is wrong.
        }
    }
}
