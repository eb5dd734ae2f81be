using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>Judges the folded falls by asking of each mark, one by one, what speaks against it.</summary>
public static class FoldFallsCheck
{
    /// <summary>What is wrong with <paramref name="falls"/>, a sentence each; empty when they are right.</summary>
    public static IReadOnlyList<string> Objections(IReadOnlyCollection<FallTap> marks, IReadOnlyList<FallMark> falls)
    {
        ArgumentNullException.ThrowIfNull(marks);
        ArgumentNullException.ThrowIfNull(falls);
        var all = marks.Distinct().ToArray();
        var objections = new List<string>();
        var expected = new List<FallMark>();
        foreach (var mark in all)
        {
            if (mark.Kind is MarkKind.Cleared or MarkKind.Confirmed || mark.Shown is not { } shown || Gone(mark, all))
                continue;
            var first = mark;
            while (Target(first, all) is { } under)
                first = under;
            expected.Add(new FallMark(first.On, shown.Direction, shown.Side, shown.Stage, shown.Clean, Sure(mark, all), first.Device, first.Sequence, mark.By));
        }

        foreach (var fall in falls.Distinct())
        {
            if (falls.Count(f => f == fall) != expected.Count(f => f == fall))
                objections.Add($"No mark that stands bears out the fall of {fall.On.Full()} at stage {fall.Stage}.");
        }

        foreach (var fall in expected.Where(f => !falls.Contains(f)).Distinct())
            objections.Add($"The fall of {fall.On.Full()} at stage {fall.Stage} stands and is not there.");
        for (var i = 1; i < falls.Count; i++)
        {
            if (falls[i - 1].On > falls[i].On)
                objections.Add("The falls are oldest first.");
        }

        return objections;
    }

    /// <summary>The mark that this one is about, if it may be about it.</summary>
    private static FallTap? Target(FallTap mark, FallTap[] all)
    {
        var target = all.FirstOrDefault(m => m.Id == mark.Replaces);
        if (target is null)
            return null;
        if (mark.Kind is not (MarkKind.Corrected or MarkKind.Confirmed) && (target.Device != mark.Device || (target.Confirms && !mark.Confirms)))
            return null;
        var seen = new HashSet<MarkId>();
        for (var at = target; at is not null && seen.Add(at.Id); at = all.FirstOrDefault(m => m.Id == at.Replaces))
        {
            if (at.Id == mark.Id)
                return null;
        }

        // Nobody without the right takes back a head touch that somebody with it stands behind.
        var takesBack = mark.Kind is not (MarkKind.Corrected or MarkKind.Confirmed) && !mark.Confirms;
        return takesBack && target.Shown is { Clean: false } && Sure(target, all) ? null : target;
    }

    private static bool IsAbout(FallTap mark, FallTap target, FallTap[] all) => mark.Replaces == target.Id && Target(mark, all) is not null;

    private static bool Sure(FallTap mark, FallTap[] all) =>
        mark.Confirms || all.Any(m => m.Kind == MarkKind.Confirmed && m.Confirms && IsAbout(m, mark, all) && Acts(m, all));

    private static bool Gone(FallTap mark, FallTap[] all) =>
        all.Any(m => m.Kind != MarkKind.Confirmed && IsAbout(m, mark, all) && Acts(m, all));

    private static bool Acts(FallTap mark, FallTap[] all)
    {
        if (mark.Kind == MarkKind.Corrected && !Sure(mark, all))
            return false;
        var above = all.Where(m => m.Kind != MarkKind.Confirmed && IsAbout(m, mark, all) && Acts(m, all)).ToArray();
        return above.Length == 0 || above.Any(m => m.Kind != MarkKind.Cleared);
    }
}
