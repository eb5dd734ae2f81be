using Keikocho.Core.Kernel;
using Keikocho.Core.Names;

namespace Keikocho.Core.Syllabus;

/// <summary>A child who may be tested for a rank.</summary>
/// <param name="Child">Name or number.</param>
/// <param name="Rank">Key of the rank.</param>
/// <param name="Born">Birth date; null where not known: judged as the youngest.</param>
public sealed record RankCandidate(string Child, string Rank, DateOnly? Born);

/// <summary>The question: what on our sheets do the age rules that we entered not allow?</summary>
/// <param name="Edition">The edition.</param>
/// <param name="Rules">The rules.</param>
/// <param name="Children">The children, in register order; may be empty.</param>
/// <param name="TestOn">Day of the test.</param>
public sealed record AgeRulesSnapshot(Edition Edition, IReadOnlyList<AgeRule> Rules, IReadOnlyList<RankCandidate> Children, DateOnly TestOn);

/// <summary>On our sheet but not allowed for these children.</summary>
/// <param name="Rank">Key of the rank.</param>
/// <param name="RankName">Its name.</param>
/// <param name="Item">Key of the item.</param>
/// <param name="ItemName">Its name.</param>
/// <param name="Rule">The rule; of two the stricter.</param>
/// <param name="Children">Children whom it bars, in the order of the question.</param>
/// <param name="Of">How many children may be tested for the rank.</param>
/// <param name="Instead">Name of what is shown in its place; null for nothing.</param>
/// <param name="Because">In a sentence.</param>
public sealed record NotAllowed(
    string Rank, string RankName, string Item, string ItemName, AgeRule Rule, IReadOnlyList<string> Children, int Of, string? Instead, Reason Because);

/// <summary>The list, and which rules found nothing.</summary>
/// <param name="NotAllowed">In ladder order, then as the rank has its items. Without children it names every item that a rule bars at some age.</param>
/// <param name="RulesWithoutItems">Rules that touch no item of the edition: perhaps a slip of the pen.</param>
/// <param name="Conditions">Conditions whose text names what a rule bars, in ladder order; nothing is taken off a sheet for them.</param>
public sealed record AgeRulesAnswer(
    IReadOnlyList<NotAllowed> NotAllowed, IReadOnlyList<AgeRule> RulesWithoutItems, IReadOnlyList<ConditionNotAllowed> Conditions);

/// <summary>The ladder against the age rules. The rule wins; the tool brings no rule of its own.</summary>
public static class AgeRulesAgainstLadder
{
    /// <summary>What is on our sheets but not allowed.</summary>
    /// <exception cref="ArgumentException">The edition contradicts itself, a rank is not in it, or a rule's age is out of range.</exception>
    public static AgeRulesAnswer Find(AgeRulesSnapshot snapshot, NameIndex? names = null)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        return Find(snapshot, PreparedEdition.Of(snapshot.Edition, names));
    }

    /// <summary>The same with an edition that was made ready before.</summary>
    /// <param name="snapshot">The question.</param>
    /// <param name="edition">The snapshot's own edition, made ready.</param>
    /// <exception cref="ArgumentException">As above, or another edition was made ready.</exception>
    public static AgeRulesAnswer Find(AgeRulesSnapshot snapshot, PreparedEdition edition)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(edition);
        if (!ReferenceEquals(snapshot.Edition, edition.Edition))
            throw new ArgumentException("Another edition was made ready than the one that is asked about.", nameof(edition));
        var bars = edition.Bars(snapshot.Rules);
        foreach (var child in snapshot.Children)
        {
            edition.Rank(child.Rank);
            if (child.Born > snapshot.TestOn)
                throw new ArgumentException($"{child.Child}: the birth date {child.Born.Value.Full()} is after the test on {snapshot.TestOn.Full()}; mend one of them.", nameof(snapshot));
        }

        var found = new List<NotAllowed>();
        foreach (var rank in snapshot.Edition.Ranks)
        {
            var children = snapshot.Children.Where(c => c.Rank == rank.Key).ToList();
            foreach (var item in OnTheSheet(edition, rank.Key))
            {
                if (bars.Of(item) is not [var strictest, ..])
                    continue;
                var barred = children.Where(c => bars.For(item, c.Born, snapshot.TestOn) is not null).ToList();
                if (barred.Count == 0 && snapshot.Children.Count > 0)
                    continue;
                var rule = barred.Select(c => bars.For(item, c.Born, snapshot.TestOn)!).OrderByDescending(r => r.BelowAge).FirstOrDefault() ?? strictest;
                var instead = Instead(edition, bars, item, barred, snapshot.TestOn)?.Name;
                found.Add(new(rank.Key, rank.Name, item.Key, item.Name, rule, [.. barred.Select(c => c.Child)], children.Count, instead,
                    new OnOurSheetNotAllowed(rank.Name, item.Name, rule, barred.Count, children.Count, instead)));
            }
        }

        return new(found, [.. snapshot.Rules.Where(rule => snapshot.Edition.Items.All(i => !bars.Of(i).Contains(rule)))],
            [.. ConditionsAgainstRules.Find(snapshot, edition.Names)]);
    }

    // What a rank names, and what its shares, lots and open pools may bring.
    private static IEnumerable<Item> OnTheSheet(PreparedEdition edition, string key)
    {
        var at = edition.Rank(key);
        IEnumerable<Item> items = edition.NamedAt(at);
        foreach (var requirement in edition.Edition.Ranks[at].Requirements)
        {
            items = items.Concat(requirement.Ask switch
            {
                Ask.ShareOfRank share => edition.NamedAt(edition.Rank(share.Rank)).Where(i => share.Kinds?.Contains(i.Kind) ?? true),
                Ask.FromPool { Pool.Count: 0 } pool => Enumerable.Range(0, at).SelectMany(edition.NamedAt).Where(i => pool.Kinds?.Contains(i.Kind) ?? true),
                Ask.DrawnFromEarlier drawn => Enumerable.Range(0, at).Where(r => drawn.Ranks.Count == 0 || drawn.Ranks.Contains(edition.Edition.Ranks[r].Key))
                    .SelectMany(edition.NamedAt).Where(i => drawn.Kinds?.Contains(i.Kind) ?? true),
                Ask.TheOther other => edition.Edition.Ranks[edition.Rank(other.Rank)].Requirements.Where(r => r.Key == other.Requirement)
                    .SelectMany(r => PreparedEdition.Named(r.Ask)).Select(edition.Item),
                _ => [],
            });
        }

        return items.DistinctBy(i => i.Key);
    }

    // What all of them may show; where a rule bars it for one of them, the next.
    private static Item? Instead(PreparedEdition edition, AgeBars bars, Item item, List<RankCandidate> barred, DateOnly on)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal) { item.Key };
        var at = item;
        while (at.Alternative is { } next && seen.Add(next))
        {
            at = edition.Item(next);
            if (barred.Count == 0 ? bars.Of(at).Count == 0 : barred.All(c => bars.For(at, c.Born, on) is null))
                return at;
        }

        return null;
    }
}

/// <summary>One line of the list.</summary>
/// <param name="Rank">Name of the rank.</param>
/// <param name="Item">Name of the item.</param>
/// <param name="Rule">The rule.</param>
/// <param name="Children">How many children it bars.</param>
/// <param name="Of">Of how many.</param>
/// <param name="Instead">What is shown in its place.</param>
public sealed record OnOurSheetNotAllowed(string Rank, string Item, AgeRule Rule, int Children, int Of, string? Instead) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"{Rank} asks {Item}, which the rule \"{Rule.Name}\" ({Rule.Source}, {Rule.SourceOn.Full()}) bars below {Words.Count(Rule.BelowAge, "year")}"
        + (Of == 0 ? "" : $", {Children} of {Words.Count(Of, "child", "children")}")
        + (Instead is null ? ": nothing is asked in its place." : $": {Instead} is shown in its place.");
}
