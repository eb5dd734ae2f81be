using Keikocho.Core.Kernel;
using Keikocho.Core.Partners;

namespace Keikocho.Core.Tests.Partners;

/// <summary>Evenings made from a seed: every gate, every wish and every gap in what is known comes up.</summary>
internal static class AnyMat
{
    public static PartnersQuestion Question(ulong seed, int children)
    {
        var state = unchecked(seed * 0x9E3779B97F4A7C15UL) | 1;
        int Next(int below) => (int)((MatchingTables.Next(ref state) >> 16) % (ulong)below);
        var kind = Next(4);
        var spread = 1 + Next(20);
        PersonId Id(int i) => new(new Guid(i + 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0));
        var all = new List<PartnersChild>();
        for (var i = 0; i < children; i++)
        {
            var age = 8 + Next(kind == 0 ? 2 : 4);
            all.Add(new PartnersChild(
                Id(i), $"Child {i}", (i * 37 + 3) % 101, Next(30) == 0 ? null : age, Next(5) != 0, Next(25) != 0, Next(40) != 0,
                Next(12) == 0 || kind == 3 ? null : 25.37m + Next(spread), Mats.Today.AddDays(-Next(200)), Next(6) == 0, Next(5) == 0 ? null : Next(6), Next(4) == 0 ? $"Family {Next(3)}" : null));
        }

        TwoChildren[] Pairs(int most) =>
            children < 2 ? [] : [.. Enumerable.Range(0, Next(most + 1)).Select(_ => (Next(children), Next(children))).Where(p => p.Item1 != p.Item2).Select(p => new TwoChildren(Id(p.Item1), Id(p.Item2)))];
        WorkedTogether[] together = [.. Enumerable.Range(0, 4).SelectMany(_ => Pairs(children)).Select(p => new WorkedTogether(p.One, p.Other, 1 + Next(kind == 1 ? 3 : 12)))];
        return new PartnersQuestion(
            Mats.Today, Next(3) == 0 ? Mats.TurnIns : Mats.Throwing with { SizeLimit = 15 + Next(20) }, all, Next(2) == 0 ? [] : ["Anna"],
            null, Pairs(3), Next(3) == 0 ? Pairs(2) : [], together, [Mats.Holds]);
    }
}
