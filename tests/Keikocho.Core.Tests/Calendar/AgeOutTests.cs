using CsCheck;
using Keikocho.Core.Calendar;
using Keikocho.Core.Kernel;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Calendar;

public sealed class AgeOutTests
{
    private static readonly TermDays[] Terms =
    [
        new(new(2025, 9, 8), new(2025, 12, 12)),
        new(new(2026, 1, 12), new(2026, 3, 28)),
        new(new(2026, 4, 20), new(2026, 7, 25)),
        new(new(2026, 9, 7), new(2026, 12, 11)),
    ];

    private static readonly DateOnly[] Tests = [new(2026, 3, 28), new(2026, 7, 25), new(2026, 11, 28)];

    private static readonly AgeOutSnapshot Worked = new(new(2026, 3, 3), new(2013, 9, 14), 3, 6, Tests, Terms, new AgeOutRule());

    private static AgeOutAnswer Reckon(AgeOutSnapshot snapshot)
    {
        var answer = AgeOut.Reckon(snapshot);
        Assert.Empty(AgeOutCheck.Objections(snapshot, answer));
        return answer;
    }

    [Fact, Statement(79)]
    public void Thirteen_on_14_September_leaves_two_of_the_three_tests_and_rank_5_at_best()
    {
        var answer = Reckon(Worked);
        Assert.Equal([Tests[0], Tests[1]], answer.TestsLeft);
        Assert.Equal(5, answer.HighestReachable);
        Assert.True(answer.TellNow);
        Assert.Equal(
            [
                "Turns 13 on 14 September 2026 and leaves on that day.",
                "2 of the 3 tests set are left by 14 September 2026 (28 Mar and 25 Jul); at one rank a test, from rank 3 of 6 to rank 5 at best.",
                "Tell the family now: 2 terms ahead was 12 January 2026.",
            ],
            answer.Reasons.Select(r => r.Sentence));
    }

    [Fact]
    public void A_test_on_the_birthday_and_a_test_today_count() =>
        Assert.Equal(2, Reckon(Worked with { Today = Tests[0], Birth = new(2013, 7, 25) }).TestsLeft.Count);

    // Rulings: between terms "the end of that term" is the birthday; a school year ends first on or after the birthday.
    [Theory]
    [InlineData(LeavingRule.Birthday, 14, 9, 2013, "2026-09-14")]
    [InlineData(LeavingRule.EndOfThatTerm, 14, 9, 2013, "2026-12-11")]
    [InlineData(LeavingRule.EndOfThatTerm, 10, 8, 2013, "2026-08-10")]
    [InlineData(LeavingRule.SchoolYearEnd, 14, 9, 2013, "2027-08-31")]
    [InlineData(LeavingRule.SchoolYearEnd, 31, 8, 2013, "2026-08-31")]
    public void Each_leaving_rule_has_its_day(LeavingRule rule, int day, int month, int year, string leaves) =>
        Assert.Equal(leaves, Reckon(Worked with { Birth = new(year, month, day), Rule = new AgeOutRule(Leaves: rule) }).LeavesOn.Iso());

    [Fact]
    public void The_family_is_told_from_the_first_day_of_the_term_two_before()
    {
        var answer = Reckon(Worked with { Today = new(2025, 12, 1) });
        Assert.Equal(new DateOnly(2026, 1, 12), answer.TellFamilyFrom);
        Assert.False(answer.TellNow);
    }

    [Theory, Statement(81)]
    [InlineData(LeapBirthday.TwentyEighthFebruary, "2026-02-28")]
    [InlineData(LeapBirthday.FirstMarch, "2026-03-01")]
    public void A_29_February_birthday_follows_the_setting_in_common_years(LeapBirthday leap, string birthday)
    {
        var born = new DateOnly(2016, 2, 29);
        Assert.Equal(birthday, Age.Birthday(born, 10, leap).Iso());
        Assert.Equal(leap == LeapBirthday.FirstMarch ? 9 : 10, Age.On(born, new(2026, 2, 28), leap));
        Assert.Equal(10, Age.On(born, new(2026, 3, 1), leap));
        Assert.Equal(new DateOnly(2028, 2, 29), Age.Birthday(born, 12, leap));

        var answer = Reckon(Worked with { Today = new(2026, 1, 5), Birth = new(2012, 2, 29), Rule = new AgeOutRule(14, LeapBirthday: leap), Tests = [new(2026, 3, 1)] });
        Assert.Equal(leap == LeapBirthday.FirstMarch ? 1 : 0, answer.TestsLeft.Count);
    }

    [Fact]
    public void Age_never_falls_and_rises_on_the_birthday() =>
        Gen.Select(Gen.Int[0, 4000], Gen.Int[0, 7000], Gen.Bool).Sample((b, d, firstMarch) =>
        {
            var leap = firstMarch ? LeapBirthday.FirstMarch : LeapBirthday.TwentyEighthFebruary;
            var birth = new DateOnly(2008, 1, 1).AddDays(b);
            var day = birth.AddDays(d);
            var age = Age.On(birth, day, leap);
            return Age.Birthday(birth, age, leap) <= day && day < Age.Birthday(birth, age + 1, leap);
        });

    [Fact]
    public void Every_answer_stands_before_the_check() =>
        Gen.Select(Gen.Int[0, 900], Gen.Int[0, 2000], Gen.Int[0, 6], Gen.Int[0, 2], Gen.Int[1, 12], Gen.Int[1, 31], Gen.Bool, Gen.Int[0, 3]).Sample(
            (today, born, rank, rule, month, day, firstMarch, ahead) =>
            {
                var snapshot = Worked with
                {
                    Today = new DateOnly(2025, 1, 1).AddDays(today),
                    Birth = new DateOnly(2010, 1, 1).AddDays(born),
                    Rank = rank,
                    Rule = new AgeOutRule(13, (LeavingRule)rule, firstMarch ? LeapBirthday.FirstMarch : LeapBirthday.TwentyEighthFebruary, month, day, ahead),
                };
                return AgeOutCheck.Objections(snapshot, AgeOut.Reckon(snapshot)).Count == 0;
            });
}
