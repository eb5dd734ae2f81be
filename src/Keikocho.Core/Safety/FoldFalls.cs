using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>A fall as an adult marked it.</summary>
/// <param name="Direction">Which way.</param>
/// <param name="Side">The side; none for back and front.</param>
/// <param name="Stage">1 to 6.</param>
/// <param name="Clean">Clean; false for head touched.</param>
public sealed record FallShown(FallDirection Direction, FallSide Side, int Stage, bool Clean);

/// <summary>One mark about one child's falls, as it was made.</summary>
/// <param name="Id">Its own id.</param>
/// <param name="Device">Where it was made.</param>
/// <param name="Sequence">The device's own count; the only order that is used, and only within one device.</param>
/// <param name="On">Day of its lesson.</param>
/// <param name="Kind">Fall, confirmed, cleared or corrected.</param>
/// <param name="Shown">What was seen; null for cleared and confirmed, and for a correction to "no such fall".</param>
/// <param name="Replaces">The mark that it takes back, corrects or confirms; null otherwise.</param>
/// <param name="By">Name of who made it; null where not known.</param>
/// <param name="Confirms">Who made it may confirm falls: an adult with that right on that day.</param>
public sealed record FallTap(
    MarkId Id, DeviceId Device, int Sequence, DateOnly On, MarkKind Kind, FallShown? Shown, MarkId? Replaces, string? By, bool Confirms);

/// <summary>
/// Folds raw marks into the falls that stand: what was taken back or corrected is gone, what was confirmed is confirmed; the same for
/// every order of arrival. A correction by somebody without the right to confirm hides no head touch.
/// </summary>
public static class FoldFalls
{
    /// <summary>Folds one child's marks. The falls come by day, device and the device's own count.</summary>
    /// <exception cref="ArgumentException">Two different marks with one id, a fall missing, or a mark of another kind.</exception>
    public static IReadOnlyList<FallMark> Fold(IReadOnlyCollection<FallTap> marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        if (marks.Count == 0)
            return [];
        var known = new Dictionary<MarkId, FallTap>(marks.Count);
        foreach (var mark in marks)
        {
            Guard(mark);
            if (!known.TryAdd(mark.Id, mark) && known[mark.Id] != mark)
                throw new ArgumentException($"Two different marks have the id {mark.Id.Value}.", nameof(marks));
        }

        var chain = new MarkChain(known.Values.Select(m => new MarkLink(m.Id, m.Device, m.Sequence, m.Kind, m.Replaces, m.Confirms, m.Shown is { Clean: false })));
        return
        [
            .. known.Values
                .Where(m => m.Shown is not null && (m.Kind is MarkKind.Fall or MarkKind.Corrected) && chain.Stands(m.Id))
                .Select(m => (Mark: m, Root: known[chain.Root(m.Id)]))
                .OrderBy(m => m.Root.On).ThenBy(m => m.Root.Device.Value).ThenBy(m => m.Root.Sequence).ThenBy(m => m.Mark.Id.Value)
                .Select(m => new FallMark(
                    m.Root.On, m.Mark.Shown!.Direction, m.Mark.Shown.Side, m.Mark.Shown.Stage, m.Mark.Shown.Clean,
                    chain.IsConfirmed(m.Mark.Id), m.Root.Device, m.Root.Sequence, m.Mark.By)),
        ];
    }

    private static void Guard(FallTap mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        if (mark.Kind is not (MarkKind.Fall or MarkKind.Confirmed or MarkKind.Cleared or MarkKind.Corrected))
            throw new ArgumentException($"{mark.Kind} says nothing of a fall.", nameof(mark));
        if (mark.Kind == MarkKind.Fall && mark.Shown is null)
            throw new ArgumentException("A fall says which way, at what stage, and clean or head touched.", nameof(mark));
        if (mark.Kind is MarkKind.Corrected or MarkKind.Confirmed && mark.Replaces is null)
            throw new ArgumentException("A correction and a confirmation name the mark that they are about.", nameof(mark));
        if (mark.Shown is { } shown)
            FallWords.Guard(new FallWay(shown.Direction, shown.Side), shown.Stage, $"The fall of {mark.On.Full()}");
    }
}
