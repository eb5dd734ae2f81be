using CsCheck;
using Keikocho.Core.Evening;

namespace Keikocho.Core.Tests.Evening;

/// <summary>Words due, and whom nobody has looked at.</summary>
public sealed class WordsAndLooksTests
{
    private static IReadOnlyList<string> Due(params WordChild[] children)
    {
        var question = new WordsDueSnapshot([new("w1", "Hajime"), new("w2", "Rei"), new("w3", "Tori"), new("stop", "Mate", true)], children, new WordsDueRule());
        var answer = WordsDue.Choose(question);
        Assert.Empty(WordsDueCheck.Objections(question, answer));
        return [.. answer.Words.Select(w => w.Key)];
    }

    [Fact]
    public void The_example_by_hand_asks_the_third_word_first()
    {
        // All three due for two; the classes over are 0, 0 and 2.
        AskedBefore Not(string word) => new(word, 1, 3);
        var first = Due(
            new WordChild("A", [Not("w1"), new("w2", 1, 0), new("w3", 2, 0), Not("stop")]),
            new WordChild("B", [new("w1", 2, 1), Not("w2"), new("w3", 3, 1), Not("stop")]),
            new WordChild("C", [new("w1", 4, 2), new("w2", 8, 3), Not("w3"), Not("stop")]));
        Assert.Equal("w3", first[0]);
        Assert.Equal(["w3", "w2", "w1"], first);
    }

    [Fact]
    public void Most_children_first_then_a_safety_word_and_what_was_never_asked_is_due()
    {
        Assert.Equal(["stop", "w1", "w2", "w3"], Due(new WordChild("A", [])));
        Assert.Equal(["w2", "stop", "w1"], Due(new WordChild("A", [new("w3", 1, 3)]), new WordChild("B", [new("w1", 0, 0), new("w3", 0, 0), new("stop", 0, 0)])));
    }

    [Fact]
    public void A_word_that_is_due_for_nobody_is_not_asked() => Assert.Empty(Due());

    [Theory]
    [InlineData("", 0)]
    [InlineData("r", 1)]
    [InlineData("rrrr", 3)]
    [InlineData("rrw", 0)]
    [InlineData("rrwr", 1)]
    public void A_wrong_answer_goes_back_to_the_first_step(string answers, int step) => Assert.Equal(step, WordsDueRule.StepAfter(answers.Select(a => a == 'r')));

    [Fact]
    public void Every_list_of_words_stands_before_the_check() =>
        Gen.Select(Gen.Int[0, 9], Gen.Select(Gen.Int[0, 8], Gen.Int[0, 12], Gen.Int[0, 3]).Array[0, 8].Array[0, 6], Gen.Int[1, 6]).Sample((count, asked, most) =>
        {
            var words = Enumerable.Range(0, count).Select(i => new DueWord($"w{i}", $"Word {i}", i % 3 == 2)).ToArray();
            var children = asked.Select((own, i) => new WordChild($"c{i}", [.. own.Where(a => a.Item1 < count).DistinctBy(a => a.Item1).Select(a => new AskedBefore($"w{a.Item1}", a.Item2, a.Item3))])).ToArray();
            var question = new WordsDueSnapshot(words, children, new WordsDueRule(most));
            return WordsDueCheck.Objections(question, WordsDue.Choose(question)).Count == 0;
        }, iter: 2_000);

    [Fact]
    public void The_example_by_hand_looks_at_B_E_and_D()
    {
        var question = new LookAtSnapshot([new("A", "A", 1), new("B", "B", 6), new("C", "C", 0), new("D", "D", 4, 8), new("E", "E", 4, 3)], new LookAtRule());
        var answer = LookAt.Choose(question);
        Assert.Equal(["B", "E", "D"], answer.Chosen);
        Assert.Equal(["B", "D", "E"], answer.InRegisterOrder);
        Assert.Empty(LookAtCheck.Objections(question, answer));
        Assert.Equal("Nobody has marked anything of E for 4 evenings; 3 lessons left before the test.", answer.Reasons[1].Sentence);
    }

    [Fact]
    public void Exactly_three_evenings_are_not_yet_too_long()
    {
        var answer = LookAt.Choose(new LookAtSnapshot([new("A", "A", 3)], new LookAtRule()));
        Assert.Empty(answer.Chosen);
        Assert.Equal("Everybody here was looked at within the last 3 evenings of their own.", Assert.Single(answer.Reasons).Sentence);
    }

    [Fact]
    public void Every_list_of_looks_stands_before_the_check() =>
        Gen.Select(Gen.Int[0, 8], Gen.Int[-1, 6]).Array[0, 9].Sample(own =>
        {
            var question = new LookAtSnapshot([.. own.Select((o, i) => new LookChild($"c{i}", $"C{i}", o.Item1, o.Item2 < 0 ? null : o.Item2))], new LookAtRule());
            return LookAtCheck.Objections(question, LookAt.Choose(question)).Count == 0;
        }, iter: 2_000);
}

/// <summary>The parts of a lesson fit its length.</summary>
public sealed class FitPartsTests
{
    [Theory]
    [InlineData(75, new[] { 3, 12, 10, 15, 15, 8, 7, 5 })]
    [InlineData(60, new[] { 3, 5, 10, 15, 15, 7, 5 })]
    [InlineData(90, new[] { 3, 12, 10, 23, 22, 8, 7, 5 })]
    [InlineData(45, new[] { 3, 5, 10, 8, 7, 7, 5 })]
    public void Games_give_way_first_and_falls_never(int minutes, int[] parts) => Assert.Equal(parts, FitParts.To(Cards.Parts, minutes).Select(p => p.Minutes));

    [Fact]
    public void Any_length_is_filled_to_the_minute_and_keeps_the_falls() => Gen.Int[12, 240].Sample(minutes =>
    {
        var parts = FitParts.To(Cards.Parts, minutes);
        return parts.Sum(p => p.Minutes) == minutes && parts.Single(p => p.Kind == CardPartKind.Falls).Minutes == 10 && parts.All(p => p.Minutes > 0);
    });

    [Fact]
    public void A_lesson_too_short_for_falls_is_refused() => Assert.Throws<ArgumentException>(() => FitParts.To(Cards.Parts, 11));
}
