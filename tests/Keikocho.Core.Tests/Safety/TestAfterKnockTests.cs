using CsCheck;
using Keikocho.Core.Safety;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Safety;

public sealed class TestAfterKnockTests
{
    private static readonly DateOnly Knock = new(2026, 3, 3);
    private static readonly DateOnly Test = new(2026, 3, 21);
    private static readonly DateOnly Next = new(2026, 7, 25);
    private static readonly KnockAdvice Advice = new(new DateOnly(2026, 3, 12), "Dr Hale", "Anna");

    private static DateOnly March(int day) => new(2026, 3, day);

    private static HeadKnockSnapshot Ask(DateOnly today) => new(Knock, today, [March(4)], [], [Advice], [], null, null, [], [], new KnockRule());

    private static WordsOnlyOrMoved? Say(HeadKnockSnapshot snapshot, DateOnly test, DateOnly? next)
    {
        var answer = TestAfterKnock.Of(HeadKnock.Reckon(snapshot), test, next);
        Assert.Empty(TestAfterKnockCheck.Objections(snapshot, test, next, answer));
        return answer;
    }

    [Fact, Statement(29)]
    public void A_test_on_day_18_is_words_only_or_another_day_with_the_day_and_the_next_test_named()
    {
        var said = Say(Ask(March(14)), Test, Next)!;
        Assert.Equal((18, March(24)), (said.Day, said.Earliest));
        Assert.Equal(
            "Saturday 21 March 2026 is day 18 after the knock of 3 March 2026: words only on that day, no falls and no contact, or the child is tested on another day. "
            + "The earliest day of a test is 24 March 2026. The next test is on 25 July 2026.",
            said.Sentence);
        Assert.Equal("words only on 21 March 2026, or another day: the next test is on 25 July 2026", said.Said);
    }

    [Fact, Statement(29)]
    public void Where_falls_come_back_on_day_18_already_the_test_of_that_day_is_words_only_all_the_same()
    {
        // Without the club's stricter rule: 14 days without symptoms from 4 March end on 18 March.
        var asked = Ask(March(19)) with { Rule = new KnockRule { FallsWaitForContestDay = false }, Lifted = new KnockLifting(March(19), "Anna") };
        Assert.True(HeadKnock.Reckon(asked).FallsAndContact <= March(19));
        Assert.Equal(18, Say(asked, Test, Next)!.Day);
        Assert.Null(Say(asked, March(24), Next));
    }

    [Fact]
    public void Without_advice_or_a_first_free_day_it_says_what_is_missing()
    {
        Assert.Contains("The earliest day of a test is 24 March 2026, and written advice is still to be recorded.", Say(Ask(March(14)) with { Advice = [] }, Test, Next)!.Sentence, StringComparison.Ordinal);
        Assert.Contains("No written advice that counts is recorded.", Say(Ask(March(14)) with { Advice = [] }, March(28), Next)!.Sentence, StringComparison.Ordinal);
        Assert.Contains("No earliest day can be named", Say(Ask(March(14)) with { Advice = [], FreeFrom = [] }, Test, Next)!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_next_test_that_is_too_early_as_well_and_none_at_all_are_said()
    {
        var relapse = Ask(March(21)) with { SymptomsOn = [March(20)], FreeFrom = [March(4), March(21)] };
        var early = Say(relapse, March(28), new DateOnly(2026, 4, 2))!;
        Assert.True(early.NextIsTooEarly);
        Assert.EndsWith("The next test, on 2 April 2026, is before that day as well.", early.Sentence, StringComparison.Ordinal);
        Assert.Equal("words only on 28 March 2026, or another day; the next test, on 2 April 2026, is too early as well", early.Said);
        Assert.EndsWith("No later test is set.", Say(relapse, March(28), null)!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void From_the_earliest_day_on_with_advice_it_says_nothing() => Assert.Null(Say(Ask(March(24)), March(24), Next));

    [Fact]
    public void A_test_before_the_knock_and_a_next_test_before_the_test_are_mistakes()
    {
        var dates = HeadKnock.Reckon(Ask(March(14)));
        Assert.Throws<ArgumentException>(() => TestAfterKnock.Of(dates, March(1), Next));
        Assert.Throws<ArgumentException>(() => TestAfterKnock.Of(dates, Test, Test));
    }

    [Fact]
    public void Whatever_was_recorded_the_verifier_agrees_and_a_later_test_never_asks_more() =>
        Gen.Select(Gen.Int[0, 40], Gen.Int[0, 40], Gen.Int[0, 60], Gen.Int[1, 60], Gen.Bool).Sample((free, advised, test, later, hasAdvice) =>
        {
            var today = Knock.AddDays(40);
            var asked = Ask(today) with { FreeFrom = [Knock.AddDays(free)], Advice = hasAdvice ? [Advice with { Dated = Knock.AddDays(advised) }] : [] };
            var first = Say(asked, Knock.AddDays(test), Knock.AddDays(test + later));
            var second = Say(asked, Knock.AddDays(test + later), null);
            Assert.True(first is not null || second is null);
        });
}
