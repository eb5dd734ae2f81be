namespace Keikocho.Core.Partners;

/// <summary>Judges falls by going through the drill throw by throw.</summary>
public static class FallsCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(FallsQuestion question, FallsAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        var rounds = question.Drills.Select(d => d.Rounds).ToArray();
        var falls = new Dictionary<Kernel.PersonId, int>();
        var lighter = 0;
        foreach (var group in question.Groups)
        {
            var planned = Drill(question, group, rounds, turns: false, out _);
            for (var i = 0; i < group.Members.Count; i++)
                falls[group.Members[i].Child] = planned[i];
            if (planned.All(f => f <= question.Cap))
                continue;
            var names = group.Members.Select(m => m.Name).ToArray();
            if (answer.Lighter.Where(l => l.Group.SequenceEqual(names)).ToArray() is not [var offer])
            {
                objections.Add($"{string.Join(", ", names)}: somebody is over the cap, and no lighter drill is offered.");
                continue;
            }

            lighter++;
            Judge(question, group, offer, objections);
        }

        if (lighter != answer.Lighter.Count)
            objections.Add("A lighter drill is offered where nobody is over the cap.");
        var order = question.Groups.SelectMany(g => g.Members).OrderBy(m => m.Register).Select(m => m.Child);
        if (!answer.Falls.Select(f => f.Child).SequenceEqual(order))
            objections.Add("The children are not in register order.");
        foreach (var child in answer.Falls)
        {
            if (falls.GetValueOrDefault(child.Child) != child.Falls || child.OverCap != (child.Falls > question.Cap))
                objections.Add($"{child.Name} does not fall {child.Falls} times.");
        }

        return objections;
    }

    private static void Judge(FallsQuestion question, FallsGroup group, LighterDrill offer, List<string> objections)
    {
        var turns = group.Members.Count == 3;
        var then = Drill(question, group, [.. offer.Rounds], turns, out var thrown);
        if (then.Any(f => f > question.Cap) || !then.SequenceEqual(offer.Falls.Select(f => f.Falls)))
            objections.Add($"{string.Join(", ", offer.Group)}: the lighter drill is over the cap, or its falls are not those.");
        if (turns)
        {
            var outers = ((FallsChild[])[group.Members[0], group.Members[2]]).OrderBy(m => m.Register).Select(m => m.Name).ToArray();
            if (!offer.Throws.Select(t => t.Name).SequenceEqual(outers) || offer.Throws[0].Throws != thrown.First || offer.Throws[1].Throws != thrown.Second)
                objections.Add($"{string.Join(", ", offer.Group)}: the outer two do not throw so often.");
        }

        // The last round that was taken away had to be.
        for (var i = 0; i < offer.Rounds.Count; i++)
        {
            if (offer.Rounds[i] >= question.Drills[i].Rounds || question.Drills[i].ThrowsEach == 0)
                continue;
            int[] more = [.. offer.Rounds];
            more[i]++;
            if (Drill(question, group, more, turns, out _).All(f => f <= question.Cap))
                objections.Add($"{string.Join(", ", offer.Group)}: one round more of {question.Drills[i].Name} would be within the cap.");
            break;
        }
    }

    private static int[] Drill(FallsQuestion question, FallsGroup group, int[] rounds, bool turns, out (int First, int Second) thrown)
    {
        var falls = new int[group.Members.Count];
        thrown = default;
        var firstsTurn = true;
        for (var d = 0; d < question.Drills.Count; d++)
        {
            var drill = question.Drills[d];
            for (var n = 0; n < rounds[d] * drill.Sides * drill.ThrowsEach; n++)
            {
                switch (group.Members.Count)
                {
                    case 1:
                        Fall(0, question.AdultThrows);
                        break;
                    case 2:
                        Fall(0, true);
                        Fall(1, true);
                        break;
                    default:
                        Fall(0, true);
                        Fall(2, true);
                        Fall(1, true);
                        Fall(1, !turns);
                        thrown = firstsTurn ? (thrown.First + 1, thrown.Second) : (thrown.First, thrown.Second + 1);
                        firstsTurn = !firstsTurn;
                        break;
                }
            }
        }

        return falls;

        void Fall(int member, bool happens) => falls[member] += happens && !group.Members[member].ToriOnly ? 1 : 0;
    }
}
