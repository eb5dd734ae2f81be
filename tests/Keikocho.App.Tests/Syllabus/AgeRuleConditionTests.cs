using Keikocho.App.Tests.Students;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Tests.Syllabus;

public sealed class AgeRuleConditionTests
{
    [Fact]
    public async Task A_condition_that_names_what_a_rule_bars_is_said_beside_the_rules()
    {
        await using var club = await SpringClub.StartAsync();
        var edition = new Edition(
            "Juniors", "edition 1", null,
            [
                new LadderRank("white", "White", null, "white", 0, new Minima(), []),
                new LadderRank("yellow", "Yellow", null, "yellow", 0, new Minima(), [new Requirement("throw", new Ask.AllOf(["o-goshi"]), Condition: "going on to kesa gatame")]),
            ],
            [], ["o-goshi"], [new Item("o-goshi", ItemKind.Throw, "O-goshi", "O-goshi")]);
        var begun = Assert.IsType<StartOutcome.Begun>(await club.House.Syllabus.StartAsync(club.Programme, edition, "Begun.", club.Head, club.Tablet, SpringClub.Stop));
        Assert.IsType<PublishOutcome.Published>(await club.House.Syllabus.PublishAsync(begun.Draft, 1, "edition 1", SpringClub.FirstLesson, club.Today, club.Head, club.Tablet, SpringClub.Stop));
        Assert.DoesNotContain("A condition names what a rule bars", await club.WordsAsync("/syllabus"), StringComparison.Ordinal);
        await club.House.Syllabus.AddAgeRuleAsync(new AgeRule("no holds", 9, AgeBasis.Birthday, [], [], [ItemKind.HoldDown], "circular 4", new DateOnly(2026, 1, 5)), club.Head, club.Tablet, SpringClub.Stop);
        Assert.Contains(
            "The condition \"going on to kesa gatame\" of Yellow names Kesa-gatame, which the rule \"no holds\" (circular 4, 5 January 2026) bars below 9 years; write it as an item or reword it.",
            await club.WordsAsync("/syllabus"), StringComparison.Ordinal);

        // Another rule has the book read again; the edition in hand stays what it was.
        await club.House.Syllabus.AddAgeRuleAsync(new AgeRule("no locks", 15, AgeBasis.Birthday, [], [], [ItemKind.Armlock], "circular 4", new DateOnly(2026, 1, 5)), club.Head, club.Tablet, SpringClub.Stop);
        Assert.Contains("names Kesa-gatame", await club.WordsAsync("/syllabus"), StringComparison.Ordinal);
    }
}
