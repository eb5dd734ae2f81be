using Keikocho.Core.Safety;

namespace Keikocho.Core.Evening;

/// <summary>What a child does, in the words of a card. A shut gate is never thrown, and no word says why.</summary>
internal static class CardRoles
{
    // Somebody else has a hand in every fall from the fourth stage on.
    private const int WithAPartner = 4;

    /// <summary>For the list of who is there.</summary>
    public static string Tonight(CardChild child)
    {
        if (!child.MayBeOnTheMat) return RoleWords.Watches;
        if (!child.MayHaveContact) return RoleWords.MovementAlone;
        if (!child.MayFall) return RoleWords.ToriOnly;
        var thrown = FallWay.All.Where(w => w.Direction != FallDirection.Front).ToArray();
        var open = thrown.Where(w => child.Gates?.Any(g => g.Way == w && g.OpenStages.Any(s => s >= WithAPartner)) == true).ToArray();
        return open.Length == thrown.Length ? RoleWords.ThrowsAndIsThrown
            : open.Length > 0 ? RoleWords.OneWayOnly(open)
            : child.IsNewcomer ? RoleWords.FitInOnly : RoleWords.ToriOnly;
    }

    /// <summary>In one slot; null for what everybody does.</summary>
    public static string? InSlot(CardSnapshot snapshot, CardPlan plan, CardItem item, CardChild child)
    {
        if (!child.MayBeOnTheMat) return RoleWords.Watches;
        if (!WeighItems.Does(child, item)) return item.Alternative is { } other ? $"{other} instead{(item.IsThrown ? "; is not thrown" : "")}" : RoleWords.Watches;
        if (!child.MayHaveContact) return RoleWords.MovementAlone;
        if (!item.IsThrown) return null;
        if (plan != CardPlan.AsPlanned || !AnybodyMayBeThrown(snapshot, item)) return RoleWords.FitInOnly;
        if (MayBeThrown(child, item.FreeDrill)) return RoleWords.ThrowsAndIsThrown;
        if (MayBeThrown(child, item.FirstDrill)) return RoleWords.LowAndSlowOnly;
        return child.IsNewcomer && child.MayFall ? RoleWords.FitInOnly : RoleWords.ToriOnly;
    }

    /// <summary>Whether any child here may be thrown with it.</summary>
    public static bool AnybodyMayBeThrown(CardSnapshot snapshot, CardItem item) =>
        snapshot.Children.Any(c => WeighItems.Does(c, item) && (MayBeThrown(c, item.FirstDrill) || MayBeThrown(c, item.FreeDrill)));

    // Every way that the throw asks, open at its very stage; a throw without a way is thrown with nobody.
    private static bool MayBeThrown(CardChild child, PlannedThrow? planned) =>
        child is { MayFall: true, MayHaveContact: true, MayBeOnTheMat: true }
        && planned is { Ways.Count: > 0 }
        && planned.Ways.All(w => child.Gates?.Any(g => g.Way == w && g.OpenStages.Contains(planned.Stage)) == true);
}
