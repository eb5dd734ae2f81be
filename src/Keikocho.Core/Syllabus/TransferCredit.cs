using Keikocho.Core.Kernel;

namespace Keikocho.Core.Syllabus;

/// <summary>What a club may set for a child who comes with a rank.</summary>
/// <param name="EnoughPercent">A rank of which less was seen here is the one to teach. Proposed 75.</param>
/// <param name="ItemsALesson">So many gaps are filled in a lesson. Proposed 2.</param>
public sealed record TransferRule(int EnoughPercent = 75, int ItemsALesson = 2)
{
    private static readonly WholeNumberSetting Enough = new("transfer.enoughPercent", "A rank is taught where less of it was seen here", 75, "%", 1, 100, Setting.Ours);
    private static readonly WholeNumberSetting Pace = new("transfer.itemsALesson", "Gaps filled in a lesson", 2, "items", 1, 20, Setting.Ours);

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Enough, Pace];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() => [Enough.Use(EnoughPercent), Pace.Use(ItemsALesson)];

    internal void Guard()
    {
        Enough.Guard(EnoughPercent, nameof(EnoughPercent));
        Pace.Guard(ItemsALesson, nameof(ItemsALesson));
    }
}

/// <summary>The question: a child comes with a rank; where does teaching start, and what is missing?</summary>
/// <param name="Edition">The edition that holds.</param>
/// <param name="WornRank">Key of the rank that the child came with; it is kept.</param>
/// <param name="On">The day.</param>
/// <param name="Child">The child.</param>
/// <param name="AgeRules">The club's age rules: what they bar is no gap.</param>
/// <param name="SeenHere">Keys of items seen good here; falls only where fall marks of this club say so, never from a certificate.</param>
/// <param name="Rule">The rule.</param>
public sealed record TransferSnapshot(
    Edition Edition, string WornRank, DateOnly On, SheetChild Child, IReadOnlyList<AgeRule> AgeRules, IReadOnlyList<string> SeenHere, TransferRule Rule);

/// <summary>One rank's items, seen here or not.</summary>
/// <param name="Rank">Key.</param>
/// <param name="RankName">Name.</param>
/// <param name="Seen">How many of what it asks were seen here.</param>
/// <param name="Asked">How many it asks.</param>
/// <param name="Gaps">What was not seen, in words: an item, or "1 more of: A, B".</param>
/// <param name="SafetyOpen">Names of safety items not seen: falls, safety words and what holds at once.</param>
public sealed record TransferRank(string Rank, string RankName, int Seen, int Asked, IReadOnlyList<string> Gaps, IReadOnlyList<string> SafetyOpen)
{
    /// <summary>Gaps by number.</summary>
    public int Missing => Asked - Seen;
}

/// <summary>Where teaching starts.</summary>
/// <param name="KeepsRank">Key of the rank worn: the belt is kept.</param>
/// <param name="TeachingRank">Key of the rank to teach.</param>
/// <param name="TeachingRankName">Its name.</param>
/// <param name="Ranks">Every rank up to the one worn.</param>
/// <param name="Gaps">How many gaps there are in all.</param>
/// <param name="Lessons">Lessons to fill them.</param>
/// <param name="FallsToSee">Names of falls that were not seen here: their gates are shut.</param>
/// <param name="Reasons">Why.</param>
/// <param name="Settings">The settings used.</param>
public sealed record TransferAnswer(
    string KeepsRank, string TeachingRank, string TeachingRankName, IReadOnlyList<TransferRank> Ranks, int Gaps, int Lessons,
    IReadOnlyList<string> FallsToSee, IReadOnlyList<Reason> Reasons, IReadOnlyList<SettingUsed> Settings);

/// <summary>Keeps the belt and credits nothing that is dangerous: falls are seen here before anybody throws this child.</summary>
public static class TransferCredit
{
    /// <summary>Reckons where teaching starts.</summary>
    /// <exception cref="ArgumentException">The rank is not on the ladder, or a figure out of range.</exception>
    public static TransferAnswer Reckon(TransferSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        snapshot.Rule.Guard();
        // Every line that a rank names itself, whatever the term; what leans on other ranks would count twice.
        var edition = snapshot.Edition with
        {
            Ranks = [.. snapshot.Edition.Ranks.Select(r => r with
            {
                Requirements = [.. r.Requirements.Where(q => q.Ask is Ask.AllOf or Ask.AnyOf or Ask.FromPool { Pool.Count: > 0 }).Select(q => q with { Unit = null, Carry = Carry.ThisRank })],
            })],
        };
        var prepared = PreparedEdition.Of(edition);
        var worn = prepared.Rank(snapshot.WornRank);
        var seen = snapshot.SeenHere.ToHashSet(StringComparer.Ordinal);
        var ranks = new List<TransferRank>();
        var falls = new List<string>();
        for (var i = 0; i <= worn; i++)
            ranks.Add(Rank(snapshot, prepared, i, seen, falls));
        var safety = ranks.FindIndex(r => r.SafetyOpen.Count > 0);
        var thin = ranks.FindIndex(r => r.Seen * 100 < snapshot.Rule.EnoughPercent * r.Asked);
        // The lower of the two; nothing open leaves the rank worn.
        var teaching = new[] { safety, thin }.Where(i => i >= 0).DefaultIfEmpty(worn).Min();
        var gaps = ranks.Sum(r => r.Missing);
        var lessons = (gaps + snapshot.Rule.ItemsALesson - 1) / snapshot.Rule.ItemsALesson;
        List<Reason> reasons = [new BeltKept(ranks[worn].RankName)];
        foreach (var rank in ranks.Where(r => r.Asked > 0))
            reasons.Add(new SeenOfRank(rank.RankName, rank.Seen, rank.Asked, rank.SafetyOpen));
        reasons.Add(new TeachFrom(ranks[teaching].RankName, teaching == safety, teaching == thin, snapshot.Rule.EnoughPercent));
        reasons.Add(new GapsToFill(gaps, lessons, snapshot.Rule.ItemsALesson));
        if (falls.Count > 0)
            reasons.Add(new FallsSeenHereFirst([.. falls.Distinct()]));
        return new(snapshot.WornRank, ranks[teaching].Rank, ranks[teaching].RankName, ranks, gaps, lessons, [.. falls.Distinct()], reasons, snapshot.Rule.Used());
    }

    private static TransferRank Rank(TransferSnapshot snapshot, PreparedEdition edition, int at, HashSet<string> seen, List<string> falls)
    {
        var rank = edition.Edition.Ranks[at];
        var sheet = MakeSheet.Make(new(edition.Edition, rank.Key, snapshot.On, null, snapshot.AgeRules, snapshot.Child), edition);
        var (good, asked) = (0, 0);
        List<string> gaps = [], safety = [];
        foreach (var line in sheet.Lines)
        {
            var open = line.Items.Where(i => !seen.Contains(i.Item.Key)).ToList();
            var met = Math.Min(line.Count, line.Items.Count - open.Count);
            (good, asked) = (good + met, asked + line.Count);
            if (met == line.Count)
                continue;
            if (line.IsAll)
                gaps.AddRange(open.Select(i => i.Item.Name));
            else
                gaps.Add(met == 0 ? line.Title : $"{line.Count - met} more of: {Words.List([.. open.Select(i => i.Item.Name)])}");
            var atOnce = rank.Requirements.Any(r => r.Key == line.Requirement && r.AtOnce);
            safety.AddRange(open.Where(i => atOnce || i.Item.Safety || i.Item.Kind == ItemKind.Fall).Select(i => i.Item.Name));
            falls.AddRange(open.Where(i => i.Item.Kind == ItemKind.Fall).Select(i => i.Item.Name));
        }

        return new(rank.Key, rank.Name, good, asked, gaps, safety);
    }
}

/// <summary>The belt is kept.</summary>
/// <param name="Rank">Name of the rank worn.</param>
public sealed record BeltKept(string Rank) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"{Rank} is kept: a belt that was brought along is worn here.";
}

/// <summary>How much of one rank was seen here.</summary>
/// <param name="Rank">Its name.</param>
/// <param name="Seen">Seen.</param>
/// <param name="Asked">Asked.</param>
/// <param name="Safety">Safety items not seen.</param>
public sealed record SeenOfRank(string Rank, int Seen, int Asked, IReadOnlyList<string> Safety) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"{Rank}: {Seen} of {Asked} seen here, {Seen * 100 / Asked} %{(Safety.Count == 0 ? "" : $"; safety not seen yet: {Words.List(Safety)}")}.";
}

/// <summary>Where teaching starts.</summary>
/// <param name="Rank">Name of the rank.</param>
/// <param name="Safety">It is the lowest with a safety item open.</param>
/// <param name="Thin">It is the lowest of which too little was seen.</param>
/// <param name="Percent">How much is enough.</param>
public sealed record TeachFrom(string Rank, bool Safety, bool Thin, int Percent) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => (Safety, Thin) switch
    {
        (false, false) => $"Teaching goes on at {Rank}: no safety item is open and {Percent} % or more of every rank was seen here.",
        (true, false) => $"Teaching starts at {Rank}, the lowest rank with a safety item not seen here.",
        (false, true) => $"Teaching starts at {Rank}, the lowest rank of which less than {Percent} % was seen here.",
        _ => $"Teaching starts at {Rank}, the lowest rank with a safety item not seen and less than {Percent} % seen here.",
    };
}

/// <summary>What is missing.</summary>
/// <param name="Gaps">Gaps.</param>
/// <param name="Lessons">Lessons.</param>
/// <param name="ALesson">Gaps filled in a lesson.</param>
public sealed record GapsToFill(int Gaps, int Lessons, int ALesson) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"{Words.Count(Gaps, "gap")}, at {ALesson} a lesson {Words.Count(Lessons, "lesson")}.";
}

/// <summary>Falls come first.</summary>
/// <param name="Falls">Falls not seen here.</param>
public sealed record FallsSeenHereFirst(IReadOnlyList<string> Falls) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"No fall is credited: {Words.List(Falls)} {Words.Is(Falls.Count)} shut until seen here.";
}
