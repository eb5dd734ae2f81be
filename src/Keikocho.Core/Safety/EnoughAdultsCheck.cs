using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>
/// Judges a count of adults by giving each adult children to watch: what is needed must suffice, and one fewer must not. Integers on
/// one common denominator, no fractions.
/// </summary>
public static class EnoughAdultsCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(AdultsSnapshot snapshot, AdultsAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(answer);
        var rules = snapshot.Rules ?? new AdultRules();
        var objections = new List<string>();
        void Expect(bool holds, string what)
        {
            if (!holds)
                objections.Add(what);
        }

        bool Counts(AdultPresent a) => !a.Under18 && a.VettedUntil.HasValue && a.VettedUntil.Value >= snapshot.Today;

        // One adult's whole attention is this many shares; a child takes its band's share of it.
        var shares = rules.BandsInUse().Aggregate(1L, (product, b) => product * b.ChildrenPerAdult);
        void Judge(string place, MatEnd? end, AdultCount count)
        {
            var children = snapshot.Children.Where(c => end is null || c.End == end).ToArray();
            long taken = 0;
            var perBand = new int[rules.BandsInUse().Count];
            foreach (var group in children)
            {
                for (var i = 0; i < perBand.Length; i++)
                {
                    var band = rules.BandsInUse()[i];
                    var age = group.Age ?? rules.UnknownAgeCountsAs;
                    if (age < band.From || age > band.To)
                        continue;
                    perBand[i] += group.Number;
                    taken += group.Number * (shares / band.ChildrenPerAdult);
                }
            }

            var extra = 0;
            foreach (var named in snapshot.Extra ?? [])
                extra += children.Any(c => c.End == named.End) ? named.Adults : 0;
            var least = end is null && children.Length > 0 ? rules.LeastAdults : 0;
            var forRatio = count.NeededBySum - extra;
            Expect(count.Children == perBand.Sum(), $"{place}: the number of children is wrong.");
            Expect(forRatio * shares >= taken && forRatio >= least, $"{place}: that many adults do not suffice.");
            Expect(forRatio == 0 || forRatio == least || (forRatio - 1) * shares < taken, $"{place}: fewer adults would suffice.");
            var each = 0;
            for (var i = 0; i < perBand.Length; i++)
            {
                for (var watched = 0; watched < perBand[i]; watched += rules.BandsInUse()[i].ChildrenPerAdult)
                    each++;
            }

            Expect(count.NeededByBand == Math.Max(least, each) + extra, $"{place}: each band rounded up does not give {count.NeededByBand}.");
            Expect(count.Needed == (rules.Method == RatioMethod.SumOfFractions ? count.NeededBySum : count.NeededByBand), $"{place}: the wrong method was used.");
            Expect(count.Have == snapshot.Adults.Count(a => Counts(a) && (end is null || a.End == end)), $"{place}: an adult is counted who does not count, or the other way round.");
            Expect(count.ShortBy >= 0 && (count.ShortBy == 0 ? count.Have >= count.Needed : count.Have + count.ShortBy == count.Needed), $"{place}: the shortfall is wrong.");
        }

        Judge("Hall", null, answer.Hall);
        Judge("Beginners' end", MatEnd.Beginners, answer.Beginners);
        Judge("Main group", MatEnd.Main, answer.Main);
        Expect(answer.NotCounted.Select(n => n.Name).SequenceEqual(snapshot.Adults.Where(a => !Counts(a)).Select(a => a.Name)), "Everyone who does not count is named.");
        Expect(
            answer.FirstAiders.SequenceEqual(snapshot.Adults.Where(a => Counts(a) && a.FirstAidUntil.HasValue && a.FirstAidUntil.Value >= snapshot.Today).Select(a => a.Name)),
            "A first-aider is an adult who counts and whose first aid holds today.");
        Expect(answer.NobodyFree == (answer.Hall.Children > 0 && answer.Hall.Have <= answer.Hall.Needed), "Nobody is free when all are needed.");
        return objections;
    }
}
