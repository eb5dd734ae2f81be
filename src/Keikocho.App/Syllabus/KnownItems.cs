using Keikocho.App.Club;
using Keikocho.Core.Syllabus;

namespace Keikocho.App.Syllabus;

/// <summary>Items that a form proposes by name: those of the club's editions first, then those of the sample ladders.</summary>
public static class KnownItems
{
    /// <summary>Each name once.</summary>
    public static IReadOnlyList<Item> Of(OpenClub club)
    {
        ArgumentNullException.ThrowIfNull(club);
        var own = club.Book.Programmes.Select(p => club.Book.NewestEdition(p.LadderId)).OfType<Keikocho.Store.Syllabus.PublishedEdition>().SelectMany(e => e.Edition.Items);
        return [.. own.Concat(SampleLadders.All.SelectMany(s => s.Edition.Items)).DistinctBy(i => i.Name, StringComparer.OrdinalIgnoreCase)];
    }
}
