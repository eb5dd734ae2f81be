using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>What one mark does to another, without what it says; guarded: a head touch, which nobody without the right takes back once it is confirmed.</summary>
public readonly record struct MarkLink(MarkId Id, DeviceId Device, int Sequence, MarkKind Kind, MarkId? Replaces, bool Confirms, bool Guarded = false);

/// <summary>
/// Which marks about falls and items still stand, and which are confirmed. The rule is about the set of marks alone:
/// <list type="bullet">
/// <item>An undo (cleared), and a word that names an earlier one, reach marks of their own device only: another tablet's mark is
/// corrected with trace, not undone. Without the right to confirm they do not reach a mark of somebody who has it, nor a
/// head touch that such a one stands behind.</item>
/// <item>A correction reaches any device, and only with the right to confirm; without it, it is one more suggestion.</item>
/// <item>A confirmation with that right stands behind the mark that it names and replaces nothing.</item>
/// <item>An undo of a correction, of a confirmation or of an undo takes back what that one did.</item>
/// <item>Marks that name each other in a circle are not honest: none of them does anything to another.</item>
/// </list>
/// </summary>
public sealed class MarkChain
{
    private readonly Dictionary<MarkId, MarkLink> _known = [];
    private readonly Dictionary<MarkId, List<MarkLink>> _on = [];
    private readonly Dictionary<MarkId, bool> _inForce = [];

    /// <summary>Links the marks of one child and one item, or of a child's falls.</summary>
    /// <param name="marks">In any order.</param>
    /// <exception cref="ArgumentException">Two different marks with one id.</exception>
    public MarkChain(IEnumerable<MarkLink> marks)
    {
        foreach (var mark in marks)
        {
            if (!_known.TryAdd(mark.Id, mark) && _known[mark.Id] != mark)
                throw new ArgumentException($"Two different marks have the id {mark.Id.Value}.", nameof(marks));
        }

        foreach (var mark in _known.Values)
        {
            if (mark.Replaces is not { } id || !_known.TryGetValue(id, out var target) || IsInCircle(mark))
                continue;
            var reaches = mark.Kind is MarkKind.Corrected or MarkKind.Confirmed
                || (mark.Device == target.Device && (mark.Confirms || !target.Confirms));
            if (!reaches)
                continue;
            if (!_on.TryGetValue(id, out var list))
                _on.Add(id, list = []);
            list.Add(mark);
        }
    }

    /// <summary>Neither taken back nor replaced.</summary>
    public bool Stands(MarkId id) => !On(id).Any(m => m.Kind != MarkKind.Confirmed && IsInForce(m));

    /// <summary>Made by somebody with the right, or somebody with the right stands behind it.</summary>
    public bool IsConfirmed(MarkId id) =>
        _known[id].Confirms || Named(id).Any(m => m.Kind == MarkKind.Confirmed && m.Confirms && IsInForce(m));

    /// <summary>The mark at the root of what a word takes the place of: it has the day and the place in its device's order.</summary>
    public MarkId Root(MarkId id)
    {
        var at = id;
        while (_known[at].Replaces is { } under && On(under).Any(m => m.Id == at))
            at = under;
        return at;
    }

    private List<MarkLink> Named(MarkId id) => _on.GetValueOrDefault(id) ?? [];

    private List<MarkLink> On(MarkId id)
    {
        var all = Named(id);
        return all.Count > 0 && _known[id].Guarded && IsConfirmed(id)
            ? all.FindAll(m => m.Confirms || m.Kind is MarkKind.Corrected or MarkKind.Confirmed)
            : all;
    }

    /// <summary>Whether what a mark does to its target still holds. What takes a correction's place keeps the first mark replaced.</summary>
    private bool IsInForce(MarkLink mark)
    {
        if (_inForce.TryGetValue(mark.Id, out var known))
            return known;
        var undone = false;
        var keptUp = false;
        foreach (var other in On(mark.Id))
        {
            if (other.Kind == MarkKind.Confirmed || !IsInForce(other))
                continue;
            undone |= other.Kind == MarkKind.Cleared;
            keptUp |= other.Kind != MarkKind.Cleared;
        }

        var holds = (keptUp || !undone) && (mark.Kind != MarkKind.Corrected || IsConfirmed(mark.Id));
        _inForce.Add(mark.Id, holds);
        return holds;
    }

    private bool IsInCircle(MarkLink mark)
    {
        var at = mark;
        for (var steps = 0; steps < _known.Count; steps++)
        {
            if (at.Replaces is not { } id || !_known.TryGetValue(id, out at))
                return false;
            if (at.Id == mark.Id)
                return true;
        }

        return false;
    }
}
