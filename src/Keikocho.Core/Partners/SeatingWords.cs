namespace Keikocho.Core.Partners;

/// <summary>A seating as groups in mat order. No size is at hand here, so none can show.</summary>
internal static class SeatingWords
{
    public static Arrangement Arrange(Seating seating, LinkTable table, IReadOnlyList<string> adults) =>
        new(Groups(seating, table, adults), seating.Worst, seating.Total);

    private static List<MatGroup> Groups(Seating seating, LinkTable table, IReadOnlyList<string> adults)
    {
        var groups = new List<(int Place, MatGroup Group)>();
        foreach (var (a, b) in seating.Links)
        {
            if (a != seating.Middle && b != seating.Middle)
                groups.Add((a, Group([a, b], null, null)));
        }

        if (seating.Middle >= 0)
        {
            int[] outers = [.. seating.Links.Where(l => l.First == seating.Middle || l.Second == seating.Middle).Select(l => l.First == seating.Middle ? l.Second : l.First).Order()];
            groups.Add((Math.Min(outers[0], seating.Middle), Group([outers[0], seating.Middle, outers[1]], table.Children[seating.Middle].Child, null)));
        }

        if (seating.WithAdult >= 0)
            groups.Add((seating.WithAdult, Group([seating.WithAdult], null, adults[0])));
        return [.. groups.OrderBy(g => g.Place).Select(g => g.Group)];

        MatGroup Group(int[] members, Kernel.PersonId? middle, string? adult)
        {
            GroupMember[] named = [.. members.Select(m => table.Children[m]).Select(c => new GroupMember(c.Child, c.Name, table.Activity.Thrown && !c.MayFall))];
            return new MatGroup(named, middle, adult, Line(named, middle is not null, adult, table.Activity.Thrown));
        }
    }

    /// <summary>"Ana – Ben", "Ana (tori only) – Ben", "Ana – Ben – Cleo: Ben in the middle; Ana and Cleo do not throw each other".</summary>
    internal static string Line(IReadOnlyList<GroupMember> members, bool three, string? adult, bool thrown)
    {
        var names = string.Join(" – ", members.Select(m => m.ToriOnly ? $"{m.Name} ({Safety.RoleWords.ToriOnly})" : m.Name));
        return adult is not null ? $"{names} – {adult}"
            : !three ? names
            : $"{names}: {members[1].Name} in the middle; {members[0].Name} and {members[2].Name} do not {(thrown ? "throw" : "work with")} each other";
    }
}
