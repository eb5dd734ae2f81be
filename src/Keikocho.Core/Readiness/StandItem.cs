using Keikocho.Core.Evening;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>How an item that is read from sightings stands.</summary>
internal static class StandItem
{
    private const int MostDays = 4;

    public static ItemStanding Of(ReadinessFrame frame, SheetLine line, SheetItem on)
    {
        var item = on.Item;
        var rule = frame.Parts.Rule;
        var asked = item.Kind is ItemKind.Word or ItemKind.Question or ItemKind.Etiquette ? rule.WordEvenings : rule.TechniqueEvenings;
        DateOnly? freshFrom = line.Critical ? frame.FreshFrom : null;
        var since = Since(frame, item.Kind, line.Carry);
        if (on.KeptUntil >= frame.TestOn)
            return Given(item, ItemStandingWord.Kept, $"kept until {ReadinessPhrases.Day(on.KeptUntil.Value, frame.AsOf)}", asked, on.KeptUntil);

        // A credit has no day, so it can never be fresh: critical items are seen here.
        if (!line.Critical && frame.Credited.Contains(item.Key))
            return Given(item, ItemStandingWord.CreditedByRank, "credited by rank", asked, null);

        var count = new Counting(frame.AsOf, since);
        count.Add(frame.Seen.GetValueOrDefault(item.Key));
        var missing = count.Missing(asked, freshFrom);
        var harder = false;
        if (missing > 0 && frame.Harder is { } forms)
        {
            var before = missing;
            foreach (var form in HarderForms.Than(forms, item.Key))
                count.Add(frame.Seen.GetValueOrDefault(form));
            missing = count.Missing(asked, freshFrom);
            harder = missing < before;
        }

        var good = count.Good();
        var word = Word(missing, harder, good.Length, count, freshFrom);
        var reason = new ItemCounted(
            item.Name, item.Kind, word, asked, good, since, freshFrom, rule.CriticalFreshDays, missing, count.IsSettled, null);
        var shown = good.Length > MostDays ? good[^MostDays..] : good;
        return new ItemStanding(item.Key, item.Name, word, good.Length, missing, shown, Said(frame, item.Kind, word, missing, shown, count), reason);
    }

    // Techniques are shown anew for each rank; what is asked for ever, or once asked stays, is asked anew too; a word of this rank was learnt once.
    private static DateOnly? Since(ReadinessFrame frame, ItemKind kind, Carry carry) =>
        kind is ItemKind.Word or ItemKind.Question or ItemKind.Etiquette && carry == Carry.ThisRank ? null : frame.Parts.Evidence.PromotedOn;

    private static ItemStanding Given(Item item, ItemStandingWord word, string said, int asked, DateOnly? keptUntil) =>
        new(item.Key, item.Name, word, 0, 0, [], said, new ItemCounted(item.Name, item.Kind, word, asked, [], null, null, 0, 0, false, keptUntil));

    private static ItemStandingWord Word(int missing, bool harder, int good, Counting count, DateOnly? freshFrom)
    {
        if (missing == 0)
            return harder ? ItemStandingWord.MetByHarderForm : ItemStandingWord.Good;
        if (good > 0)
            return count.Latest < freshFrom ? ItemStandingWord.GoodNotFresh : ItemStandingWord.GoodTooFew;
        if (count.SuggestedOn is not null)
            return ItemStandingWord.Suggested;
        if (count.PromptedOn is not null)
            return ItemStandingWord.Prompted;
        return count.NotYetOn is not null || count.DisagreeOn is not null ? ItemStandingWord.NotYet : ItemStandingWord.NeverSeen;
    }

    private static string Said(ReadinessFrame frame, ItemKind kind, ItemStandingWord word, int missing, DateOnly[] shown, Counting count)
    {
        var said = missing == 0
            ? $"{ReadinessPhrases.Seen(kind)} on {ReadinessPhrases.Days(shown, frame.AsOf)}"
            : word switch
            {
                ItemStandingWord.Prompted => $"prompted on {ReadinessPhrases.Day(count.PromptedOn!.Value, frame.AsOf)}; {ReadinessPhrases.Missing(kind, missing, shown, false, frame.AsOf)}",
                ItemStandingWord.NotYet when count.NotYetOn is { } day => $"not yet on {ReadinessPhrases.Day(day, frame.AsOf)}; {ReadinessPhrases.Missing(kind, missing, shown, false, frame.AsOf)}",
                _ => ReadinessPhrases.Missing(kind, missing, shown, word == ItemStandingWord.GoodNotFresh, frame.AsOf),
            };
        if (count.IsSettled && missing == 0)
            said += ", signed off on paper";
        if (word == ItemStandingWord.MetByHarderForm)
            said += ", by a harder form";
        if (count.SuggestedOn is { } suggested && missing > 0)
            said += $"; a leader saw it good on {ReadinessPhrases.Day(suggested, frame.AsOf)}, which waits for an instructor";
        if (count.DisagreeOn is { } split && missing > 0)
            said += $"; two adults disagree about {ReadinessPhrases.Day(split, frame.AsOf)}, which counts once an instructor settles it";
        return said;
    }

    /// <summary>The evenings of one item, and of its harder forms once they are added.</summary>
    private struct Counting(DateOnly asOf, DateOnly? since)
    {
        private SortedSet<DateOnly>? good;

        public bool IsSettled { get; private set; }

        public DateOnly? PromptedOn { get; private set; }

        public DateOnly? NotYetOn { get; private set; }

        public DateOnly? DisagreeOn { get; private set; }

        public DateOnly? SuggestedOn { get; private set; }

        public readonly DateOnly? Latest => good?.Max;

        public void Add(ItemSeen? seen)
        {
            if (seen is null)
                return;
            foreach (var evening in seen.Evenings)
            {
                if (evening.On > asOf || evening.On <= since)
                    continue;
                if (!evening.Confirmed)
                    SuggestedOn = evening.Word == SeenWord.Good ? Later(SuggestedOn, evening.On) : SuggestedOn;
                else if (evening.Word is null)
                    DisagreeOn = Later(DisagreeOn, evening.On);
                else if (evening.Word == SeenWord.Prompted)
                    PromptedOn = Later(PromptedOn, evening.On);
                else if (evening.Word == SeenWord.NotYet)
                    NotYetOn = Later(NotYetOn, evening.On);
                else
                {
                    (good ??= []).Add(evening.On);
                    IsSettled |= evening.Settled;
                }
            }
        }

        public readonly int Missing(int asked, DateOnly? freshFrom)
        {
            var missing = IsSettled ? 0 : Math.Max(0, asked - (good?.Count ?? 0));
            return freshFrom is { } from && !(Latest >= from) ? Math.Max(1, missing) : missing;
        }

        public readonly DateOnly[] Good() => good is null ? [] : [.. good];

        private static DateOnly Later(DateOnly? one, DateOnly other) => one is { } day && day > other ? day : other;
    }
}
