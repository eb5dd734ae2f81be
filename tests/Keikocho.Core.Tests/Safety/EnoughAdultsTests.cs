using CsCheck;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Safety;

public sealed class EnoughAdultsTests
{
    private static readonly DateOnly Today = new(2026, 3, 3);

    private static readonly DateOnly Later = new(2027, 3, 3);

    private static AdultPresent Adult(string name, MatEnd? end = null) => new(name, end, false, Later, Later, Later);

    private static AdultPresent[] Adults(int number) => [.. Enumerable.Range(1, number).Select(i => Adult($"Adult {i}"))];

    private static ChildrenAtEnd Children(int number, int? age, MatEnd end = MatEnd.Main) => new(end, age, number);

    private static AdultsAnswer Count(AdultsSnapshot snapshot)
    {
        var answer = EnoughAdults.Count(snapshot);
        Assert.Empty(EnoughAdultsCheck.Objections(snapshot, answer));
        return answer;
    }

    private static int Needed(params ChildrenAtEnd[] children) => Count(new AdultsSnapshot(Today, children, [])).Hall.Needed;

    // Published worked examples: thecpsu.org.uk and learning.nspcc.org.uk (read).
    [Theory]
    [InlineData(9, 1, 3)]
    [InlineData(25, 14, 3)]
    [InlineData(10, 14, 2)]
    // Our own calculation from the same ratios.
    [InlineData(8, 10, 2)]
    [InlineData(9, 10, 2)]
    [InlineData(17, 10, 3)]
    [InlineData(24, 10, 3)]
    [InlineData(7, 6, 2)]
    [InlineData(13, 6, 3)]
    public void One_age_needs_the_published_number(int children, int age, int needed) => Assert.Equal(needed, Needed(Children(children, age)));

    // 11/6 + 13/8 = 83/24, worked by hand: 4 needed, 3 there, 2 leaders of 15 who do not count.
    private static readonly AdultsSnapshot Worked = new(
        Today, [Children(11, 7, MatEnd.Beginners), Children(13, 10)],
        [
            Adult("Anna", MatEnd.Beginners), Adult("Ben", MatEnd.Main), Adult("Carla", MatEnd.Main),
            new("Dan", MatEnd.Beginners, Under18: true), new("Eve", MatEnd.Main, Under18: true, VettedUntil: Later),
        ]);

    [Fact, Statement(42)]
    public void Three_adults_and_two_leaders_for_24_children_are_short_by_1()
    {
        var answer = Count(Worked);
        Assert.Equal("short by 1", answer.Headline);
        Assert.Equal(new AdultCount(24, 4, 3, 1, 4, 4, "83/24"), answer.Hall);
        Assert.Equal(new AdultCount(11, 2, 1, 1, 2, 2, "11/6"), answer.Beginners);
        Assert.Equal(new AdultCount(13, 2, 2, 0, 2, 2, "13/8"), answer.Main);
        Assert.Equal(["Dan", "Eve"], answer.NotCounted.Select(n => n.Name));
        Assert.All(answer.NotCounted, n => Assert.Equal(NotCountedWhy.Under18, n.Why));
        Assert.Equal(
            [
                "In the hall: 11 aged 4 to 8 at 1 adult to 6 and 13 aged 9 to 12 at 1 adult to 8, added 83/24, rounded up 4; at least 2: needed 4, have 3, short by 1.",
                "At the beginners' end: 11 aged 4 to 8 at 1 adult to 6, added 11/6, rounded up 2: needed 2, have 1, short by 1.",
                "In the main group: 13 aged 9 to 12 at 1 adult to 8, added 13/8, rounded up 2: needed 2, have 2.",
                "Dan is under 18 and is not counted.",
                "Eve is under 18 and is not counted.",
                "First aid: Anna, Ben and Carla.",
                "Ratios: NSPCC Learning and CPSU, minimum adult to child ratios; a stricter rule of the sport's body or the law of the place goes first.",
            ],
            answer.Reasons.Select(r => r.Sentence));
    }

    // The same page's way out, by hand: 8 and 13 are 1.33 + 1.63 = 2.96, three adults' worth.
    [Fact]
    public void Eight_and_thirteen_are_three_adults_worth_with_nobody_free()
    {
        var answer = Count(new AdultsSnapshot(Today, [Children(8, 7), Children(13, 10)], Adults(3)));
        Assert.Equal((3, 0, "71/24"), (answer.Hall.Needed, answer.Hall.ShortBy, answer.Hall.Fraction));
        Assert.True(answer.NobodyFree);
        Assert.Contains("All 3 adults are needed: nobody is free for first aid or the toilet.", answer.Reasons.Select(r => r.Sentence));
    }

    [Fact, Statement(43)]
    public void An_adult_whose_vetting_has_ended_is_not_counted()
    {
        AdultPresent[] adults = [Adult("Anna"), Adult("Ben") with { VettedUntil = Today.AddDays(-1) }, Adult("Carla") with { VettedUntil = null }];
        var answer = Count(new AdultsSnapshot(Today, [Children(5, 7)], adults));
        Assert.Equal((1, 1), (answer.Hall.Have, answer.Hall.ShortBy));
        Assert.Equal(
            ["Ben is not counted: the vetting ended on 2 March 2026.", "Carla is not counted: no vetting is held."],
            answer.NotCounted.Select(n => n.Because.Sentence));
        Assert.Equal(2, Count(new AdultsSnapshot(Today, [Children(5, 7)], [Adult("Anna"), Adult("Ben") with { VettedUntil = Today }])).Hall.Have);
    }

    [Fact, Statement(44)]
    public void Without_a_first_aider_it_is_said_before_the_bow()
    {
        AdultPresent[] adults = [Adult("Anna") with { FirstAidUntil = null }, Adult("Ben") with { FirstAidUntil = Today.AddDays(-1), QualifiedUntil = Today.AddDays(-2) }];
        var answer = Count(new AdultsSnapshot(Today, [Children(5, 7)], adults));
        Assert.Equal(2, answer.Hall.Have);
        Assert.Empty(answer.FirstAiders);
        Assert.Equal(
            [
                "No first-aider is here among the adults who count: settle it before the bow.",
                "Ben is counted, but the first aid ended on 2 March 2026.",
                "Ben is counted, but the qualification ended on 1 March 2026.",
            ],
            answer.Reasons.Select(r => r.Sentence).Where(s => s.Contains("aid", StringComparison.Ordinal) || s.Contains("qual", StringComparison.Ordinal))
                .Where(s => !s.StartsWith("All", StringComparison.Ordinal)));
    }

    [Fact]
    public void No_children_need_no_adult() => Assert.Equal("no children, no adult needed", Count(new AdultsSnapshot(Today, [], [])).Headline);

    [Fact]
    public void One_child_needs_two_in_the_hall_and_one_at_its_end()
    {
        var answer = Count(new AdultsSnapshot(Today, [Children(1, 10)], Adults(2)));
        Assert.Equal((2, 1, 0), (answer.Hall.Needed, answer.Main.Needed, answer.Beginners.Needed));
        Assert.Equal("enough adults in the hall: 2 of 2 needed; the main group is short by 1", answer.Headline);
        Assert.Contains("Adult 1 and Adult 2 are counted for the hall and at neither end.", answer.Reasons.Select(r => r.Sentence));
    }

    [Fact]
    public void The_stricter_method_rounds_each_band()
    {
        ChildrenAtEnd[] children = [Children(7, 6), Children(9, 10), Children(11, 14)];
        var answer = Count(new AdultsSnapshot(Today, children, [], Rules: new AdultRules(RatioMethod.RoundEachBand)));
        Assert.Equal((6, 4, 6), (answer.Hall.Needed, answer.Hall.NeededBySum, answer.Hall.NeededByBand));
    }

    [Fact]
    public void A_child_of_unknown_age_counts_in_the_youngest_junior_band()
    {
        Assert.Equal(3, Needed(Children(13, null)));
        var answer = Count(new AdultsSnapshot(Today, [Children(5, 6), Children(2, null)], []));
        Assert.Equal("7/6", answer.Hall.Fraction);
        Assert.Contains("7 aged 4 to 8 at 1 adult to 6 (2 of unknown age)", answer.Reasons[0].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void An_adult_named_for_needs_comes_on_top_of_the_minimum()
    {
        var answer = Count(new AdultsSnapshot(Today, [Children(3, 10)], Adults(2), [new ExtraForNeeds(MatEnd.Main, 1), new ExtraForNeeds(MatEnd.Beginners, 1)]));
        Assert.Equal((3, 2, 0), (answer.Hall.Needed, answer.Main.Needed, answer.Beginners.Needed));
    }

    [Fact]
    public void Exact_thirds_and_sixths_never_round_to_one_adult_more()
    {
        // 2/6 + 1/3 + 2/6 = 1 exactly; in binary floating point such sums can pass the whole number.
        Assert.Equal(new Fraction(1, 1), new Fraction(2, 6) + new Fraction(1, 3) + new Fraction(2, 6));
        Assert.Equal(3, Needed(Children(6, 6), Children(4, 10), Children(5, 14), Children(4, 10)));
    }

    private static readonly Gen<AdultsSnapshot> AnyEvening =
        Gen.Select(
            Gen.Select(Gen.Int[0, 1], Gen.Int[-1, 18], Gen.Int[1, 9]).Array[0, 8],
            Gen.Select(Gen.Int[0, 2], Gen.Int[0, 5], Gen.Int[-2, 2], Gen.Int[-2, 2]).Array[0, 8],
            Gen.Int[0, 2], Gen.Bool,
            (children, adults, extra, strict) => new AdultsSnapshot(
                Today,
                [.. children.Select(c => new ChildrenAtEnd((MatEnd)c.Item1, c.Item2 < 0 ? null : c.Item2, c.Item3))],
                [.. adults.Select((a, i) => new AdultPresent(
                    $"Adult {i}", a.Item1 == 2 ? null : (MatEnd)a.Item1, a.Item2 == 0,
                    a.Item2 == 1 ? null : Today.AddDays(a.Item3), a.Item4 == 2 ? null : Today.AddDays(a.Item4)))],
                [new ExtraForNeeds(MatEnd.Beginners, extra)],
                new AdultRules(strict ? RatioMethod.RoundEachBand : RatioMethod.SumOfFractions)));

    [Fact]
    public void Every_count_stands_before_the_check() =>
        AnyEvening.Sample(s => EnoughAdultsCheck.Objections(s, EnoughAdults.Count(s)).Count == 0, iter: 3_000);

    [Fact]
    public void A_count_that_is_one_off_is_objected_to() =>
        AnyEvening.Sample(s =>
        {
            var a = EnoughAdults.Count(s);
            AdultsAnswer[] wrong =
            [
                a with { Hall = a.Hall with { Needed = a.Hall.Needed + 1 } },
                a with { Main = a.Main with { NeededBySum = a.Main.NeededBySum + 1 } },
                a with { Beginners = a.Beginners with { Have = a.Beginners.Have + 1 } },
                a with { Hall = a.Hall with { ShortBy = a.Hall.ShortBy + 1 } },
                a with { FirstAiders = [.. a.FirstAiders, "Nobody"] },
            ];
            return wrong.All(w => EnoughAdultsCheck.Objections(s, w).Count > 0);
        });

    [Fact]
    public void One_child_more_never_lowers_what_is_needed_anywhere() =>
        Gen.Select(AnyEvening, Gen.Int[0, 1], Gen.Int[-1, 18]).Sample((s, end, age) =>
        {
            var before = EnoughAdults.Count(s);
            var after = EnoughAdults.Count(s with { Children = [.. s.Children, new ChildrenAtEnd((MatEnd)end, age < 0 ? null : age)] });
            return after.Hall.Needed >= before.Hall.Needed && after.Main.Needed >= before.Main.Needed && after.Beginners.Needed >= before.Beginners.Needed;
        });

    [Fact]
    public void One_adult_fewer_never_lowers_the_shortfall() =>
        AnyEvening.Where(s => s.Adults.Count > 0).Sample(s =>
        {
            var before = EnoughAdults.Count(s);
            var after = EnoughAdults.Count(s with { Adults = [.. s.Adults.Skip(1)] });
            return after.Hall.ShortBy >= before.Hall.ShortBy && after.Main.ShortBy >= before.Main.ShortBy && after.Beginners.ShortBy >= before.Beginners.ShortBy;
        });

    [Fact]
    public void The_stricter_method_is_never_less_strict() =>
        AnyEvening.Sample(s =>
        {
            var a = EnoughAdults.Count(s);
            return a.Hall.NeededByBand >= a.Hall.NeededBySum && a.Main.NeededByBand >= a.Main.NeededBySum;
        });

    [Theory]
    [InlineData("0-2 1:3, 3 1:4, 4-8 1:6, 9-12 1:8, 13-18 1:10", true)]
    [InlineData("0-18 1:5", true)]
    [InlineData("0-8 1:6, 10-18 1:8", false)]
    [InlineData("4-8 1:6, 9-18 1:8", false)]
    [InlineData("0-12 1:8", false)]
    [InlineData("0-18 1:0", false)]
    [InlineData("0-18", false)]
    [InlineData("", false)]
    public void Bands_are_read_only_without_gaps(string text, bool good)
    {
        var setting = AdultRules.Settings.Single(s => s.Key == "adults.bands");
        Assert.Equal(good, setting.Refusal(text) is null);
        if (good)
            Assert.Equal(text, BandsSetting.Text(BandsSetting.Read(text)!));
    }

    [Fact]
    public void Somebody_over_18_is_not_among_the_children() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EnoughAdults.Count(new AdultsSnapshot(Today, [Children(1, 19)], [])));
}
