using Keikocho.Core.Kernel;

namespace Keikocho.Core.Partners;

/// <summary>Groups that stand, by places in the register; those that lost somebody are not among them.</summary>
internal sealed class StandingSeats
{
    private readonly HashSet<(int, int)> _pairs = [];
    private readonly int _withAdult = -1;

    public StandingSeats(LinkTable table, IReadOnlyList<StandingGroup> groups)
    {
        var place = new Dictionary<PersonId, int>();
        for (var i = 0; i < table.Children.Count; i++)
            place[table.Children[i].Child] = i;
        foreach (var group in groups)
        {
            if (group.Members.Any(place.ContainsKey))
                Groups++;
            if (!group.Members.All(place.ContainsKey))
                continue;
            int[] at = [.. group.Members.Select(m => place[m])];
            switch (at.Length)
            {
                case 1:
                    _withAdult = at[0];
                    break;
                case 2:
                    _pairs.Add((Math.Min(at[0], at[1]), Math.Max(at[0], at[1])));
                    break;
                default:
                    if (table.May(at[0], at[1]) && table.May(at[1], at[2]) && table.MayBeMiddle(at[1]) && table.MayShareThree(at[0], at[2]))
                        Three = (at[1], at[0], at[2]);
                    break;
            }
        }
    }

    /// <summary>The three that stands and that no gate forbids.</summary>
    public (int Middle, int One, int Other)? Three { get; }

    /// <summary>Groups of which somebody is still here.</summary>
    public int Groups { get; }

    /// <summary>Whether the two are a pair that stands; -1 is the adult.</summary>
    public bool Has(int a, int b) => a < 0 || b < 0 ? Math.Max(a, b) == _withAdult : _pairs.Contains((Math.Min(a, b), Math.Max(a, b)));

    /// <summary>How many groups are the same in a seating.</summary>
    public int Kept(Seating seating)
    {
        var kept = seating.WithAdult >= 0 && seating.WithAdult == _withAdult ? 1 : 0;
        foreach (var (a, b) in seating.Links)
        {
            if (a != seating.Middle && b != seating.Middle && _pairs.Contains((a, b)))
                kept++;
        }

        return Three is { } three && seating.Middle == three.Middle
            && seating.Links.Contains(Ordered(three.One, three.Middle)) && seating.Links.Contains(Ordered(three.Other, three.Middle))
            ? kept + 1
            : kept;
    }

    private static (int, int) Ordered(int a, int b) => (Math.Min(a, b), Math.Max(a, b));
}
