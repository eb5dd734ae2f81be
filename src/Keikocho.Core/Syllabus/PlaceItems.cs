using Keikocho.Core.Kernel;

namespace Keikocho.Core.Syllabus;

/// <summary>Puts items on one sheet: what is barred gives way to its alternative or to nothing, what is kept or agreed is marked.</summary>
internal sealed class PlaceItems
{
    private readonly SheetChild? child;
    private readonly DateOnly testOn;
    private readonly PreparedEdition edition;
    private readonly AgeBars bars;
    private readonly Dictionary<string, DateOnly> kept = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> ways = new(StringComparer.Ordinal);
    private readonly HashSet<string> said = new(StringComparer.Ordinal);
    private readonly List<Reason> leftOut;
    private readonly List<Reason> reasons;

    public PlaceItems(SheetSnapshot question, PreparedEdition edition, List<Reason> leftOut, List<Reason> reasons)
    {
        child = question.Child;
        testOn = question.TestOn;
        this.edition = edition;
        this.leftOut = leftOut;
        this.reasons = reasons;
        bars = edition.Bars(question.AgeRules);
        foreach (var pass in child?.Kept ?? [])
        {
            // Kept twice: the later day counts.
            if (!kept.TryGetValue(pass.Item, out var until) || until < pass.Until)
                kept[pass.Item] = pass.Until;
        }

        foreach (var way in child?.Ways ?? [])
        {
            if (string.IsNullOrWhiteSpace(way.Wording))
                throw new ArgumentException($"The agreed way for \"{way.Item}\" has no words; say how it is shown.");
            if (!ways.TryAdd(way.Item, way.Wording))
                throw new ArgumentException($"Two ways are agreed for \"{way.Item}\"; keep one.");
        }
    }

    /// <summary>The items with their stand-ins, each once, in order; what has none is left out.</summary>
    public List<SheetItem> Place(IEnumerable<Item> asked)
    {
        var placed = new List<SheetItem>();
        HashSet<string>? there = null;
        foreach (var item in asked)
        {
            if (Place(item) is not { } one)
                continue;
            // A stand-in that is asked in this line anyway is asked once.
            there ??= new HashSet<string>(StringComparer.Ordinal);
            if (there.Add(one.Item.Key))
                placed.Add(one);
            else if (one.InsteadOf is null)
                placed[placed.FindIndex(p => p.Item.Key == one.Item.Key)] = one;
        }

        return placed;
    }

    /// <summary>One item; null where it is barred and has no stand-in that is not barred itself.</summary>
    public SheetItem? Place(Item asked)
    {
        var shown = asked;
        if (child is not null && IsBarred(asked))
        {
            shown = Alternative(asked, IsBarred);
            Say(asked, shown);
            if (shown is null)
                return null;
        }

        // Who kept a pass of the item keeps it for what stands in its place.
        DateOnly? until = Until(shown.Key) ?? (ReferenceEquals(shown, asked) ? null : Until(asked.Key));
        if (until is { } day && said.Add("kept " + shown.Key))
            leftOut.Add(new PassKept(shown.Name, day, Holds: true));
        var way = ways.Count == 0 ? null : ways.GetValueOrDefault(shown.Key);
        return way is null && until is null && ReferenceEquals(shown, asked)
            ? edition.Plain(shown)
            : new SheetItem(shown, way, ReferenceEquals(shown, asked) ? null : asked.Name, until);
    }

    /// <summary>On the copy on the wall: at which ages something else is shown.</summary>
    public void SayWhatBars(IEnumerable<SheetItem> shown)
    {
        if (child is not null)
            return;
        foreach (var one in shown)
        {
            if (bars.Of(one.Item) is [var strictest, ..] && said.Add(one.Item.Key))
                reasons.Add(new BarredByAge(one.Item.Name, Alternative(one.Item, i => bars.Of(i).Count > 0)?.Name, strictest));
        }
    }

    private bool IsBarred(Item item) => (child!.SpareTheNeck && item.LoadsTheNeck) || bars.For(item, child.Born, testOn) is not null;

    private Item? Alternative(Item asked, Func<Item, bool> barred)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal) { asked.Key };
        var at = asked;
        while (at.Alternative is { } next && seen.Add(next))
        {
            at = edition.Item(next);
            if (!barred(at))
                return at;
        }

        return null;
    }

    private void Say(Item asked, Item? shown)
    {
        if (!said.Add(asked.Key))
            return;
        leftOut.Add(bars.For(asked, child!.Born, testOn) is { } rule
            ? new BarredByAge(asked.Name, shown?.Name, rule)
            : new GivesWayAsAgreed(asked.Name, shown?.Name));
    }

    private DateOnly? Until(string key)
    {
        if (kept.Count == 0 || !kept.TryGetValue(key, out var until))
            return null;
        if (until >= testOn)
            return until;
        if (said.Add("kept " + key))
            reasons.Add(new PassKept(edition.Item(key).Name, until, Holds: false));
        return null;
    }
}
