using Keikocho.Core.Kernel;

namespace Keikocho.Core.Syllabus;

/// <summary>Makes the lines of one requirement, for each of its shapes.</summary>
internal sealed class LineOfAsk(
    SheetSnapshot question, PreparedEdition edition, PlaceItems items, List<Reason> leftOut, List<Reason> reasons)
{
    private HashSet<string>? askedAnyway;

    private static readonly Func<Item, bool> NoFalls = item => item.Kind != ItemKind.Fall;

    /// <summary>Something was drawn by lot.</summary>
    public bool Drew { get; private set; }

    /// <summary>The lines of a requirement of the rank at <paramref name="home"/>; none where nothing of it is left.</summary>
    public IEnumerable<SheetLine> Lines(Requirement requirement, int home, bool again)
    {
        switch (requirement.Ask)
        {
            case Ask.AllOf all:
                return One(Direct(requirement, home, again, all.Items.Count, all.Items));
            case Ask.AnyOf any:
                return One(Direct(requirement, home, again, any.Count, any.Items));
            case Ask.FromPool pool:
                return One(FromPool(requirement, pool, home, again));
            case Ask.ShareOfRank share:
                return Share(requirement, share, home, again);
            case Ask.DrawnFromEarlier drawn:
                return One(Drawn(requirement, drawn, home, again));
            case Ask.TheOther other:
                return One(TheOther(requirement, other, home, again));
            default:
                throw new ArgumentException($"The requirement \"{requirement.Key}\" has no shape; say what it asks.");
        }
    }

    /// <summary>What stays of a requirement because this child was asked it before; null for nothing.</summary>
    public SheetLine? Stays(Requirement requirement, int home, bool again)
    {
        if (question.Child is not { AskedBefore: { Count: > 0 } before })
            return null;
        var asked = PreparedEdition.Named(requirement.Ask).Where(key => before.Contains(key)).Select(edition.Item).ToList();
        if (asked.Count == 0)
            return null;
        var placed = items.Place(asked);
        return Line(requirement, home, again, placed.Count, placed, LineTitles.All, keepTitle: false);
    }

    /// <summary>The requirement's line as it stands in the edition, for a sentence about it.</summary>
    public string PlainTitle(Requirement requirement, int home) => LineTitles.Plain(edition, edition.Edition.Ranks[home].Name, requirement);

    private static IEnumerable<SheetLine> One(SheetLine? line) => line is null ? [] : [line];

    private SheetLine? Direct(Requirement requirement, int home, bool again, int count, IReadOnlyList<string> keys)
    {
        if (count < 1 || count > keys.Count)
            throw Impossible(requirement, home, count, keys.Count);
        var placed = items.Place(keys.Select(edition.Item));
        var now = Math.Min(count, placed.Count);
        var line = Line(requirement, home, again, now, placed, p => LineTitles.Of(now, p), Whole(keys, placed));
        if (placed.Count < keys.Count && count < keys.Count)
            SayFewer(line, count, keys.Count, now, placed.Count);
        return line;
    }

    private SheetLine? FromPool(Requirement requirement, Ask.FromPool ask, int home, bool again)
    {
        var pool = ask.Pool.Count > 0
            ? [.. ask.Pool.Select(edition.Item)]
            : Earlier(home + 1, ask.Kinds is { } kinds ? i => kinds.Contains(i.Kind) : i => i.Kind is not (ItemKind.Fall or ItemKind.Word or ItemKind.Question));
        if (ask.Count < 1 || (ask.Pool.Count > 0 && ask.Count > pool.Count))
            throw Impossible(requirement, home, ask.Count, pool.Count);
        var placed = items.Place(pool);
        var now = Math.Min(ask.Count, placed.Count);
        var chosen = Chosen(requirement, home);
        if (chosen.Count > 0)
        {
            // A choice of what gives way is a choice of what stands in its place.
            var wanted = chosen.Select(key => edition.Has(key) && pool.Any(p => p.Key == key) ? items.Place(edition.Item(key))?.Item.Key : null)
                .OfType<string>().ToHashSet(StringComparer.Ordinal);
            placed = [.. placed.Select(p => wanted.Contains(p.Item.Key) ? p with { Chosen = true } : p)];
        }

        var made = placed.Count(p => p.Chosen);
        var settled = now > 0 && made >= now;
        if (settled)
            placed = [.. placed.Where(p => p.Chosen)];
        var line = Line(requirement, home, again, now, placed, p => LineTitles.Pool(ask, settled, now, p), !settled && Whole(pool.Select(p => p.Key), placed));
        if (now < ask.Count)
            SayFewer(line, ask.Count, pool.Count, now, placed.Count);
        if (line is null || question.Child is null)
            return line;
        reasons.Add(new ChoiceFromPool(line.Title, now, made, ask.ChosenBy));
        foreach (var key in chosen.Where(key => pool.All(p => p.Key != key)))
            reasons.Add(new ChoiceDoesNotStand(edition.Has(key) ? edition.Item(key).Name : key, line.Title));
        return line;
    }

    private List<SheetLine> Share(Requirement requirement, Ask.ShareOfRank ask, int home, bool again)
    {
        var later = edition.Rank(ask.Rank);
        if (later <= home || ask.Percent is < 1 or > 99)
            throw new ArgumentException($"{edition.Edition.Ranks[home].Name}, \"{requirement.Key}\": name a later rank and a share from 1 to 99 %.");
        int? age = question.Child?.Born is { } born ? Age.On(born, question.TestOn, LeapBirthday.FirstMarch) : null;
        var asked = 0;
        List<Item> pool = [], falls = [];
        foreach (var its in edition.Edition.Ranks[later].Requirements)
        {
            if (its.Unit is { } unit && unit != question.Unit)
                continue;
            if (question.Child is not null && its.Ages is { } band && !band.Holds(age))
                continue;
            var named = PreparedEdition.Named(its.Ask).Select(edition.Item).ToList();
            var counted = named.Where(i => ask.Kinds is { } kinds ? kinds.Contains(i.Kind) : NoFalls(i)).ToList();
            asked += Math.Min(its.Ask is Ask.AllOf ? counted.Count : its.Ask is Ask.AnyOf any ? any.Count : its.Ask is Ask.FromPool p ? p.Count : 0, counted.Count);
            pool.AddRange(counted);
            if (ask.Kinds is null)
                falls.AddRange(named.Where(i => i.Kind == ItemKind.Fall));
        }

        pool = [.. pool.DistinctBy(i => i.Key)];
        var count = (asked * ask.Percent + 99) / 100;
        var name = RankName(ask.Rank);
        var placedFalls = items.Place(falls.DistinctBy(i => i.Key));
        reasons.Add(new ShareReckoned(name, ask.Percent, asked, count, placedFalls.Count));
        var lines = new List<SheetLine>();
        if (Line(requirement, home, again, placedFalls.Count, placedFalls, LineTitles.All, keepTitle: false) is { } full)
            lines.Add(full with { Requirement = full.Requirement + ":falls" });
        var placed = items.Place(pool);
        var now = Math.Min(count, placed.Count);
        var line = Line(requirement, home, again, now, placed, p => LineTitles.Share(name, now, p.Count), placed.Count == pool.Count && placed.All(p => p.InsteadOf is null));
        if (now < count)
            SayFewer(line, count, pool.Count, now, placed.Count);
        if (line is not null)
            lines.Add(line);
        return lines;
    }

    private SheetLine? Drawn(Requirement requirement, Ask.DrawnFromEarlier ask, int home, bool again)
    {
        if (ask.Count < 1)
            throw Impossible(requirement, home, ask.Count, 0);
        Func<Item, bool> kind = ask.Kinds is { } kinds ? i => kinds.Contains(i.Kind) : NoFalls;
        var pool = Earlier(home, kind, ask.Ranks.Count == 0 ? null : [.. ask.Ranks.Select(key => EarlierRank(requirement, home, key))]);
        var anyway = AskedAnyway();
        pool.RemoveAll(item => anyway.Contains(item.Key));
        if (question.Child is not { } child)
        {
            // What is drawn differs from child to child, so the wall says only how many and from where.
            var part = pool.Count == 0 ? SheetPart.Standing : pool.Min(PartOf);
            var title = requirement.Title ?? LineTitles.ToDraw(Math.Min(ask.Count, pool.Count), LineTitles.From(edition, ask));
            return pool.Count == 0 ? null : Made(requirement, home, again, part, Math.Min(ask.Count, pool.Count), [], title);
        }

        var placed = items.Place(pool);
        if (placed.Count == 0)
            return null;
        var urn = DrawLots.Urn(edition.Edition.Ranks[home].Key, requirement.Key, child.Draw);
        var count = Math.Min(ask.Count, placed.Count);
        var drawn = placed.Select((item, at) => (item, at, ticket: DrawLots.Ticket(urn, item.Item.Key))).OrderBy(p => p.ticket).ThenBy(p => p.at)
            .Take(count).OrderBy(p => p.at).Select(p => p.item with { Chosen = true }).ToList();
        Drew = true;
        reasons.Add(new DrawnByLot(child.Draw, count, placed.Count));
        return Line(requirement, home, again, count, drawn, LineTitles.Drawn, keepTitle: false);
    }

    private SheetLine? TheOther(Requirement requirement, Ask.TheOther ask, int home, bool again)
    {
        var earlier = EarlierRank(requirement, home, ask.Rank);
        var choice = edition.Edition.Ranks[earlier].Requirements.FirstOrDefault(r => r.Key == ask.Requirement)?.Ask as Ask.AnyOf
            ?? throw new ArgumentException($"{RankName(ask.Rank)} has no \"any of\" with the key \"{ask.Requirement}\", which {edition.Edition.Ranks[home].Name} asks the rest of.");
        var all = choice.Items.Select(edition.Item).ToList();
        var shown = question.Child is { } child ? all.Where(i => child.ShownAtRank.Contains(i.Key)).ToList() : [];
        var rest = all.Except(shown).ToList();
        var left = Math.Min(all.Count - choice.Count, rest.Count);
        var placed = items.Place(rest);
        var now = Math.Min(left, placed.Count);
        if (question.Child is not null)
            (left == 0 ? leftOut : reasons).Add(new ShownBefore(RankName(ask.Rank), [.. shown.Select(i => i.Name)], now, placed.Count));
        return now == 0
            ? null
            : Line(requirement, home, again, now, placed, p => LineTitles.TheOther(RankName(ask.Rank), now, p, shown.Count > 0), Whole(rest.Select(r => r.Key), placed));
    }

    // A lot that brings what is asked at this test in any case would bring nothing.
    private HashSet<string> AskedAnyway()
    {
        if (askedAnyway is not null)
            return askedAnyway;
        var anyway = new HashSet<string>(StringComparer.Ordinal);
        for (var below = 0; below < edition.Rank(question.Rank); below++)
        {
            foreach (var requirement in edition.Edition.Ranks[below].Requirements)
            {
                if (requirement.Carry == Carry.Always && requirement.Ask is Ask.AllOf && (requirement.Unit is null || requirement.Unit == question.Unit))
                    anyway.UnionWith(PreparedEdition.Named(requirement.Ask));
                else if (requirement.Carry == Carry.OnceAskedStays && question.Child is { } child)
                    anyway.UnionWith(PreparedEdition.Named(requirement.Ask).Where(child.AskedBefore.Contains));
            }
        }

        return askedAnyway = anyway;
    }

    // In ladder order, then as each rank has them, each once.
    private List<Item> Earlier(int below, Func<Item, bool> kind, HashSet<int>? only = null)
    {
        var found = new List<Item>();
        var there = new HashSet<string>(StringComparer.Ordinal);
        for (var rank = 0; rank < below; rank++)
        {
            if (only is not null && !only.Contains(rank))
                continue;
            foreach (var item in edition.NamedAt(rank))
            {
                if (kind(item) && there.Add(item.Key))
                    found.Add(item);
            }
        }

        return found;
    }

    private int EarlierRank(Requirement requirement, int home, string key)
    {
        var rank = edition.Rank(key);
        return rank < home
            ? rank
            : throw new ArgumentException($"{edition.Edition.Ranks[home].Name}, \"{requirement.Key}\": {RankName(key)} is not an earlier rank; name one below.");
    }

    private IReadOnlyList<string> Chosen(Requirement requirement, int home) =>
        question.Child?.Choices.FirstOrDefault(c => c.Requirement == requirement.Key || c.Requirement == Full(requirement, home))?.Items ?? [];

    private SheetLine? Line(Requirement requirement, int home, bool again, int count, List<SheetItem> placed, Func<IReadOnlyList<SheetItem>, string> title, bool keepTitle)
    {
        if (placed.Count == 0)
            return null;
        // A safety word comes first on every list. The sort is stable.
        IReadOnlyList<SheetItem> ordered = placed.Any(p => p.Item.Safety) ? [.. placed.OrderByDescending(p => p.Item.Safety)] : placed;
        var words = keepTitle && !string.IsNullOrWhiteSpace(requirement.Title) ? requirement.Title : title(ordered);
        return Made(requirement, home, again, placed.Min(p => PartOf(p.Item)), count, ordered, words);
    }

    private SheetLine Made(Requirement requirement, int home, bool again, SheetPart part, int count, IReadOnlyList<SheetItem> ordered, string title) => new(
        again ? Full(requirement, home) : requirement.Key, part, count, ordered, title, requirement.Condition, requirement.Critical, requirement.Carry,
        again ? edition.Edition.Ranks[home].Name : null, question.Child is null ? LineTitles.Ages(requirement.Ages) : null);

    private void SayFewer(SheetLine? line, int count, int of, int now, int nowOf) =>
        leftOut.Add(new FewerToChooseFrom(line?.Title ?? "", count, of, now, nowOf));

    // The club's own words for a line may name what is no longer in it; then the line is made from what is.
    private static bool Whole(IEnumerable<string> keys, List<SheetItem> placed) => keys.SequenceEqual(placed.Select(p => p.Item.Key));

    private string Full(Requirement requirement, int home) => edition.Edition.Ranks[home].Key + "/" + requirement.Key;

    private string RankName(string key) => edition.Edition.Ranks[edition.Rank(key)].Name;

    private ArgumentException Impossible(Requirement requirement, int home, int count, int of) =>
        new($"{edition.Edition.Ranks[home].Name}, \"{requirement.Key}\": {count} of {Words.Count(of, "item")} cannot be asked; mend the count.");

    /// <summary>Where an item stands on a sheet.</summary>
    internal static SheetPart PartOf(Item item) => item.Kind switch
    {
        ItemKind.Fall => SheetPart.Falls,
        ItemKind.HoldDown or ItemKind.Escape or ItemKind.Turnover or ItemKind.Strangle or ItemKind.Armlock => SheetPart.Ground,
        ItemKind.FreePractice or ItemKind.Exercise => SheetPart.Practice,
        ItemKind.Etiquette => SheetPart.Manners,
        ItemKind.Word => SheetPart.Words,
        ItemKind.Question => SheetPart.Questions,
        _ => SheetPart.Standing,
    };
}
