using Keikocho.Core.Kernel;

namespace Keikocho.Core.Partners;

/// <summary>A group that stands on the mat.</summary>
/// <param name="Members">One with an adult, two, or three with the middle in the middle.</param>
public sealed record StandingGroup(IReadOnlyList<PersonId> Members)
{
    /// <summary>The group of an arrangement.</summary>
    public static StandingGroup Of(MatGroup group)
    {
        ArgumentNullException.ThrowIfNull(group);
        return new StandingGroup([.. group.Members.Select(m => m.Child)]);
    }
}

/// <summary>The question: pairs stand, and somebody came, left, or may no longer do what the pair asks.</summary>
/// <param name="Now">Who is here now, with every gate as it is now.</param>
/// <param name="Standing">The groups as they stood.</param>
public sealed record RepairQuestion(PartnersQuestion Now, IReadOnlyList<StandingGroup> Standing);

/// <summary>One way to repair.</summary>
/// <param name="Kind">How everybody is placed afterwards.</param>
/// <param name="Arrangement">Everybody's place afterwards.</param>
/// <param name="Changed">How many of the groups that stood, and of which somebody is still here, are no more.</param>
/// <param name="New">The groups that did not stand before, in mat order.</param>
public sealed record RepairOffer(OfferKind Kind, Arrangement Arrangement, int Changed, IReadOnlyList<MatGroup> New);

/// <summary>The repair.</summary>
/// <param name="Headline">The top line.</param>
/// <param name="Offers">Ways, the one to use first; none where nobody can place everybody.</param>
/// <param name="AtMostTwo">The first way changes at most two groups.</param>
/// <param name="Reasons">For the instructor only.</param>
/// <param name="Settings">The settings used.</param>
public sealed record RepairAnswer(string Headline, IReadOnlyList<RepairOffer> Offers, bool AtMostTwo, IReadOnlyList<Reason> Reasons, IReadOnlyList<SettingUsed> Settings);

/// <summary>The fewest groups change; among those ways the worst pair first, then the sum.</summary>
public static class RepairPairs
{
    /// <summary>So many groups may change.</summary>
    public const int MostChanged = 2;

    /// <summary>Repairs.</summary>
    /// <exception cref="ArgumentException">What <see cref="PairsTonight.Make"/> refuses; a group of none or of more than three; a child in two groups.</exception>
    public static RepairAnswer Make(RepairQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        PartnersGuard.Guard(question.Now);
        NoGaps.In(question.Standing, "groups that stand");
        if (question.Standing.Any(g => g.Members.Count is < 1 or > 3))
            throw new ArgumentException("A group that stands has one, two or three members; mend it.", nameof(question));
        if (question.Standing.SelectMany(g => g.Members).GroupBy(m => m).Any(g => g.Count() > 1))
            throw new ArgumentException("A child stands in two groups; take it out of one.", nameof(question));
        var table = new LinkTable(question.Now, question.Now.Activity);
        var standing = new StandingSeats(table, question.Standing);
        var before = question.Standing.Select(Key).ToHashSet();
        var offers = new List<RepairOffer>();
        foreach (var kind in PairsTonight.Kinds(table.Children.Count, question.Now.Adults.Count))
        {
            if (new SeatEverybody(table, worstFirst: true, standing).Find(kind) is not { } seating)
                continue;
            var arrangement = SeatingWords.Arrange(seating, table, question.Now.Adults);
            offers.Add(new RepairOffer(
                kind, arrangement, standing.Groups - standing.Kept(seating), [.. arrangement.Groups.Where(g => !before.Contains(Key(StandingGroup.Of(g))))]));
        }

        offers = [.. offers.OrderBy(o => o.Changed <= MostChanged ? 0 : 1)];
        var fewest = offers.Count == 0 ? (int?)null : offers[0].Changed;
        var reasons = new List<Reason> { new PairsFollow(question.Now.Activity, table.Rule) };
        reasons.Add(fewest is { } changed ? new GroupsChange(changed, MostChanged) : new NobodyCanRepair(question.Now.Activity));
        var headline = fewest is not { } c ? $"no arrangement for {question.Now.Activity.Name}: make the pairs anew"
            : c == 0 ? "no pair changes"
            : $"{Words.Count(c, "pair")} change{(c == 1 ? "s" : "")}";
        return new RepairAnswer(headline, offers, fewest <= MostChanged, reasons, table.Rule.Used());
    }

    /// <summary>The same text for the same group, whichever outer child is named first.</summary>
    internal static string Key(StandingGroup group)
    {
        var m = group.Members;
        return m.Count switch
        {
            1 => $"{m[0].Value}",
            2 => string.Join(' ', m.Select(x => x.Value).Order()),
            _ => $"{string.Join(' ', ((Guid[])[m[0].Value, m[2].Value]).Order())} about {m[1].Value}",
        };
    }
}

/// <summary>How many groups change.</summary>
/// <param name="Changed">So many.</param>
/// <param name="Most">So many may.</param>
public sealed record GroupsChange(int Changed, int Most) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Changed <= Most
        ? $"Of the pairs that stood {Words.Count(Changed, "changes", "change")}; no way changes fewer."
        : $"The gates leave no way that changes at most {Most} pairs: the fewest is {Changed}.";
}

/// <summary>No repair.</summary>
/// <param name="Activity">What is done.</param>
public sealed record NobodyCanRepair(PartnersActivity Activity) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"There is no arrangement for {Activity.Name} that places everybody who is here now, whatever changes: ask for the pairs anew to see who is left over and what would help.";
}
