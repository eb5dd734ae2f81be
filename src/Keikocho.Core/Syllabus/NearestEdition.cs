using Keikocho.Core.Kernel;

namespace Keikocho.Core.Syllabus;

/// <summary>The question: by which of two editions is one child tested for one rank?</summary>
/// <param name="Older">The child's sheet by the older edition.</param>
/// <param name="Newer">The child's sheet by the newer edition, for the same rank and day.</param>
/// <param name="AtOnce">Keys of the newer sheet's lines that hold at once, whatever edition is nearer: its safety items.</param>
/// <param name="GoneAtOnce">Keys of items that the newer edition took out for safety: gone from every sheet at once.</param>
/// <param name="Secured">Keys of items that the child has secured, harder forms' easier ones included.</param>
/// <param name="Changeover">From this day on the newer edition holds for everybody.</param>
/// <param name="NewerFrom">
/// First day of the newer edition: at a test before it the older one holds for everybody, with what the newer one asks at once. Null where
/// the newer one holds already.
/// </param>
public sealed record NearestEditionSnapshot(
    RequirementSheet Older,
    RequirementSheet Newer,
    IReadOnlyList<string> AtOnce,
    IReadOnlyList<string> GoneAtOnce,
    IReadOnlyList<string> Secured,
    DateOnly Changeover,
    DateOnly? NewerFrom = null);

/// <summary>By which edition, and what is left.</summary>
/// <param name="IsNewer">The newer one.</param>
/// <param name="Sheet">The sheet that the child needs: the nearer one, with what holds at once and without what is gone.</param>
/// <param name="OlderLeft">Items left by the older edition, with what holds at once.</param>
/// <param name="NewerLeft">Items left by the newer edition.</param>
/// <param name="Reasons">Why.</param>
public sealed record NearestEditionAnswer(bool IsNewer, RequirementSheet Sheet, int OlderLeft, int NewerLeft, IReadOnlyList<Reason> Reasons);

/// <summary>Until the changeover the complete set that a child is nearer to; a tie goes to the newer edition; safety holds at once.</summary>
public static class NearestEdition
{
    /// <summary>Makes both sheets and chooses. What the newer edition marks as at once is read from its requirements.</summary>
    /// <param name="older">The question by the older edition.</param>
    /// <param name="newer">The same question by the newer edition.</param>
    /// <param name="secured">Keys of items that the child has secured; the easier forms that they meet are added.</param>
    /// <param name="goneAtOnce">Keys of items taken out for safety.</param>
    /// <param name="changeover">From this day on the newer edition holds.</param>
    public static NearestEditionAnswer Choose(
        SheetSnapshot older, SheetSnapshot newer, IReadOnlyList<string> secured, IReadOnlyList<string> goneAtOnce, DateOnly changeover)
    {
        ArgumentNullException.ThrowIfNull(older);
        ArgumentNullException.ThrowIfNull(newer);
        ArgumentNullException.ThrowIfNull(goneAtOnce);
        return Choose(Question(older, newer, MakeSheet.Make(older), MakeSheet.Make(newer), secured, changeover) with
        {
            GoneAtOnce = [.. (newer.Edition.GoneAtOnce ?? []).Union(goneAtOnce)],
        });
    }

    /// <summary>The question of two sheets that are made already. What the newer edition asks or takes out at once is read from it.</summary>
    /// <param name="older">The question of the older sheet.</param>
    /// <param name="newer">The question of the newer sheet.</param>
    /// <param name="olderSheet">The older sheet.</param>
    /// <param name="newerSheet">The newer sheet.</param>
    /// <param name="secured">Keys of items that the child has secured; the easier forms that they meet are added.</param>
    /// <param name="changeover">From this day on the newer edition holds.</param>
    public static NearestEditionSnapshot Question(
        SheetSnapshot older, SheetSnapshot newer, RequirementSheet olderSheet, RequirementSheet newerSheet, IReadOnlyList<string> secured, DateOnly changeover)
    {
        ArgumentNullException.ThrowIfNull(older);
        ArgumentNullException.ThrowIfNull(newer);
        ArgumentNullException.ThrowIfNull(secured);
        var atOnce = newer.Edition.Ranks.SelectMany(r => r.Requirements, (r, q) => (r, q)).Where(p => p.q.AtOnce)
            .Select(p => p.r.Key == newer.Rank ? p.q.Key : $"{p.r.Key}/{p.q.Key}").Where(key => newerSheet.Lines.Any(l => l.Requirement == key));
        return new NearestEditionSnapshot(
            olderSheet, newerSheet, [.. atOnce], newer.Edition.GoneAtOnce ?? [], Met(secured, newer.Edition, older.Edition), changeover);
    }

    /// <summary>Chooses between two sheets.</summary>
    /// <exception cref="ArgumentException">The sheets are of different days, or a line that holds at once is not on the newer sheet.</exception>
    public static NearestEditionAnswer Choose(NearestEditionSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var (older, newer) = (snapshot.Older, snapshot.Newer);
        if (older.TestOn != newer.TestOn)
            throw new ArgumentException($"The sheets are for {older.TestOn.Full()} and {newer.TestOn.Full()}; compare two of one day.", nameof(snapshot));
        foreach (var key in snapshot.AtOnce.Where(key => newer.Lines.All(l => l.Requirement != key)))
            throw new ArgumentException($"The line \"{key}\" that holds at once is not on the newer sheet; name one of its lines.", nameof(snapshot));
        var gone = snapshot.GoneAtOnce.ToHashSet(StringComparer.Ordinal);
        var secured = snapshot.Secured.ToHashSet(StringComparer.Ordinal);
        var fresh = newer with { Lines = Without(newer.Lines, gone) };
        var kept = Without(older.Lines, gone);
        var asked = kept.Where(l => l.IsAll).SelectMany(l => l.Items).Select(i => i.Item.Key).ToHashSet(StringComparer.Ordinal);
        var added = fresh.Lines.Where(l => snapshot.AtOnce.Contains(l.Requirement)).Select(l => AtOnce(l, asked)).OfType<SheetLine>().ToList();
        var old = older with { Lines = [.. kept.Concat(added).OrderBy(l => l.Part)] };

        var (oldLeft, newLeft) = (Left(old, secured), Left(fresh, secured));
        var after = older.TestOn >= snapshot.Changeover;
        var isNewer = !(older.TestOn < snapshot.NewerFrom) && (after || newLeft <= oldLeft);
        List<Reason> reasons = [new NearerEdition(older.EditionName, newer.EditionName, oldLeft, newLeft, older.TestOn, snapshot.Changeover, snapshot.NewerFrom)];
        if (added.Count > 0)
            reasons.Add(new HoldsAtOnce(newer.EditionName, [.. added.Select(l => l.Title)]));
        var names = older.Lines.Concat(newer.Lines).SelectMany(l => l.Items).Where(i => gone.Contains(i.Item.Key)).Select(i => i.Item.Name).Distinct().ToList();
        if (names.Count > 0)
            reasons.Add(new TakenOutForSafety(names));
        var sheet = isNewer ? fresh : old;
        return new NearestEditionAnswer(isNewer, sheet with { Reasons = [.. sheet.Reasons, .. reasons] }, oldLeft, newLeft, reasons);
    }

    // How many items are still to be shown: of each line as many as it asks less what is secured or kept of it.
    private static int Left(RequirementSheet sheet, HashSet<string> secured) =>
        sheet.Lines.Sum(l => Math.Max(0, l.Count - l.Items.Count(i => i.KeptUntil is not null || secured.Contains(i.Item.Key))));

    private static List<SheetLine> Without(IReadOnlyList<SheetLine> lines, HashSet<string> gone)
    {
        var left = new List<SheetLine>();
        foreach (var line in lines)
        {
            if (!line.Items.Any(i => gone.Contains(i.Item.Key)))
                left.Add(line);
            else if (Of(line, [.. line.Items.Where(i => !gone.Contains(i.Item.Key))]) is { } smaller)
                left.Add(smaller);
        }

        return left;
    }

    // Asked anyway by the older sheet: not twice. A choice stays whole.
    private static SheetLine? AtOnce(SheetLine line, HashSet<string> asked)
    {
        if (line.IsAll && line.Items.Any(i => asked.Contains(i.Item.Key)))
        {
            if (Of(line, [.. line.Items.Where(i => !asked.Contains(i.Item.Key))]) is not { } rest)
                return null;
            line = rest;
        }

        return line with { Requirement = "at-once/" + line.Requirement };
    }

    private static SheetLine? Of(SheetLine line, List<SheetItem> items) => items.Count == 0
        ? null
        : line with { Items = items, Count = Math.Min(line.Count, items.Count), Title = LineTitles.Of(Math.Min(line.Count, items.Count), items) };

    private static List<string> Met(IReadOnlyList<string> secured, params Edition[] editions)
    {
        var met = new HashSet<string>(secured, StringComparer.Ordinal);
        var open = new Queue<string>(secured);
        while (open.TryDequeue(out var key))
        {
            foreach (var easier in editions.SelectMany(e => e.Items).Where(i => i.Key == key).SelectMany(i => i.Covers ?? []))
            {
                if (met.Add(easier))
                    open.Enqueue(easier);
            }
        }

        return [.. met];
    }
}

/// <summary>Which edition is nearer.</summary>
/// <param name="Older">Name of the older edition.</param>
/// <param name="Newer">Name of the newer one.</param>
/// <param name="OlderLeft">Items left by the older one.</param>
/// <param name="NewerLeft">Items left by the newer one.</param>
/// <param name="TestOn">Day of the test.</param>
/// <param name="Changeover">From this day on the newer one holds.</param>
/// <param name="NewerFrom">First day of the newer one, where that may lie after the test; null where it holds already.</param>
public sealed record NearerEdition(
    string Older, string Newer, int OlderLeft, int NewerLeft, DateOnly TestOn, DateOnly Changeover, DateOnly? NewerFrom = null) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            if (TestOn < NewerFrom)
                return $"{Newer}, the new list, holds from {NewerFrom.Value.Full()} on, after the test on {TestOn.Full()}: {Older}, the older list, is asked.";
            if (TestOn >= Changeover)
                return $"The test on {TestOn.Full()} is not before the changeover on {Changeover.Full()}: {Newer} holds.";
            var left = $"By the older list, {Older}, {Words.Count(OlderLeft, "item")} {Words.Is(OlderLeft)} left, by the new one, {Newer}, {NewerLeft}";
            if (OlderLeft < NewerLeft)
                return $"{left}: {Older} is asked, and may be asked at tests before {Changeover.Full()}; from that day on {Newer} holds for everybody.";
            return OlderLeft == NewerLeft ? $"{left}: as many by both, so {Newer} is asked." : $"{left}: {Newer} is asked, though the older may be asked at tests before {Changeover.Full()}.";
        }
    }
}

/// <summary>What holds at once.</summary>
/// <param name="Edition">Name of the newer edition.</param>
/// <param name="Lines">The lines.</param>
public sealed record HoldsAtOnce(string Edition, IReadOnlyList<string> Lines) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"For safety {Words.List(Lines)} of {Edition} {Words.Is(Lines.Count)} asked at once.";
}

/// <summary>What is gone at once.</summary>
/// <param name="Items">Names of the items.</param>
public sealed record TakenOutForSafety(IReadOnlyList<string> Items) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"For safety {Words.List(Items)} {Words.Is(Items.Count)} asked no more by either edition; what was secured stays in the history.";
}
