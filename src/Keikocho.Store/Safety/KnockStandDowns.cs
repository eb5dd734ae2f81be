using Keikocho.Core.Safety;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Safety;

/// <summary>Which stand-downs belong to knocks: their ids follow from the knock's, so that no column is needed and no two devices make two.</summary>
public static class KnockStandDowns
{
    /// <summary>The stand-down that a knock brings, or a line that says that symptoms came back.</summary>
    public static Guid OffTheMat(Guid cause) => AnotherId.Of(cause, "off the mat");

    /// <summary>The one that takes the place of "off the mat" when drills come back.</summary>
    public static Guid NoContact(Guid offTheMat) => AnotherId.Of(offTheMat, "no contact");

    /// <summary>Those of these stand-downs that belong to these knocks.</summary>
    public static IReadOnlyList<HeldStandDown> Of(IEnumerable<HeldKnock> knocks, IEnumerable<HeldStandDown> standDowns)
    {
        ArgumentNullException.ThrowIfNull(knocks);
        ArgumentNullException.ThrowIfNull(standDowns);
        var off = knocks.SelectMany(k => k.Lines.Where(l => l.Kind == KnockLine.SymptomsAgain).Select(l => l.Id).Prepend(k.Id)).Select(OffTheMat).ToHashSet();
        return [.. standDowns.Where(s => off.Contains(s.Id) || (s.Scope == StandDownScope.NoContact && off.Any(o => NoContact(o) == s.Id)))];
    }
}
