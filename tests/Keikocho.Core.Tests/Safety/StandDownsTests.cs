using CsCheck;
using Keikocho.Core.Safety;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Safety;

public sealed class StandDownsTests
{
    private static readonly DateOnly Today = new(2026, 3, 24);

    private static StandDown Down(StandDownScope scope, int daysAgo = 10) => new(scope, Today.AddDays(-daysAgo), null, null);

    private static StandDownsAnswer Read(params StandDown[] standDowns)
    {
        var snapshot = new StandDownsSnapshot(Today, standDowns);
        var answer = StandDowns.Read(snapshot);
        Assert.Empty(StandDownsCheck.Objections(snapshot, answer));
        return answer;
    }

    [Theory]
    [InlineData(StandDownScope.NoFalls, false, true, true, false, "tori only")]
    [InlineData(StandDownScope.NoContact, false, false, true, false, "movement alone")]
    [InlineData(StandDownScope.OffTheMat, false, false, false, false, "watches")]
    [InlineData(StandDownScope.SpareTheNeck, true, true, true, true, "throws and is thrown")]
    public void Each_scope_forbids_its_own(StandDownScope scope, bool fall, bool contact, bool mat, bool neck, string role)
    {
        var answer = Read(Down(scope));
        Assert.Equal((fall, contact, mat, neck, role), (answer.MayFall, answer.MayHaveContact, answer.MayBeOnTheMat, answer.SparesTheNeck, answer.Role));
    }

    [Fact]
    public void The_strictest_of_several_decides_the_role() =>
        Assert.Equal("watches", Read(Down(StandDownScope.NoFalls), Down(StandDownScope.OffTheMat), Down(StandDownScope.NoContact)).Role);

    [Fact, Statement(18)]
    public void The_role_under_no_falls_is_tori_only_and_names_no_reason()
    {
        var answer = Read(Down(StandDownScope.NoFalls) with { WhoseWord = "the family doctor" });
        Assert.Equal("tori only", answer.Role);
    }

    [Fact, Statement(19)]
    public void A_lifted_one_stays_in_the_history_with_who_when_and_why()
    {
        var answer = Read(Down(StandDownScope.NoFalls) with { LiftedOn = Today.AddDays(-1), LiftedBy = "Anna", LiftedWhy = "letter seen" });
        Assert.Empty(answer.Standing);
        Assert.True(answer.MayFall);
        Assert.Equal(["No falls from 14 March 2026 was lifted on 23 March 2026 by Anna: letter seen."], answer.Reasons.Select(r => r.Sentence));
    }

    [Fact]
    public void A_lifting_entered_later_says_so() => Assert.Equal(
        ["No falls from 14 March 2026 was lifted on 14 March 2026, entered on 20 March 2026, by Anna: letter seen."],
        Read(Down(StandDownScope.NoFalls) with { LiftedOn = Today.AddDays(-10), LiftedBy = "Anna", LiftedWhy = "letter seen", LiftEnteredOn = Today.AddDays(-4) }).Reasons.Select(r => r.Sentence));

    [Theory, Statement(19)]
    [InlineData(false, "Anna", "letter seen", "The stand-down of 14 March 2026 is lifted only with a day, a named adult and a reason; name all three.")]
    [InlineData(true, null, "letter seen", "The stand-down of 14 March 2026 is lifted only with a day, a named adult and a reason; name all three.")]
    [InlineData(true, "Anna", " ", "The stand-down of 14 March 2026 is lifted only with a day, a named adult and a reason; name all three.")]
    public void Nothing_is_lifted_without_an_adult_a_reason_and_a_day(bool day, string? by, string? why, string sentence)
    {
        var fault = Assert.Throws<ArgumentException>(() => Read(Down(StandDownScope.NoFalls) with { LiftedOn = day ? Today : null, LiftedBy = by, LiftedWhy = why }));
        Assert.StartsWith(sentence, fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_lifted_before_it_began() =>
        Assert.Throws<ArgumentException>(() => Read(Down(StandDownScope.NoFalls) with { LiftedOn = Today.AddDays(-11), LiftedBy = "Anna", LiftedWhy = "letter seen" }));

    [Fact, Statement(21)]
    public void A_review_day_that_passed_ends_nothing_and_is_listed()
    {
        var down = Down(StandDownScope.NoFalls, 400) with { ReviewOn = Today.AddDays(-300) };
        var answer = Read(down);
        Assert.False(answer.MayFall);
        Assert.Equal([down], answer.ForReview);
        Assert.Equal(
            ["No falls since 17 February 2025, until a named adult lifts it with a reason; the review of 28 May 2025 is due, and it stands all the same."],
            answer.Reasons.Select(r => r.Sentence));
        Assert.Single(Read(down with { ReviewOn = Today }).ForReview);
        Assert.Empty(Read(down with { ReviewOn = Today.AddDays(1) }).ForReview);
    }

    [Fact]
    public void It_stands_from_its_first_day_to_the_day_it_is_lifted()
    {
        Assert.Single(Read(Down(StandDownScope.NoFalls, 0)).Standing);
        Assert.Empty(Read(Down(StandDownScope.NoFalls, -1)).Standing);
        Assert.Empty(Read(Down(StandDownScope.NoFalls) with { LiftedOn = Today, LiftedBy = "Anna", LiftedWhy = "well" }).Standing);
        Assert.Single(Read(Down(StandDownScope.NoFalls) with { LiftedOn = Today.AddDays(1), LiftedBy = "Anna", LiftedWhy = "well" }).Standing);
    }

    [Fact]
    public void Without_any_it_says_so() => Assert.Equal("No stand-down on 24 March 2026.", Assert.Single(Read().Reasons).Sentence);

    private static readonly Gen<StandDown[]> Any =
        Gen.Select(Gen.Int[1, 4], Gen.Int[-5, 60], Gen.Int[-10, 40], Gen.Int[-1, 40]).Select(t => new StandDown(
            (StandDownScope)t.Item1, Today.AddDays(-t.Item2), t.Item3 < 0 ? null : Today.AddDays(20 - t.Item3), null,
            t.Item4 < 0 ? null : Today.AddDays(t.Item4 - t.Item2), t.Item4 < 0 ? null : "Anna", t.Item4 < 0 ? null : "seen")).Array[0, 5];

    [Fact]
    public void Every_reading_stands_before_the_check() =>
        Any.Sample(s => StandDownsCheck.Objections(new(Today, s), StandDowns.Read(new(Today, s))).Count == 0);

    [Fact]
    public void What_nobody_lifts_stands_on_every_later_day() =>
        Gen.Select(Any, Gen.Int[0, 2_000]).Sample((s, later) =>
        {
            StandDown[] kept = [.. s.Where(d => d.LiftedOn is null)];
            return StandDowns.Read(new(Today, kept)).Standing.All(StandDowns.Read(new(Today.AddDays(later), kept)).Standing.Contains);
        });

    [Fact]
    public void A_reading_that_is_wrong_is_objected_to() =>
        Any.Sample(s =>
        {
            var q = new StandDownsSnapshot(Today, s);
            var a = StandDowns.Read(q);
            StandDownsAnswer[] wrong = [a with { MayFall = !a.MayFall }, a with { Role = "rests" }, a with { Standing = [.. a.Standing, Down(StandDownScope.NoFalls, 999)] }, a with { SparesTheNeck = !a.SparesTheNeck }];
            return wrong.All(w => StandDownsCheck.Objections(q, w).Count > 0);
        });
}
