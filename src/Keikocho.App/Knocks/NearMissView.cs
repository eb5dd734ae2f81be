using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Safety;

namespace Keikocho.App.Knocks;

/// <summary>A near miss on a list.</summary>
/// <param name="Words">What happened.</param>
/// <param name="Line">When, what was going on, who wrote it.</param>
public sealed record NearMissView(string Words, string Line)
{
    /// <summary>Those from one day to another, newest first.</summary>
    public static ImmutableArray<NearMissView> Between(OpenClub club, DateOnly from, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(club);
        return [.. NearMissReader.Between(club.Reading, from, to).Select(n => new NearMissView(
            n.Words,
            $"{n.On.Full()}{(n.At is { } at ? $", about {at.Plain()}" : "")}, {KnockActivities.Words(n.Activity)}, written by {(club.Book.Person(n.ById) is { IsErased: false } adult ? adult.FullName : "an adult whose name was erased")}"))];
    }
}
