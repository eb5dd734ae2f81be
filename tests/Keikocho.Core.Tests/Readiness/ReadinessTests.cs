using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Readiness;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Testing;
using static Keikocho.Core.Tests.Readiness.Readies;

namespace Keikocho.Core.Tests.Readiness;

public sealed class ReadinessTests
{
    private static readonly DateOnly[] Twice = [Day(9, 29), Day(10, 13)];
    private static readonly Item OGoshi = Throw("o-goshi", "O-goshi");
    private static readonly Item DeAshi = Throw("de-ashi-barai", "De-ashi-barai");

    internal static ReadinessAnswer Reckon(ReadinessParts parts)
    {
        var answer = ReckonReadiness.Reckon(parts);
        Assert.Empty(ReadinessCheck.Objections(parts, answer));
        return answer;
    }

    // Worked by hand: nine items, seven ready, one good once, the escape never good, four lessons left: at least two evenings, so "if".
    [Fact]
    public void Nine_items_with_one_good_once_and_an_escape_never_good_need_two_of_the_four_evenings_left()
    {
        var ready = Enumerable.Range(1, 7).Select(i => Throw($"t{i}", $"Throw {i}")).ToArray();
        var hold = Thing(ItemKind.HoldDown, "hold", "Kesa-gatame");
        var escape = Thing(ItemKind.Escape, "escape", "Escape from kesa-gatame");
        var sheet = Sheet([.. ready.Select(i => All(i)), All(hold), All(escape)]);
        var answer = Reckon(Parts(10, sheet, [.. ready.Select(i => Good(i.Key, Twice)), Good("hold", Day(11, 3))]));

        Assert.Equal(ReadyWord.If, answer.Verdict);
        Assert.Equal((7, 2, 4, 0), (answer.LinesMet, answer.EveningsNeeded, answer.LessonsLeft, answer.LessonsNeeded));
        Assert.Equal(
            [
                "Kesa-gatame: seen good once more, on 1 of the 4 evenings left.",
                "Escape from kesa-gatame: seen good on 2 of the 4 evenings left.",
            ],
            answer.Conditions.Said());
        Assert.Equal("7 of 9 good; Kesa-gatame good once, on 3 November: once more; Escape from kesa-gatame not yet seen good: two evenings", answer.ItemsSaid);
    }

    [Fact, Statement(4)]
    public void A_child_short_of_lessons_comes_to_some_of_the_lessons_left()
    {
        var answer = Reckon(Parts(7, Sheet(All(OGoshi), All(DeAshi)), Good("o-goshi", Day(11, 3))));
        Assert.Equal(ReadyWord.If, answer.Verdict);
        Assert.Equal("7 of 10 lessons; if the child comes to 3 of the 4 lessons left", answer.TimeSaid);
        Assert.Equal("0 of 2 good; O-goshi good once, on 3 November: once more; De-ashi-barai not yet seen good: two evenings", answer.ItemsSaid);
        Assert.Equal("Come to 3 of the 4 lessons left: 10, 17 and 24 November, 1 December.", answer.Conditions[0].Sentence);

        // As in the register's own worked case: 12 of 14, four left.
        var sheet = Sheet(All(OGoshi)) with { Minima = new Minima(Lessons: 14) };
        Assert.StartsWith("Come to 2 of the 4 lessons left", Reckon(Parts(12, sheet, Good("o-goshi", Twice))).Conditions[0].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Who_must_be_seen_twice_and_lacks_one_lesson_comes_to_two()
    {
        var answer = Reckon(Parts(9, Sheet(All(OGoshi))));
        Assert.Equal("9 of 10 lessons; if the child comes to 2 of the 4 lessons left", answer.TimeSaid);
    }

    [Fact, Statement(5)]
    public void One_lesson_left_and_two_needed_is_not_this_time_with_the_next_date()
    {
        DateOnly[] one = [Day(12, 1)];
        var answer = Reckon(Parts(8, Sheet(All(OGoshi)), Good("o-goshi", Twice)) with { Clock = Clocked(8, left: one), LessonsLeft = one });
        Assert.Equal(ReadyWord.NotThisTime, answer.Verdict);
        Assert.Equal("8 of 10 lessons, 1 left: 1 short", answer.TimeSaid);
        Assert.Equal(NextTestOn, answer.NextTestOn);
        Assert.Contains("Not this time: the next test is on Tuesday 23 March 2027.", answer.Reasons.Said());
    }

    [Fact]
    public void Everything_good_is_put_forward()
    {
        var answer = Reckon(Parts(10, Sheet(All(OGoshi), All(DeAshi)), Good("o-goshi", Twice), Good("de-ashi-barai", Twice)));
        Assert.Equal(ReadyWord.PutForward, answer.Verdict);
        Assert.Equal("10 of 10 lessons; registered to 31 March", answer.TimeSaid);
        Assert.Equal("2 of 2 good, each on two evenings", answer.ItemsSaid);
        Assert.Empty(answer.Conditions);
    }

    [Theory]
    [InlineData("2026-12-05", "12 of 10 lessons; registration ends 5 December: ask by 21 November", "Renew the registration: ask by 21 November.")]
    [InlineData("2026-11-16", "12 of 10 lessons; registration ends 16 November: overdue, ask was by 2 November", "Renew the registration at once: it was to be asked for by 2 November.")]
    [InlineData("2026-11-17", "12 of 10 lessons; registration ends 17 November: ask by 3 November", "Renew the registration: ask by 3 November.")]
    [InlineData("2026-10-31", "12 of 10 lessons; registration ended 31 October: overdue, ask was by 17 October", "Renew the registration at once: it was to be asked for by 17 October.")]
    public void A_registration_that_ends_before_the_test_is_asked_for(string until, string time, string condition)
    {
        var parts = Parts(12, Sheet(All(OGoshi)), Good("o-goshi", Twice));
        var answer = Reckon(parts with { Papers = parts.Papers with { RegisteredUntil = DateOnly.Parse(until, System.Globalization.CultureInfo.InvariantCulture) } });
        Assert.Equal((ReadyWord.If, time), (answer.Verdict, answer.TimeSaid));
        Assert.Equal([condition], answer.Conditions.Said());
    }

    [Fact, Statement(61)]
    public void The_day_to_ask_by_is_shown_on_every_evening_before_it()
    {
        var until = Day(12, 5);
        for (var asOf = Day(11, 3); asOf <= until.AddDays(-14); asOf = asOf.AddDays(1))
        {
            var left = Left.Where(d => d > asOf).ToArray();
            var parts = Parts(12, Sheet(All(OGoshi)), Good("o-goshi", Twice)) with { AsOf = asOf, LessonsLeft = left, Clock = Clocked(12, left: left) };
            var answer = Reckon(parts with { Papers = parts.Papers with { RegisteredUntil = until } });
            Assert.Contains("ask by 21 November", answer.TimeSaid, StringComparison.Ordinal);
            Assert.Contains(answer.Time.Said(), s => s.Contains("ask for a renewal by 21 November 2026", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Valid_on_the_very_day_of_the_test_is_valid()
    {
        var parts = Parts(12, Sheet(All(OGoshi)), Good("o-goshi", Twice));
        Assert.Equal(ReadyWord.PutForward, Reckon(parts with { Papers = parts.Papers with { RegisteredUntil = TestOn } }).Verdict);
        Assert.Equal(ReadyWord.If, Reckon(parts with { Papers = parts.Papers with { RegisteredUntil = null } }).Verdict);
        Assert.Equal(ReadyWord.PutForward, Reckon(parts with { Papers = parts.Papers with { RegisteredUntil = null, RegistrationAsked = false } }).Verdict);
    }

    [Theory]
    [InlineData(10, AgeBasis.Birthday, "2016-12-08", ReadyWord.PutForward)]
    [InlineData(10, AgeBasis.Birthday, "2016-12-09", ReadyWord.NotThisTime)]
    [InlineData(10, AgeBasis.CalendarYear, "2016-12-31", ReadyWord.PutForward)]
    [InlineData(10, AgeBasis.CalendarYear, "2017-01-01", ReadyWord.NotThisTime)]
    [InlineData(10, AgeBasis.Birthday, null, ReadyWord.If)]
    public void The_age_is_reckoned_on_the_day_of_the_test(int asked, AgeBasis by, string? born, ReadyWord verdict)
    {
        var sheet = Sheet(All(OGoshi)) with { Minima = new Minima(Age: asked, AgeBy: by) };
        var parts = Parts(0, sheet, Good("o-goshi", Twice));
        DateOnly? day = born is null ? null : DateOnly.Parse(born, System.Globalization.CultureInfo.InvariantCulture);
        var answer = Reckon(parts with { Papers = parts.Papers with { Born = day } });
        Assert.Equal(verdict, answer.Verdict);
        Assert.Contains(answer.Time, r => r is AgeForTheTest);
    }

    [Theory]
    [InlineData(22, 0, ReadyWord.PutForward)] // 7 July and 154 days is the 8 December.
    [InlineData(23, 0, ReadyWord.NotThisTime)]
    [InlineData(0, 5, ReadyWord.PutForward)] // 7 December.
    [InlineData(0, 6, ReadyWord.NotThisTime)]
    public void Weeks_and_months_are_full_on_the_day_of_the_test(int weeks, int months, ReadyWord verdict)
    {
        var sheet = Sheet(All(OGoshi)) with { Minima = new Minima(Weeks: weeks, Months: months) };
        Assert.Equal(verdict, Reckon(Parts(0, sheet, Good("o-goshi", Twice))).Verdict);
    }

    [Fact]
    public void A_share_of_the_time_is_taken_off_with_a_reason_and_no_more_than_the_rank_allows()
    {
        var sheet = Sheet(All(OGoshi)) with { Minima = new Minima(Lessons: 15, MostReductionPercent: 25) };
        var parts = Parts(12, sheet, Good("o-goshi", Twice));
        var answer = Reckon(parts with { Papers = parts.Papers with { ReductionPercent = 25, ReductionWhy = "the child also trains on Fridays" } });
        Assert.Equal((ReadyWord.PutForward, 0), (answer.Verdict, answer.LessonsNeeded)); // 11.25 is 12.
        Assert.Contains("25 % of the least time is taken off, because the child also trains on Fridays.", answer.Time.Said());
        var capped = Reckon(parts with { Papers = parts.Papers with { ReductionPercent = 50, ReductionWhy = "the child also trains on Fridays" } });
        Assert.Equal(0, capped.LessonsNeeded);
        Assert.Contains("50 % of the least time was entered to be taken off, because the child also trains on Fridays; this rank allows 25 %.", capped.Time.Said());
        Assert.Equal(
            "A share of the least time is taken off without a reason; write why.",
            Assert.Throws<ArgumentException>(() => ReckonReadiness.Reckon(parts with { Papers = parts.Papers with { ReductionPercent = 10 } })).Message);
    }

    [Fact]
    public void A_rank_without_figures_asks_what_the_clock_was_asked()
    {
        var sheet = Sheet(All(OGoshi)) with { Minima = new Minima() };
        var clock = Core.Calendar.Clock.Reckon(new Core.Calendar.ClockSnapshot(
            AsOf, Day(9, 1), Core.Calendar.ClockStart.FirstLesson, new Core.Calendar.ClockRule(14, 10), [.. Left.Select(d => new Core.Calendar.ClockLesson(d))], TestOn, NextTestOn));
        var answer = Reckon(Parts(0, sheet, Good("o-goshi", Twice)) with { Clock = clock });
        Assert.Equal((ReadyWord.NotThisTime, 14), (answer.Verdict, answer.LessonsNeeded));
        Assert.Equal("0 of 14 lessons, 4 left: 10 short", answer.TimeSaid);
    }

    [Fact]
    public void Good_evenings_before_the_promotion_do_not_count_for_a_technique()
    {
        var answer = Reckon(Parts(10, Sheet(All(OGoshi)), Good("o-goshi", Day(7, 7), Day(11, 3))));
        Assert.Equal((ItemStandingWord.GoodTooFew, 1), (answer.Lines[0].Items[0].Word, answer.EveningsNeeded));
    }

    [Theory]
    [InlineData(Carry.ThisRank, ReadyWord.PutForward)]
    [InlineData(Carry.ThisTerm, ReadyWord.If)]
    [InlineData(Carry.Always, ReadyWord.If)]
    [InlineData(Carry.OnceAskedStays, ReadyWord.If)]
    public void A_word_of_this_rank_is_right_once_for_ever_and_one_that_stays_since_the_promotion(Carry carry, ReadyWord verdict)
    {
        var line = All(Thing(ItemKind.Word, "uke", "uke")) with { Carry = carry };
        Assert.Equal(verdict, Reckon(Parts(10, Sheet(line), Good("uke", Day(3, 3)))).Verdict);
        Assert.Equal(ReadyWord.PutForward, Reckon(Parts(10, Sheet(line), Good("uke", Day(9, 8)))).Verdict);
    }

    [Fact]
    public void A_critical_item_is_fresh_42_days_before_the_test_and_stale_at_43()
    {
        var line = All(Thing(ItemKind.Word, "stop", "the stop word")) with { Critical = true };
        Assert.Equal(ReadyWord.PutForward, Reckon(Parts(10, Sheet(line), Good("stop", Day(10, 27)))).Verdict);
        var stale = Reckon(Parts(10, Sheet(line), Good("stop", Day(10, 26))));
        Assert.Equal((ReadyWord.If, 1, ItemStandingWord.GoodNotFresh), (stale.Verdict, stale.EveningsNeeded, stale.Lines[0].Items[0].Word));
        Assert.Equal("0 of 1 good; the stop word right last on 26 October, too long before the test: once more", stale.ItemsSaid);
    }

    [Fact]
    public void A_sign_off_is_enough_by_itself_and_a_suggestion_counts_nothing_but_is_said()
    {
        var signed = new ItemSeen("o-goshi", [SeenOn(Day(9, 29), SeenWord.Good, settled: true)]);
        Assert.Equal(ReadyWord.PutForward, Reckon(Parts(10, Sheet(All(OGoshi)), signed)).Verdict);
        var suggested = new ItemSeen("o-goshi", [SeenOn(Day(9, 29), SeenWord.Good, confirmed: false), SeenOn(Day(10, 6), SeenWord.Good, confirmed: false, settled: true)]);
        var answer = Reckon(Parts(10, Sheet(All(OGoshi)), suggested));
        Assert.Equal((ReadyWord.If, ItemStandingWord.Suggested, 2), (answer.Verdict, answer.Lines[0].Items[0].Word, answer.EveningsNeeded));
        Assert.Contains("a leader saw it good on 6 October, which waits for an instructor", answer.ItemsSaid, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_adults_who_disagree_count_as_nothing_until_it_is_settled()
    {
        var answer = Reckon(Parts(10, Sheet(All(OGoshi)), new ItemSeen("o-goshi", [SeenOn(Day(9, 29), SeenWord.Good), SeenOn(Day(10, 6), null)])));
        Assert.Equal((ReadyWord.If, 1), (answer.Verdict, answer.EveningsNeeded));
        Assert.Contains("two adults disagree about 6 October", answer.ItemsSaid, StringComparison.Ordinal);
    }

    [Fact]
    public void A_good_harder_form_meets_the_easier_one_and_never_the_other_way_round()
    {
        var easy = Throw("o-goshi-still", "O-goshi, standing still");
        var middle = Throw("o-goshi-moving", "O-goshi, moving", "o-goshi-still");
        var hard = Throw("o-goshi-both", "O-goshi, both sides", "o-goshi-moving");
        var met = Reckon(Parts(10, Sheet(All(easy)), Good("o-goshi-both", Twice)) with { HarderForms = [middle, hard] });
        Assert.Equal((ReadyWord.PutForward, ItemStandingWord.MetByHarderForm), (met.Verdict, met.Lines[0].Items[0].Word));
        Assert.Equal("seen good on 29 September and 13 October, by a harder form", met.Lines[0].Items[0].Said);
        Assert.Equal(ReadyWord.If, Reckon(Parts(10, Sheet(All(hard)), Good("o-goshi-still", Twice)) with { HarderForms = [middle, hard] }).Verdict);
    }

    [Fact]
    public void A_credit_by_rank_meets_a_technique_and_never_a_fall_or_a_critical_item()
    {
        var fall = Fall("back-3", "Backward breakfall", FallDirection.Back, 3);
        var stop = Thing(ItemKind.Word, "stop", "the stop word");
        var parts = Parts(10, Sheet(All(OGoshi), All(fall), All(stop) with { Critical = true }));
        var answer = Reckon(parts with { Evidence = parts.Evidence with { CreditedItems = ["o-goshi", "back-3", "stop"] } });
        Assert.Equal([true, false, false], answer.Lines.Select(l => l.Met));
        Assert.Equal((ItemStandingWord.CreditedByRank, "credited by rank"), (answer.Lines[0].Items[0].Word, answer.Lines[0].Items[0].Said));
    }

    [Fact]
    public void A_kept_pass_holds_to_its_last_day()
    {
        SheetLine Kept(DateOnly until) => All(OGoshi) with { Items = [new SheetItem(OGoshi, KeptUntil: until)] };
        Assert.Equal(ReadyWord.PutForward, Reckon(Parts(10, Sheet(Kept(TestOn)))).Verdict);
        Assert.Equal(ReadyWord.If, Reckon(Parts(10, Sheet(Kept(TestOn.AddDays(-1))))).Verdict);
    }

    [Fact, Statement(57)]
    public void An_escape_with_two_accepted_forms_is_met_by_either_and_says_which()
    {
        var first = Thing(ItemKind.Escape, "bridge", "Bridge and roll");
        var second = Thing(ItemKind.Escape, "shrimp", "Shrimp and turn in");
        foreach (var (key, name) in new[] { ("bridge", "Bridge and roll"), ("shrimp", "Shrimp and turn in") })
        {
            var answer = Reckon(Parts(10, Sheet(Line(1, first, second)), Good(key, Twice)));
            Assert.Equal(ReadyWord.PutForward, answer.Verdict);
            Assert.Equal([name], answer.Lines[0].MetBy);
        }

        var once = Reckon(Parts(10, Sheet(Line(1, first, second)), Good("shrimp", Day(11, 3))));
        Assert.Equal(1, once.EveningsNeeded);
        Assert.Equal("Shrimp and turn in good once, on 3 November: once more, or another of its line", once.Lines[0].Said);
        Assert.Equal(["Shrimp and turn in: seen good once more, on 1 of the 4 evenings left, or another of its line."], once.Conditions.Said());
    }

    [Fact, Statement(58)]
    public void Equal_evidence_gives_equal_verdicts()
    {
        var sheet = Sheet(All(OGoshi), All(DeAshi), All(Fall("roll-3", "Rolling breakfall", FallDirection.Rolling, 3, bothSides: true)));
        FallMark[] falls = [.. new[] { Day(10, 13), Day(11, 3) }.SelectMany(d => new[] { Clean(d, FallDirection.Rolling, FallSide.Left, 3), Clean(d, FallDirection.Rolling, FallSide.Right, 3) })];
        var one = Reckon(Parts(9, sheet, Good("o-goshi", Twice), Good("de-ashi-barai", Day(11, 3))).With(falls));
        var other = Reckon(Parts(9, sheet, Good("de-ashi-barai", Day(11, 3)), Good("o-goshi", Day(10, 13), Day(9, 29))).With([.. falls.Reverse()]));
        Assert.Equal(SumJson.Write(one), SumJson.Write(other));
    }

    [Fact]
    public void The_forecast_is_the_beta_binomial_chance_and_for_the_instructor_only()
    {
        // 7 attended and 5 missed on Beta(7, 3) is Beta(14, 8): P(at least 3 of 4) = 4 B(17, 9)/B(14, 8) + B(18, 8)/B(14, 8) by hand.
        var answer = Reckon(Parts(7, Sheet(All(OGoshi)), Good("o-goshi", Twice)));
        const double four = 14.0 * 15 * 16 * 17 / (22.0 * 23 * 24 * 25);
        const double three = 4 * 14.0 * 15 * 16 * 8 / (22.0 * 23 * 24 * 25);
        Assert.Equal(three + four, answer.Forecast.Chance!.Value, 12);
        Assert.Equal("about 5 in 10 to attend enough lessons", answer.Forecast.Words);
        Assert.Null(answer.Forecast.LikelyOn);
        Assert.Equal(Left, answer.Forecast.Days.Select(d => d.On));

        // 9 of 12: Beta(16, 6), one needed: 0.73 by the first lesson, 0.91 by the second.
        Assert.Equal(Day(11, 17), Reckon(Parts(9, Sheet(All(OGoshi)), Good("o-goshi", Twice))).Forecast.LikelyOn);
        Assert.Equal(("how often the child comes is not known yet", null), (Reckon(Parts(7, Sheet(All(OGoshi))) with { Common = null }).Forecast.Words, Reckon(Parts(7, Sheet(All(OGoshi))) with { Common = null }).Forecast.Chance));
    }

    [Fact]
    public void A_part_that_contradicts_another_is_refused_in_one_sentence()
    {
        var parts = Parts(7, Sheet(All(OGoshi)));
        void Refused(ReadinessParts wrong, string sentence) => Assert.StartsWith(sentence, Assert.Throws<ArgumentException>(() => ReckonReadiness.Reckon(wrong)).Message, StringComparison.Ordinal);
        Refused(parts with { LessonsLeft = [AsOf, .. Left] }, "A lesson left is after 3 November 2026 and before the test on 8 December 2026; 3 November 2026 is not.");
        Refused(parts with { LessonsLeft = Left[1..] }, "The clock has 4 lessons left and the list of lessons left has 3");
        Refused(parts with { Sheet = parts.Sheet with { TestOn = Day(12, 9) } }, "The sheet is for a test on 9 December 2026");
        Refused(parts with { NextTestOn = TestOn }, "The next test on 8 December 2026 is not after");
        Refused(parts with { Evidence = parts.Evidence with { Seen = [Good("a"), Good("a")] } }, "The item a is twice in what was seen");
        Refused(parts with { Sheet = Sheet(Line(2, OGoshi)) }, "The line \"O-goshi\" asks 2 of 1 item");
        Refused(parts with { Papers = parts.Papers with { Born = Day(11, 4) } }, "The birth date 4 November 2026 is after");
    }

    [Fact]
    public void Two_hundred_children_take_a_few_milliseconds()
    {
        var lines = Enumerable.Range(0, 8).Select(i => All(Throw($"t{i}", $"Throw {i}"))).Append(All(Fall("back-3", "Backward", FallDirection.Back, 3))).Append(All(Thing(ItemKind.Word, "uke", "uke"))).ToArray();
        var parts = Parts(8, Sheet(lines), [.. Enumerable.Range(0, 7).Select(i => Good($"t{i}", Twice)), Good("uke", Day(10, 6))])
            .With([.. Tuesdays.Select(d => Clean(d, FallDirection.Back, FallSide.None, 3))]);
        for (var i = 0; i < 400; i++)
            ReckonReadiness.Reckon(parts);
        var best = Enumerable.Range(0, 5).Min(_ =>
        {
            var watch = System.Diagnostics.Stopwatch.StartNew();
            for (var i = 0; i < 200; i++)
                ReckonReadiness.Reckon(parts);
            return watch.Elapsed.TotalMilliseconds;
        });
        TestContext.Current.TestOutputHelper?.WriteLine($"200 children: {best:0.0} ms");

        // Far above what was measured, so that a busy machine does not fail it.
        Assert.True(best < 1_000, $"200 children took {best:0.0} ms.");
    }
}
