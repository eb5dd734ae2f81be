using CsCheck;
using Keikocho.Core.Syllabus;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Syllabus;

public sealed class NearestEditionTests
{
    private static readonly DateOnly Test = new(2026, 3, 28);
    private static readonly DateOnly Changeover = new(2026, 9, 1);

    // Old a-h, new drops h and adds i, j; i is a fall and holds at once.
    private static readonly SheetSnapshot Old = Ask("old edition", "abcdefgh");
    private static readonly SheetSnapshot New = Ask("new edition", "abcdefgij", atOnce: "i");

    private static SheetSnapshot Ask(string name, string items, string atOnce = "") => new(
        new Edition("Ladder", name, new(2026, 1, 1),
            [
                new("white", "White", null, null, 0, new(), []),
                new("red", "Red", null, null, 0, new(),
                [
                    .. items.Select(c => new Requirement($"r{c}", new Ask.AllOf([$"{c}"]), AtOnce: atOnce.Contains(c))),
                ]),
            ],
            [], [], [.. items.Select(c => new Item($"{c}", ItemKind.Throw, $"{c}"))]),
        "red", Test, null, [], SheetChild.Plain());

    private static NearestEditionAnswer Choose(NearestEditionSnapshot question)
    {
        var answer = NearestEdition.Choose(question);
        Assert.Empty(NearestEditionCheck.Objections(question, answer));
        return answer;
    }

    private static IReadOnlyList<string> Secured(string items) => [.. items.Select(c => $"{c}")];

    [Fact, Statement(82)]
    public void With_a_to_f_secured_three_are_left_by_both_and_the_tie_goes_to_the_new_edition()
    {
        var answer = NearestEdition.Choose(Old, New, Secured("abcdef"), [], Changeover);
        Assert.Equal((true, 3, 3), (answer.IsNewer, answer.OlderLeft, answer.NewerLeft));
        Assert.Equal(
            [
                "By the older list, old edition, 3 items are left, by the new one, new edition, 3: as many by both, so new edition is asked.",
                "For safety i of new edition is asked at once.",
            ],
            answer.Reasons.Select(r => r.Sentence));
    }

    [Fact, Statement(82)]
    public void The_nearer_set_holds_until_the_changeover_with_what_holds_at_once()
    {
        var answer = NearestEdition.Choose(Old, New, Secured("abcdefgh"), [], Changeover);
        Assert.Equal((false, 1, 2), (answer.IsNewer, answer.OlderLeft, answer.NewerLeft));
        Assert.Equal("abcdefghi", string.Concat(answer.Sheet.Lines.SelectMany(l => l.Items).Select(i => i.Item.Key)));
        Assert.Equal("at-once/ri", answer.Sheet.Lines[^1].Requirement);
        Assert.Equal("old edition", answer.Sheet.EditionName);
    }

    // On the day itself the new one; what is dropped for safety is gone from every sheet at once.
    [Fact]
    public void On_the_day_of_the_changeover_the_new_edition_holds()
    {
        Assert.True(NearestEdition.Choose(Old, New, Secured("abcdefgh"), [], Test).IsNewer);
        Assert.False(NearestEdition.Choose(Old, New, Secured("abcdefgh"), [], Test.AddDays(1)).IsNewer);
    }

    [Fact]
    public void What_is_taken_out_for_safety_is_on_neither_sheet()
    {
        var answer = NearestEdition.Choose(Old, New, Secured("abcdefg"), ["h"], Changeover);
        Assert.Equal((false, 1, 2), (answer.IsNewer, answer.OlderLeft, answer.NewerLeft));
        Assert.DoesNotContain("h", answer.Sheet.Lines.SelectMany(l => l.Items).Select(i => i.Item.Key));
    }

    [Fact]
    public void Any_choice_stands_up_to_crossing_off_both_lists()
    {
        var letters = Gen.Int[0, 9].Select(i => "abcdefghij"[i]).Array[0, 10].Select(l => string.Concat(l.Distinct()));
        Gen.Select(letters, letters, letters, letters, letters, Gen.Int[-1, 1], Gen.Int[1, 3]).Sample((old, fresh, once, gone, good, day, k) =>
        {
            var (older, newer) = (MakeSheet.Make(Ask("old", old)), MakeSheet.Make(Ask("new", fresh, once)));
            // The first lines become one choice.
            RequirementSheet Choice(RequirementSheet sheet) => sheet.Lines.Count <= k ? sheet : sheet with
            {
                Lines = [sheet.Lines[0] with { Requirement = "choice", Count = k, Items = [.. sheet.Lines.Take(k + 1).SelectMany(l => l.Items)] }, .. sheet.Lines.Skip(k + 1)],
            };
            (older, newer) = (Choice(older), Choice(newer));
            var question = new NearestEditionSnapshot(older, newer,
                [.. newer.Lines.Select(l => l.Requirement).Where(r => r == "choice" || once.Contains(r[1]))], Secured(gone), Secured(good), Test.AddDays(day));
            return NearestEditionCheck.Objections(question, NearestEdition.Choose(question)) is [];
        }, iter: 500);
    }
}
