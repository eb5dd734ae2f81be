using Keikocho.Core.Kernel;

namespace Keikocho.Core.Partners;

/// <summary>The question: what a tablet needs for an evening without a network.</summary>
/// <param name="Now">Who is here, and the activity.</param>
/// <param name="ToCome">Children of the register who are not here yet, with their gates.</param>
/// <param name="AdultsToCome">Names of adults who could partner a child if asked; may be empty.</param>
/// <param name="Standing">The groups that stand; null for those that <see cref="PairsTonight"/> offers first.</param>
public sealed record AheadQuestion(
    PartnersQuestion Now, IReadOnlyList<PartnersChild> ToCome, IReadOnlyList<string> AdultsToCome, IReadOnlyList<StandingGroup>? Standing = null);

/// <summary>What happens.</summary>
public enum AheadEvent
{
    /// <summary>A child leaves.</summary>
    Leaves = 0,
    /// <summary>A child comes.</summary>
    Comes = 1,
    /// <summary>An adult partners a child.</summary>
    Adult = 2,
}

/// <summary>The groups after one thing that may happen. Names only.</summary>
/// <param name="Event">What happens.</param>
/// <param name="Child">Which child; null where it is an adult.</param>
/// <param name="Name">Whose name.</param>
/// <param name="Groups">Everybody's place then, in mat order; empty where at most two changes do not do: ask the laptop.</param>
/// <param name="Changed">How many groups change.</param>
public sealed record AheadAnswer(AheadEvent Event, PersonId? Child, string Name, IReadOnlyList<MatGroup> Groups, int Changed);

/// <summary>Who may work with whom in one activity.</summary>
/// <param name="Activity">Its name.</param>
/// <param name="Table">By places in <see cref="PairsAheadAnswer.Register"/>.</param>
public sealed record ActivityTable(string Activity, MayWork Table);

/// <summary>Names only: no size, no cost, no order but that of the register.</summary>
/// <param name="Register">Everybody who is here or may come and may have a partner, in register order.</param>
/// <param name="Groups">The groups that stand, in mat order.</param>
/// <param name="Ahead">One answer for each thing that may happen: who leaves and who comes in register order, then the adults.</param>
/// <param name="Tables">Who may work with whom: the activity, then those to offer instead.</param>
public sealed record PairsAheadAnswer(
    IReadOnlyList<GroupMember> Register, IReadOnlyList<MatGroup> Groups, IReadOnlyList<AheadAnswer> Ahead, IReadOnlyList<ActivityTable> Tables);

/// <summary>Answers made beforehand, for each single absence, arrival and adult.</summary>
public static class PairsAhead
{
    /// <summary>Makes them.</summary>
    /// <exception cref="ArgumentException">What <see cref="RepairPairs.Make"/> refuses.</exception>
    public static PairsAheadAnswer Make(AheadQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        NoGaps.In(question.ToCome, "children to come");
        NoGaps.In(question.AdultsToCome, "adults to come");
        var now = question.Now;
        var everybody = now with { Children = [.. now.Children, .. question.ToCome] };
        PartnersGuard.Guard(everybody);
        var table = new LinkTable(now, now.Activity);
        IReadOnlyList<MatGroup> groups;
        IReadOnlyList<StandingGroup> standing;
        if (question.Standing is { } given)
        {
            standing = given;
            groups = [.. RepairPairs.Make(new RepairQuestion(now, given)).Offers.Take(1).SelectMany(o => o.Arrangement.Groups)];
        }
        else
        {
            var offers = PairsTonight.Make(now).Offers;
            groups = offers.Count == 0 ? [] : offers[0].WorstFirst.Groups;
            standing = [.. groups.Select(StandingGroup.Of)];
        }

        var ahead = new List<AheadAnswer>();
        foreach (var child in table.Children)
            ahead.Add(After(AheadEvent.Leaves, child.Child, child.Name, now with { Children = [.. now.Children.Where(c => c.Child != child.Child)] }, standing));
        foreach (var child in question.ToCome.OrderBy(c => c.Register))
            ahead.Add(After(AheadEvent.Comes, child.Child, child.Name, now with { Children = [.. now.Children, child] }, standing));
        foreach (var adult in question.AdultsToCome)
            ahead.Add(After(AheadEvent.Adult, null, adult, now with { Adults = [adult, .. now.Adults] }, standing));
        var tables = ((PartnersActivity[])[now.Activity, .. now.Instead ?? []]).Select(a => new ActivityTable(a.Name, Table(new LinkTable(everybody, a)))).ToArray();
        GroupMember[] register = [.. new LinkTable(everybody, now.Activity).Children.Select(c => new GroupMember(c.Child, c.Name, now.Activity.Thrown && !c.MayFall))];
        return new PairsAheadAnswer(register, groups, ahead, tables);
    }

    private static AheadAnswer After(AheadEvent happens, PersonId? child, string name, PartnersQuestion then, IReadOnlyList<StandingGroup> standing)
    {
        var answer = RepairPairs.Make(new RepairQuestion(then, standing));
        return answer.AtMostTwo
            ? new AheadAnswer(happens, child, name, answer.Offers[0].Arrangement.Groups, answer.Offers[0].Changed)
            : new AheadAnswer(happens, child, name, [], 0);
    }

    internal static MayWork Table(LinkTable table)
    {
        var n = table.Children.Count;
        string[] Rows(Func<int, int, bool> may) => [.. Enumerable.Range(0, n).Select(a => string.Concat(Enumerable.Range(0, n).Select(b => may(a, b) ? '1' : '0')))];
        return new MayWork(Rows(table.May), string.Concat(Enumerable.Range(0, n).Select(c => table.MayBeMiddle(c) ? '1' : '0')), Rows(table.MayShareThree));
    }
}
