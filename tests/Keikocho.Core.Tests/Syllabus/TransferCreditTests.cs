using CsCheck;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Syllabus;

public sealed class TransferCreditTests
{
    private static readonly DateOnly On = new(2026, 3, 3);

    // Ranks of 7, 8 and 8 items; the first of each is a fall.
    private static readonly Edition Ladder = Make(fallAt: 1);

    private static Edition Make(int fallAt) => new(
        "Ladder", "edition 1", new(2026, 1, 1),
        [
            new("white", "White", null, null, 0, new(), []),
            .. new[] { (1, 7), (2, 8), (3, 8) }.Select(p => new LadderRank($"rank-{p.Item1}", $"Rank {p.Item1}", null, null, 0, new(),
            [
                new("items", new Ask.AllOf([.. Enumerable.Range(1, p.Item2).Select(n => $"r{p.Item1}-{n}")])),
            ])),
        ],
        [], [],
        [
            .. new[] { (1, 7), (2, 8), (3, 8) }.SelectMany(p => Enumerable.Range(1, p.Item2).Select(n => n == 1 && p.Item1 == fallAt
                ? new Item($"r{p.Item1}-{n}", ItemKind.Fall, $"Fall {p.Item1}", Fall: new FallForm(FallDirection.Back, false, 3))
                : new Item($"r{p.Item1}-{n}", ItemKind.Throw, $"Item {p.Item1}.{n}"))),
        ]);

    private static IReadOnlyList<string> Seen(params (int Rank, int Items)[] ranks) =>
        [.. ranks.SelectMany(r => Enumerable.Range(1, r.Items).Select(n => $"r{r.Rank}-{n}"))];

    private static TransferAnswer Reckon(TransferSnapshot question)
    {
        var answer = TransferCredit.Reckon(question);
        Assert.Empty(TransferCreditCheck.Objections(question, answer));
        return answer;
    }

    private static TransferSnapshot Ask(Edition edition, IReadOnlyList<string> seen, string worn = "rank-3") =>
        new(edition, worn, On, SheetChild.Plain(), [], seen, new TransferRule());

    [Fact]
    public void Seven_of_seven_five_of_eight_and_two_of_eight_teach_rank_two_with_nine_gaps_in_five_lessons()
    {
        var answer = Reckon(Ask(Ladder, Seen((1, 7), (2, 5), (3, 2))));
        Assert.Equal(("rank-2", 9, 5), (answer.TeachingRank, answer.Gaps, answer.Lessons));
        Assert.Equal([0, 0, 3, 6], answer.Ranks.Select(r => r.Missing));
        Assert.Equal(
            [
                "Rank 3 is kept: a belt that was brought along is worn here.",
                "Rank 1: 7 of 7 seen here, 100 %.",
                "Rank 2: 5 of 8 seen here, 62 %.",
                "Rank 3: 2 of 8 seen here, 25 %.",
                "Teaching starts at Rank 2, the lowest rank of which less than 75 % was seen here.",
                "9 gaps, at 2 a lesson 5 lessons.",
            ],
            answer.Reasons.Select(r => r.Sentence));
    }

    // The lower of the two; exactly 75 % is enough; nothing open leaves the rank worn.
    [Fact]
    public void The_lower_of_the_safety_rank_and_the_thin_rank_is_taught()
    {
        var fallAtThree = Make(fallAt: 3);
        var seen = Seen((1, 7), (2, 5), (3, 8)).Where(k => k != "r3-1").ToList();
        Assert.Equal("rank-2", Reckon(Ask(fallAtThree, seen)).TeachingRank);
        Assert.Equal("rank-1", Reckon(Ask(Ladder, [.. Seen((1, 7), (2, 5)).Where(k => k != "r1-1")])).TeachingRank);
    }

    [Fact]
    public void Three_quarters_are_enough_and_with_nothing_open_the_rank_worn_is_taught()
    {
        Assert.Equal("rank-3", Reckon(Ask(Ladder, Seen((1, 7), (2, 6), (3, 6)))).TeachingRank);
        Assert.Equal("rank-3", Reckon(Ask(Ladder, Seen((1, 7), (2, 8), (3, 8)))).TeachingRank);
    }

    [Fact, Statement(78)]
    public void A_rank_brought_along_is_kept_and_credits_no_fall()
    {
        var answer = Reckon(Ask(EveryShape.Edition, [], "orange"));
        Assert.Equal(("orange", "red"), (answer.KeepsRank, answer.TeachingRank));
        Assert.Equal(["Back fall", "Side fall, both sides", "Rolling fall"], answer.FallsToSee);
        Assert.Contains("No fall is credited: Back fall, Side fall, both sides and Rolling fall are shut until seen here.", answer.Reasons.Select(r => r.Sentence));
        Assert.Empty(Reckon(Ask(EveryShape.Edition, ["back-fall", "side-fall", "rolling-fall"], "orange")).FallsToSee);
    }

    [Fact]
    public void Either_of_two_counts_once_and_is_no_gap_when_one_was_seen()
    {
        var red = Reckon(Ask(EveryShape.Edition, ["o-goshi"], "red")).Ranks[1];
        Assert.DoesNotContain(red.Gaps, g => g.Contains("O-soto", StringComparison.Ordinal));
        Assert.Contains("A way out of the hold", red.Gaps);
    }

    [Fact]
    public void Seeing_more_never_lowers_the_rank_that_is_taught()
    {
        Gen.Int[0, 7].Array[3].Sample(n =>
        {
            var less = Ask(Ladder, Seen((1, Math.Min(n[0], 7)), (2, n[1]), (3, n[2])));
            var more = less with { SeenHere = [.. less.SeenHere, .. Seen((2, Math.Min(8, n[1] + 1)))] };
            var (a, b) = (Reckon(less), Reckon(more));
            return string.CompareOrdinal(a.TeachingRank, b.TeachingRank) <= 0 && a.Gaps >= b.Gaps;
        }, iter: 200);
    }
}
