using Keikocho.Core.Partners;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Partners;

public sealed class FallsTonightTests
{
    private static FallsChild Child(char letter, bool toriOnly = false) => new(Mats.Id(letter), letter.ToString(), letter, toriOnly);

    private static FallsGroup Group(string letters) => new([.. letters.Select(l => Child(char.ToUpperInvariant(l), char.IsLower(l)))]);

    private static FallsAnswer Reckon(FallsQuestion question)
    {
        var answer = FallsTonight.Reckon(question);
        Assert.Empty(FallsCheck.Objections(question, answer));
        return answer;
    }

    private static string Text(IEnumerable<ChildFalls> falls) => string.Join(' ', falls.Select(f => $"{f.Name}{f.Falls}"));

    // The worked case: 5 throws each, 3 rounds, a three with B in the middle, cap 20.
    private static readonly FallsQuestion Worked = new([new("the big outer reap", 5, 1, 3)], [Group("ABC"), Group("DE")]);

    [Fact, Statement(41)]
    public void A_middle_over_the_cap_is_offered_a_lighter_drill_before_it_begins()
    {
        var answer = Reckon(Worked);
        Assert.Equal("A15 B30 C15 D15 E15", Text(answer.Falls));
        Assert.Equal("over 20 falls: B; a lighter drill is ready", answer.Headline);
        var lighter = Assert.Single(answer.Lighter);
        Assert.Equal("A15 B15 C15", Text(lighter.Falls));
        Assert.Equal([new OuterThrows("A", 8), new OuterThrows("C", 7)], lighter.Throws);
        Assert.Equal("Lighter for A, B and C: A and C throw by turns, 8 and 7 times, and watch in between. Falls then: A 15, B 15, C 15.", lighter.Because.Sentence);
    }

    [Theory]
    [InlineData("AB", 5, 1, 3, 20, "A15 B15", null)]
    [InlineData("AB", 5, 2, 2, 20, "A20 B20", null)]
    [InlineData("AB", 5, 2, 3, 20, "A30 B30", "A20 B20")]
    [InlineData("aB", 5, 1, 3, 10, "A0 B15", "A0 B10")]
    [InlineData("aBC", 5, 1, 2, 15, "A0 B20 C10", "A0 B10 C10")]
    [InlineData("ABC", 5, 1, 3, 10, "A15 B30 C15", "A10 B10 C10")]
    [InlineData("A", 5, 1, 5, 20, "A25", "A20")]
    [InlineData("AB", 5, 1, 3, 4, "A15 B15", "A0 B0")]
    public void Falls_are_the_partners_throws_and_the_most_rounds_within_the_cap_are_offered(string letters, int each, int sides, int rounds, int cap, string falls, string? lighter)
    {
        var answer = Reckon(new FallsQuestion([new("hip throw", each, sides, rounds)], [Group(letters)], cap));
        Assert.Equal(falls, Text(answer.Falls));
        Assert.Equal(lighter, answer.Lighter.Count == 0 ? null : Text(answer.Lighter[0].Falls));
    }

    [Fact]
    public void Drills_add_up_and_the_last_is_shortened_first()
    {
        var answer = Reckon(new FallsQuestion([new("hip throw", 4, 1, 3), new("body drop", 3, 1, 4)], [Group("AB")]));
        Assert.Equal("A24 B24", Text(answer.Falls));
        Assert.Equal([3, 2], answer.Lighter[0].Rounds);
        Assert.Contains("body drop 2 rounds instead of 4", answer.Lighter[0].Because.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_evening_stands_before_the_check()
    {
        var state = 77UL;
        int Next(int below) => (int)((MatchingTables.Next(ref state) >> 16) % (ulong)below);
        for (var n = 0; n < 500; n++)
        {
            FallsDrill[] drills = [.. Enumerable.Range(0, Next(4)).Select(i => new FallsDrill($"Drill {i}", Next(7), 1 + Next(2), Next(5)))];
            Reckon(new FallsQuestion(drills, [Group(Next(2) == 0 ? "ABC" : "aBc"), Group(Next(2) == 0 ? "DE" : "Ed"), Group("F")], Next(40), Next(2) == 0));
        }
    }

    [Fact]
    public void A_tori_only_middle_is_refused()
    {
        Assert.StartsWith("B is tori only", Assert.Throws<ArgumentException>(() => FallsTonight.Reckon(Worked with { Groups = [Group("AbC")] })).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => FallsTonight.Reckon(Worked with { Groups = [Group("AB"), Group("BC")] }));
        Assert.Throws<ArgumentException>(() => FallsTonight.Reckon(Worked with { Drills = [new("x", 5, 3, 1)] }));
    }
}
