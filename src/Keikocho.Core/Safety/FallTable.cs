namespace Keikocho.Core.Safety;

/// <summary>The hand of a throw. The numbers are stored and never change their meaning.</summary>
public enum ThrowHand
{
    /// <summary>Right-handed.</summary>
    Right = 1,
    /// <summary>Left-handed.</summary>
    Left = 2,
}

/// <summary>A fall that there is.</summary>
/// <param name="Way">Direction and side. A side is where one lands; a roll is named after the shoulder that leads.</param>
/// <param name="Stage">1 to 6.</param>
/// <param name="How">How it is shown, in a few words: "from the knees".</param>
/// <param name="Source">Where the line comes from.</param>
public sealed record FallThatIs(FallWay Way, int Stage, string How, string Source);

/// <summary>How the partner falls from a throw.</summary>
/// <param name="Technique">The technique, as the name library spells it; of a combination the first.</param>
/// <param name="Then">Of a combination the technique that follows; null for a single throw.</param>
/// <param name="Hand">Right- or left-handed.</param>
/// <param name="Ways">Ways in which the partner may fall; all must be open.</param>
/// <param name="FirstDrill">Stage that a first drill asks.</param>
/// <param name="FreeDrill">Stage that drilling it freely asks.</param>
/// <param name="BackwardReap">A reap or hook that throws straight back, where a head is hurt most easily.</param>
/// <param name="Source">Where the line comes from, and who has reviewed it.</param>
public sealed record ThrowFall(
    string Technique, string? Then, ThrowHand Hand, IReadOnlyList<FallWay> Ways, int FirstDrill, int FreeDrill, bool BackwardReap, string Source)
{
    /// <summary>"O-goshi", "O-uchi-gari into Ko-uchi-gari".</summary>
    public string Name => Then is null ? Technique : $"{Technique} into {Then}";
}

/// <summary>Which falls there are, and which way the partner falls from each throw. Nothing that is not written here is inferred.</summary>
/// <param name="Falls">Every fall that there is.</param>
/// <param name="Throws">Every throw, a line for each hand.</param>
public sealed record FallTable(IReadOnlyList<FallThatIs> Falls, IReadOnlyList<ThrowFall> Throws)
{
    /// <summary>A table without a line: nobody is thrown.</summary>
    public static FallTable Empty { get; } = new([], []);

    /// <summary>Whether there is such a fall.</summary>
    public bool Has(FallWay way, int stage) => Falls.Any(f => f.Way == way && f.Stage == stage);

    /// <summary>The line of one throw and hand; null where the table has none.</summary>
    public ThrowFall? Of(string technique, ThrowHand hand, string? then = null) => Throws.FirstOrDefault(t =>
        t.Hand == hand && Same(t.Technique, technique) && (then is null ? t.Then is null : t.Then is not null && Same(t.Then, then)));

    /// <summary>
    /// A throw as the fall gate is asked about it. Where the table has no line for one of the hands the ways are empty, and the gate
    /// lets nobody be thrown.
    /// </summary>
    /// <exception cref="ArgumentException">No hand is named.</exception>
    public PlannedThrow Plan(string technique, IReadOnlyList<ThrowHand> hands, bool freely, string? then = null)
    {
        ArgumentNullException.ThrowIfNull(technique);
        ArgumentNullException.ThrowIfNull(hands);
        if (hands.Count == 0)
            throw new ArgumentException($"{technique}: name the hand or hands that are drilled.", nameof(hands));
        var name = then is null ? technique : $"{technique} into {then}";
        var lines = hands.Distinct().Select(h => Of(technique, h, then)).ToArray();
        if (lines.Any(l => l is null))
            return new PlannedThrow(name, [], FallWords.LastStage);
        return new PlannedThrow(
            name, [.. lines.SelectMany(l => l!.Ways).Distinct().OrderBy(w => w.Direction).ThenBy(w => w.Side)], lines.Max(l => freely ? l!.FreeDrill : l!.FirstDrill));
    }

    /// <summary>What contradicts itself, a sentence each; empty when all is well.</summary>
    public IReadOnlyList<string> Objections()
    {
        var objections = new List<string>();
        foreach (var twice in Falls.GroupBy(f => (f.Way, f.Stage)).Where(g => g.Count() > 1))
            objections.Add($"The fall {FallWords.Of(twice.Key.Way)} at {FallWords.Stage(twice.Key.Stage)} is there {twice.Count()} times.");
        foreach (var fall in Falls.Where(f => f.Stage > FallWords.FirstStage && !Has(f.Way, f.Stage - 1)))
            objections.Add($"The fall {FallWords.Of(fall.Way)} at {FallWords.Stage(fall.Stage)} has no stage below it, so nobody could come to it.");
        foreach (var twice in Throws.GroupBy(t => (t.Name.ToUpperInvariant(), t.Hand)).Where(g => g.Count() > 1))
            objections.Add($"{twice.First().Name} is there {twice.Count()} times for one hand.");
        foreach (var line in Throws)
        {
            if (line.Ways.Count == 0)
                objections.Add($"{line.Name} names no way of falling.");
            if (line.FreeDrill < line.FirstDrill)
                objections.Add($"{line.Name} asks less of a free drill than of a first one.");
            foreach (var way in line.Ways.Where(w => !Has(w, line.FreeDrill) || !Has(w, line.FirstDrill)))
                objections.Add($"{line.Name} asks a fall that there is not: {FallWords.Of(way)} at stage {line.FirstDrill} and {line.FreeDrill}.");
        }

        return objections;
    }

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
