using Keikocho.Core.Kernel;

namespace Keikocho.Core.Partners;

/// <summary>Nobody is thrown thirty times by an accident of numbers.</summary>
public static class FallsTonight
{
    private static readonly WholeNumberSetting CapSetting = new("falls.cap", "Falls of one child in an evening at most", 20, "falls", 0, 500, "common practice, no source");
    private static readonly YesNoSetting AdultSetting = new("falls.adultThrows", "A child with an adult is thrown as by a partner", true, Setting.Ours);

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [CapSetting, AdultSetting];

    /// <summary>Reckons the falls.</summary>
    /// <exception cref="ArgumentException">A figure out of range, a child twice, or a middle that is tori only.</exception>
    public static FallsAnswer Reckon(FallsQuestion question)
    {
        Guard(question);
        int[] rounds = [.. question.Drills.Select(d => d.Rounds)];
        var lighter = new List<(int Place, LighterDrill Drill)>();
        var falls = new List<(int Register, ChildFalls Falls)>();
        foreach (var group in question.Groups)
        {
            var planned = Falls(group, Throws(question, rounds), question.AdultThrows, alternate: false);
            for (var i = 0; i < group.Members.Count; i++)
                falls.Add((group.Members[i].Register, Count(group.Members[i], planned[i], question.Cap)));
            if (planned.Any(f => f > question.Cap))
                lighter.Add((group.Members.Min(m => m.Register), Lighten(question, group)));
        }

        ChildFalls[] sorted = [.. falls.OrderBy(f => f.Register).Select(f => f.Falls)];
        string[] over = [.. sorted.Where(f => f.OverCap).Select(f => f.Name)];
        var reasons = new List<Reason> { new FallsOfDrills(question.Drills, Throws(question, rounds)) };
        reasons.AddRange(sorted.Where(f => f.OverCap).Select(f => new OverTheCap(f.Name, f.Falls, question.Cap)));
        LighterDrill[] drills = [.. lighter.OrderBy(l => l.Place).Select(l => l.Drill)];
        reasons.AddRange(drills.Select(l => l.Because));
        return new FallsAnswer(
            over.Length == 0 ? $"nobody over {Words.Count(question.Cap, "fall")}" : $"over {Words.Count(question.Cap, "fall")}: {Words.List(over)}; a lighter drill is ready",
            sorted, drills, reasons, [CapSetting.Use(question.Cap), AdultSetting.Use(question.AdultThrows)]);
    }

    private static int Throws(FallsQuestion question, int[] rounds) => question.Drills.Select((d, i) => d.ThrowsEach * d.Sides * rounds[i]).Sum();

    /// <summary>Falls of each member when each throws so often; by turns the two outer children together throw the middle so often.</summary>
    private static int[] Falls(FallsGroup group, int throws, bool adultThrows, bool alternate)
    {
        var falls = group.Members.Count switch
        {
            1 => [adultThrows ? throws : 0],
            2 => new[] { throws, throws },
            _ => [throws, alternate ? throws : 2 * throws, throws],
        };
        for (var i = 0; i < falls.Length; i++)
            falls[i] = group.Members[i].ToriOnly ? 0 : falls[i];
        return falls;
    }

    /// <summary>
    /// A three: the outer two throw by turns. Where that is not enough, and in a pair: the most rounds that keep all at or under the cap, a round of the
    /// last drill taken away first.
    /// </summary>
    private static LighterDrill Lighten(FallsQuestion question, FallsGroup group)
    {
        int[] rounds = [.. question.Drills.Select(d => d.Rounds)];
        var alternate = group.Members.Count == 3;
        int[] falls;
        while ((falls = Falls(group, Throws(question, rounds), question.AdultThrows, alternate)).Any(f => f > question.Cap))
        {
            var last = rounds.Length - 1;
            while (rounds[last] == 0 || question.Drills[last].ThrowsEach == 0)
                last--;
            rounds[last]--;
        }

        var throws = Throws(question, rounds);
        OuterThrows[] turns = [];
        if (alternate)
        {
            // The odd throw falls to the first in register order.
            FallsChild[] outers = [.. ((FallsChild[])[group.Members[0], group.Members[2]]).OrderBy(m => m.Register)];
            turns = [new(outers[0].Name, (throws + 1) / 2), new(outers[1].Name, throws / 2)];
        }

        string[] names = [.. group.Members.Select(m => m.Name)];
        ChildFalls[] counts = [.. group.Members.Select((m, i) => Count(m, falls[i], question.Cap))];
        return new LighterDrill(names, rounds, turns, counts, new LighterOffer(names, question.Drills, rounds, turns, counts));
    }

    private static ChildFalls Count(FallsChild child, int falls, int cap) => new(child.Child, child.Name, falls, falls > cap);

    private static void Guard(FallsQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        NoGaps.In(question.Drills, "drills");
        NoGaps.In(question.Groups, "groups");
        CapSetting.Guard(question.Cap, nameof(question));
        foreach (var drill in question.Drills)
        {
            if (drill.ThrowsEach is < 0 or > 200 || drill.Sides is < 1 or > 2 || drill.Rounds is < 0 or > 100)
                throw new ArgumentException($"{drill.Name}: 0 to 200 throws each, 1 or 2 sides and 0 to 100 rounds are allowed.", nameof(question));
        }

        foreach (var group in question.Groups)
        {
            NoGaps.In(group.Members, "members");
            if (group.Members.Count is < 1 or > 3)
                throw new ArgumentException("A group has one, two or three members; mend it.", nameof(question));
            if (group.Members.Count == 3 && group.Members[1].ToriOnly)
                throw new ArgumentException($"{group.Members[1].Name} is tori only and cannot be the middle of a three; make the pairs anew.", nameof(question));
            if (group.Members.Count == 2 && group.Members.All(m => m.ToriOnly))
                throw new ArgumentException($"{group.Members[0].Name} and {group.Members[1].Name} are both tori only; make the pairs anew.", nameof(question));
        }

        foreach (var twice in question.Groups.SelectMany(g => g.Members).GroupBy(m => m.Child).Where(g => g.Count() > 1))
            throw new ArgumentException($"{twice.First().Name} stands in two groups; take it out of one.", nameof(question));
    }
}
