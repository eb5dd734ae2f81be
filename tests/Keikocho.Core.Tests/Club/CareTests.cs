using CsCheck;
using Keikocho.Core.Club;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Club;

public sealed class KnocksByActivityTests
{
    /// <summary>The term that is reckoned by hand on the sum's page.</summary>
    private static readonly KnocksQuestion ByHand = new(640, [new("tag games", 120, 4, 2), new("all else", 520, 1)], new KnocksRule());

    private static KnocksAnswer Reckon(KnocksQuestion question)
    {
        var answer = KnocksByActivity.Reckon(question);
        Assert.Empty(KnocksByActivityCheck.Objections(question, answer));
        return answer;
    }

    [Fact]
    public void The_term_by_hand()
    {
        var answer = Reckon(ByHand);
        Assert.Equal(0.78, answer.All.PerHundred!.Value, 2);
        Assert.Equal(["tag games", "all else"], answer.Activities.Select(a => a.Activity));
        Assert.Equal(3.33, answer.Activities[0].PerHundred!.Value, 2);
        Assert.StartsWith("tag games: 4 knocks in 120 child-evenings: 3.33 to 100, 90 % sure between 1.15 and 7.4", answer.Reasons[1].Sentence, StringComparison.Ordinal);
        Assert.EndsWith(" 2 near misses besides.", answer.Reasons[1].Sentence, StringComparison.Ordinal);
    }

    [Fact, Statement(31)]
    public void Fewer_than_three_knocks_are_too_few_to_say()
    {
        var else_ = Reckon(ByHand).Activities[1];
        Assert.True(else_.TooFewToSay);
        Assert.Null(else_.PerHundred);
        Assert.Equal("all else: 1 knock in 520 child-evenings: too few to say.", Reckon(ByHand).Reasons[2].Sentence);
    }

    // NIST/SEMATECH handbook 7.2.4.2: the exact 90 % interval of 4 in 20. The set-up is read there, the figures are calculated, and agree
    // with the handbook's 0.071354 and 0.401029, which are from memory.
    [Fact]
    public void The_exact_interval_of_four_in_twenty()
    {
        var (from, to) = ExactInterval.Of(4, 20, 0.9);
        Assert.Equal(0.0713539, from, 7);
        Assert.Equal(0.4010281, to, 7);
    }

    // NIST/SEMATECH handbook 6.2.3.2: the chance of at most 3 of 52, printed to three digits (.845 and .739 there, from memory).
    [Theory]
    [InlineData(.01, .998)]
    [InlineData(.02, .980)]
    [InlineData(.03, .930)]
    [InlineData(.04, .846)]
    [InlineData(.05, .738)]
    [InlineData(.06, .620)]
    [InlineData(.07, .502)]
    [InlineData(.08, .394)]
    [InlineData(.09, .300)]
    [InlineData(.10, .223)]
    [InlineData(.11, .162)]
    [InlineData(.12, .115)]
    public void The_chance_of_at_most_three_of_fifty_two(double share, double chance) =>
        Assert.Equal(chance, ExactInterval.AtMost(3, 52, share), 0.001);

    [Fact]
    public void The_chance_of_at_most_three_of_ten_at_even_chances() => Assert.Equal(0.171875, ExactInterval.AtMost(3, 10, 0.5), 12);

    [Fact]
    public void More_knocks_than_children_are_refused() =>
        Assert.StartsWith("tag: 4 knocks are more than 3 child-evenings.", Assert.Throws<ArgumentException>(() => Reckon(new KnocksQuestion(10, [new("tag", 3, 4)], new KnocksRule()))).Message, StringComparison.Ordinal);

    [Fact]
    public void An_activity_of_unknown_numbers_has_counts_and_no_rate() =>
        Assert.Equal("tag: 4 knocks; how many children were there for it is not written down: no rate.", Reckon(new KnocksQuestion(100, [new("tag", null, 4)], new KnocksRule())).Reasons[1].Sentence);

    [Fact]
    public void A_wrong_rate_is_found()
    {
        var answer = KnocksByActivity.Reckon(ByHand);
        Assert.NotEmpty(KnocksByActivityCheck.Objections(ByHand, answer with { All = answer.All with { PerHundred = 1.0 } }));
        Assert.NotEmpty(KnocksByActivityCheck.Objections(ByHand, answer with { All = answer.All with { From = 0.5 } }));
    }

    [Fact]
    public void Any_counts_have_rates_that_the_check_accepts() =>
        Gen.Select(Gen.Int[0, 400], Gen.Int[0, 12], Gen.Int[0, 4]).Array[0, 6].Sample(
            all =>
            {
                ActivityCount[] each = [.. all.Select((a, i) => new ActivityCount($"game {i}", a.Item1, Math.Min(a.Item1, a.Item2), a.Item3))];
                var question = new KnocksQuestion(each.Sum(a => a.ChildEvenings!.Value), each, new KnocksRule());
                return KnocksByActivityCheck.Objections(question, KnocksByActivity.Reckon(question)).Count == 0;
            },
            iter: 300);
}

public sealed class SlippingAwayTests
{
    private static HeldLesson On(int day, LessonWas was) => new(new DateOnly(2026, 3, day), was);

    private static SlippingAnswer List(int today, params ChildLessons[] children)
    {
        var question = new SlippingQuestion(new DateOnly(2026, 3, today), children, new SlippingRule());
        var answer = SlippingAway.List(question);
        Assert.Empty(SlippingAwayCheck.Objections(question, answer));
        return answer;
    }

    [Fact]
    public void The_child_by_hand_is_on_the_list_after_the_second_miss_before_the_third()
    {
        HeldLesson[] held = [On(10, LessonWas.There), On(12, LessonWas.Missed), On(17, LessonWas.Missed)];
        Assert.Empty(List(12, new ChildLessons("Ada", true, [.. held.Take(2)])).Ring);
        var line = Assert.Single(List(17, new ChildLessons("Ada", true, held)).Ring);
        Assert.Equal((2, new DateOnly(2026, 3, 12), new DateOnly(2026, 3, 10)), (line.Missed, line.Since, line.LastThere));
    }

    [Fact]
    public void After_the_first_course_it_takes_three() =>
        Assert.Empty(List(17, new ChildLessons("Ben", false, [On(10, LessonWas.There), On(12, LessonWas.Missed), On(17, LessonWas.Missed)])).Ring);

    [Fact]
    public void An_excused_lesson_counts_neither_way() =>
        Assert.Equal(2, Assert.Single(List(19, new ChildLessons("Ada", true, [On(10, LessonWas.There), On(12, LessonWas.Missed), On(17, LessonWas.Excused), On(19, LessonWas.Missed)])).Ring).Missed);

    [Fact]
    public void The_first_course_is_first_then_the_longest_silence()
    {
        HeldLesson[] away(int last) => [On(last, LessonWas.There), .. Enumerable.Range(last + 1, 3).Select(d => On(d, LessonWas.Missed))];
        Assert.Equal(["Cleo", "Ada", "Ben"], List(20, new("Ada", false, away(3)), new("Ben", false, away(5)), new("Cleo", true, away(9))).Ring.Select(r => r.Child));
    }

    [Fact]
    public void Any_register_has_a_list_that_the_check_accepts() =>
        Gen.Select(Gen.Bool, Gen.Int[0, 2].Array[0, 12]).Array[0, 8].Sample(
            all =>
            {
                var question = new SlippingQuestion(new DateOnly(2026, 3, 31),
                    [.. all.Select((c, i) => new ChildLessons($"child {i}", c.Item1, [.. c.Item2.Select((w, d) => On(d + 1, (LessonWas)w))]))], new SlippingRule());
                return SlippingAwayCheck.Objections(question, SlippingAway.List(question)).Count == 0;
            },
            iter: 1_000);
}

public sealed class LeadersShareTests
{
    private static LeadersAnswer Reckon(params LeaderEvenings[] leaders)
    {
        var question = new LeadersQuestion(leaders, new LeadersRule());
        var answer = LeadersShare.Reckon(question);
        Assert.Empty(LeadersShareCheck.Objections(question, answer));
        return answer;
    }

    [Fact]
    public void Seven_helped_and_three_trained_are_owed_two() =>
        Assert.Equal("Leo: 10 evenings, helped 7, trained 3; at least 50 % trained is 5: 2 evenings of their own training owed.", Assert.Single(Reckon(new LeaderEvenings("Leo", 7, 3)).Reasons).Sentence);

    [Fact]
    public void Half_of_an_odd_number_is_rounded_for_the_leader() => Assert.Equal(1, Reckon(new LeaderEvenings("Leo", 2, 1)).Leaders[0].Owed);

    [Fact]
    public void Who_is_owed_is_first_then_the_nearest_own_test() =>
        Assert.Equal(["Max", "Leo", "Ida", "Ann"], Reckon(
            new("Ann", 1, 4), new("Leo", 7, 3, new DateOnly(2026, 7, 25)), new("Ida", 7, 3), new("Max", 3, 1, new DateOnly(2026, 3, 28))).Leaders.Select(l => l.Leader));

    [Fact]
    public void Any_evenings_have_shares_that_the_check_accepts() =>
        Gen.Select(Gen.Int[0, 60], Gen.Int[0, 60]).Array[0, 6].Sample(
            all =>
            {
                var question = new LeadersQuestion([.. all.Select((l, i) => new LeaderEvenings($"leader {i}", l.Item1, l.Item2))], new LeadersRule());
                return LeadersShareCheck.Objections(question, LeadersShare.Reckon(question)).Count == 0;
            },
            iter: 500);
}
