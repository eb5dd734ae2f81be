using Keikocho.Core.Kernel;
using Keikocho.Core.Partners;
using Keikocho.Store.Engines;
using Keikocho.Store.Evening;

namespace Keikocho.App.Pairs;

/// <summary>The pairs that were put to use, as groups.</summary>
/// <param name="Round">Which making of pairs of the evening.</param>
/// <param name="Groups">The groups; the middle of a three in the middle, a child with an adult alone.</param>
/// <param name="Adult">The adult who partners a child; null where none does.</param>
public sealed record StandingPairs(int Round, IReadOnlyList<StandingGroup> Groups, Guid? Adult)
{
    /// <summary>Those of one end and one activity that were put to use last; null where none were.</summary>
    public static StandingPairs? Of(ReadSession reading, Guid lesson, PairsActivity activity, IReadOnlySet<Guid> children)
    {
        ArgumentNullException.ThrowIfNull(children);
        foreach (var round in TogetherReader.Rounds(reading, lesson, (int)activity))
        {
            var links = round.Links.Where(l => children.Contains(l.One) || children.Contains(l.Other)).ToList();
            if (links.Count > 0) return Group(round.Round, links, children);
        }

        return null;
    }

    private static StandingPairs Group(int round, List<(Guid One, Guid Other)> links, IReadOnlySet<Guid> children)
    {
        Guid? adult = null;
        var groups = new List<StandingGroup>();
        var count = links.SelectMany(l => new[] { l.One, l.Other }).GroupBy(p => p).ToDictionary(g => g.Key, g => g.Count());
        var middles = count.Where(c => c.Value > 1).Select(c => c.Key).ToHashSet();
        foreach (var (one, other) in links.Where(l => !middles.Contains(l.One) && !middles.Contains(l.Other)))
        {
            if (children.Contains(one) && children.Contains(other))
            {
                groups.Add(Of(one, other));
                continue;
            }

            adult = children.Contains(one) ? other : one;
            groups.Add(Of(children.Contains(one) ? one : other));
        }

        foreach (var middle in middles)
        {
            var outers = links.Where(l => l.One == middle || l.Other == middle).Select(l => l.One == middle ? l.Other : l.One).Order().ToList();
            if (outers.Count == 2) groups.Add(Of(outers[0], middle, outers[1]));
        }

        return new StandingPairs(round, groups, adult);
    }

    private static StandingGroup Of(params Guid[] members) => new([.. members.Select(m => new PersonId(m))]);

    /// <summary>The links of groups: a three is two of them, a child with an adult one.</summary>
    public static IReadOnlyList<(Guid One, Guid Other)> Links(IReadOnlyList<MatGroup> groups, Func<string, Guid?> adult)
    {
        ArgumentNullException.ThrowIfNull(groups);
        ArgumentNullException.ThrowIfNull(adult);
        var links = new List<(Guid, Guid)>();
        foreach (var group in groups)
        {
            var members = group.Members.Select(m => m.Child.Value).ToList();
            for (var i = 1; i < members.Count; i++) links.Add((members[i - 1], members[i]));
            if (group.Adult is { } name && adult(name) is { } id) links.Add((members[0], id));
        }

        return links;
    }
}
