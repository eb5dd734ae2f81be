using Keikocho.Core.Syllabus;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Syllabus;

public sealed class AgeRulesAgainstLadderTests
{
    private static AgeRulesAnswer Find(AgeRulesSnapshot question)
    {
        var answer = AgeRulesAgainstLadder.Find(question);
        Assert.Empty(AgeRulesAgainstLadderCheck.Objections(question, answer));
        return answer;
    }

    [Fact, Statement(80)]
    public void A_neck_grip_is_not_allowed_for_nine_of_fourteen_and_the_alternative_is_named()
    {
        int[] ages = [8, 8, 9, 9, 9, 10, 10, 10, 10, 11, 11, 12, 13, 14];
        var children = ages.Select((age, i) => new RankCandidate($"child {i + 1}", "yellow", EveryShape.TestOn.AddYears(-age))).ToList();
        var line = Assert.Single(Find(new(EveryShape.Edition, EveryShape.Rules, children, EveryShape.TestOn)).NotAllowed);
        Assert.Equal(("koshi-guruma", 9, 14, "O-goshi, moving"), (line.Item, line.Children.Count, line.Of, line.Instead));
        Assert.Equal(children.Take(9).Select(c => c.Child), line.Children);
        Assert.Equal(
            "Yellow asks Koshi-guruma, which the rule \"no neck grips\" (invented circular 4, 5 January 2026) bars below 11 years, 9 of 14 children: O-goshi, moving is shown in its place.",
            line.Because.Sentence);
    }

    [Fact]
    public void Without_children_the_whole_ladder_is_held_against_the_rules()
    {
        var answer = Find(new(EveryShape.Edition, [.. EveryShape.Rules, new("no knees", 12, AgeBasis.Birthday, ["seoi"], ["Seoi-otoshi"], [], "invented", new(2026, 1, 1))], [], EveryShape.TestOn));
        Assert.Equal(
            ["yellow-tip koshi-guruma", "yellow koshi-guruma", "orange uki-then-koshi", "orange okuri-eri-jime", "orange juji-gatame", "orange koshi-guruma"],
            answer.NotAllowed.Select(n => $"{n.Rank} {n.Item}"));
        Assert.Equal("no knees", Assert.Single(answer.RulesWithoutItems).Name);
    }

    [Fact]
    public void An_unknown_birth_date_and_every_age_are_held_against_the_sheets()
    {
        var children = EveryShape.Edition.Ranks.SelectMany(r => Enumerable.Range(4, 12), (r, age) => new RankCandidate($"{r.Key} {age}", r.Key, age == 4 ? null : EveryShape.TestOn.AddYears(-age)));
        Assert.NotEmpty(Find(new(EveryShape.Edition, EveryShape.Rules, [.. children], EveryShape.TestOn)).NotAllowed);
    }
}
