using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Tests.Syllabus;

public sealed class CheckEditionTests
{
    private static readonly Edition Sound = EveryShape.Edition;

    [Fact]
    public void The_edition_with_every_shape_holds_together() => Assert.Equal(
        [],
        CheckEdition.Faults(Sound).Select(f => $"{f.Path}: {f.Sentence}"));

    public static TheoryData<string, string, bool, Edition> Slips => new()
    {
        { "name", "The edition has no name; sheets print it, so give it one.", true, Sound with { Name = " " } },
        { "ranks", "The ladder has no rank; add the one that is worn on joining.", true, Sound with { Ranks = [] } },
        { "ranks[1].key", "Two have the key \"white\"; give one of them another.", true, Rank(1, r => r with { Key = "white" }) },
        { "ranks[1].key", "The key \"Red Belt\" is lower-case words joined by hyphens; write it like \"o-goshi-moving\".", true, Rank(1, r => r with { Key = "Red Belt" }) },
        { "ranks[1].name", "A rank has no name; give it one.", true, Rank(1, r => r with { Name = "" }) },
        { "ranks[2].name", "Two ranks are called Red; nobody can tell them apart on a sheet.", false, Rank(2, r => r with { Name = "Red" }) },
        { "ranks[2].tips", "The number of tips is from 0 to 4, not 5; mend it.", true, Rank(2, r => r with { Tips = 5 }) },
        { "ranks[3].minima.lessons", "The least number of lessons is from 0 to 1000, not -1; mend it.", true, Rank(3, r => r with { Minima = new(-1) }) },
        { "ranks[3].minima.mostReductionPercent", "The largest reduction in per cent is from 0 to 100, not 130; mend it.", true, Rank(3, r => r with { Minima = new(MostReductionPercent: 130) }) },
        { "ranks[3].minima.forAges[0].ages", "Ages from 9 to 7 hold for nobody; turn them round.", true, Rank(3, r => r with { Minima = new(ForAges: [new(new(9, 7))]) }) },
        { "ranks[3].minima.fastTrack.mostRanks", "The number of ranks at one test of a fast track is from 2 to 10, not 1; mend it.", true, Rank(3, r => r with { Minima = new(FastTrack: new(12, 1, 2)) }) },
        { "ranks[0].requirements", "White is the first rank, worn on joining, and nobody is tested for it; what it asks is asked of nobody.", false, Requirements(0, new Requirement("x", new Ask.AllOf(["bow"]))) },
        { "ranks[4].requirements[0].ask.items[0]", "Orange names the item \"o-gosh\", which is not in the edition; add it or take the name out.", true, Ask4(new Ask.AllOf(["o-gosh"])) },
        { "ranks[4].requirements[0].ask.items[1]", "Orange names Standing and kneeling bow twice; take one out.", true, Ask4(new Ask.AnyOf(1, ["bow", "bow", "belt"])) },
        { "ranks[4].requirements[0].ask.items", "Orange asks nothing in this line; name an item or take the line out.", true, Ask4(new Ask.AllOf([])) },
        { "ranks[4].requirements[0].ask.items", "The line asks words together with what is shown; on a sheet the two stand apart, so make two lines of it.", false, Ask4(new Ask.AllOf(["bow", "ashi"])) },
        { "ranks[4].requirements[0].ask.items[0]", "Matte is asked at every test since an earlier rank; here it would stand on the sheet twice.", false, Ask4(new Ask.AllOf(["matte"])) },
        { "ranks[4].requirements[0].ask.count", "Orange asks any 2 of 2; the count is at least 1 and smaller than the number of items.", true, Ask4(new Ask.AnyOf(2, ["bow", "belt"])) },
        { "ranks[4].requirements[0].ask.count", "Orange lets 3 be chosen from 2 items; mend the count.", true, Ask4(new Ask.FromPool(3, Chooser.Child, ["bow", "belt"])) },
        { "ranks[4].requirements[0].ask.count", "Orange lets 2 be chosen from 2, which is no choice.", false, Ask4(new Ask.FromPool(2, Chooser.Child, ["bow", "belt"])) },
        { "ranks[4].requirements[0].ask.rank", "Orange asks a share of Yellow, which is not above it; name a later rank.", true, Ask4(new Ask.ShareOfRank("yellow", 50)) },
        { "ranks[4].requirements[0].ask.rank", "Orange asks a share of the rank \"green\", which is not on the ladder; name one that is.", true, Ask4(new Ask.ShareOfRank("green", 50)) },
        { "ranks[2].requirements[0].ask.percent", "A share in per cent is from 1 to 99, not 100; mend it.", true, Requirements(2, new Requirement("half", new Ask.ShareOfRank("yellow", 100))) },
        { "ranks[4].requirements[0].ask.ranks[0]", "Orange names Orange, which is not below it; name an earlier rank.", true, Ask4(new Ask.DrawnFromEarlier(1, ["orange"])) },
        { "ranks[4].requirements[0].ask.count", "Orange draws 9 by lot, but only 6 were asked before.", false, Ask4(new Ask.DrawnFromEarlier(9, ["red"], [ItemKind.Word, ItemKind.Question])) },
        { "ranks[4].requirements[0].ask.requirement", "Red has no requirement \"throws\"; name one that it has.", true, Ask4(new Ask.TheOther("red", "throws")) },
        { "ranks[4].requirements[0].ask.requirement", "\"falls\" of Red leaves no choice, so nothing of it is left to show; name an \"any of\".", true, Ask4(new Ask.TheOther("red", "falls")) },
        { "ranks[4].requirements[0].ask.rank", "Orange names Orange, which is not below it; name an earlier rank.", true, Ask4(new Ask.TheOther("orange", "throw")) },
        { "ranks[4].requirements[0].unit", "Orange asks this in the term of the unit \"hops\", which is not in the edition; add it or name another.", true, Requirements(4, new Requirement("x", new Ask.AllOf(["bow"]), Unit: "hops")) },
        { "ranks[4].requirements[0].carry", "What is asked this term only needs a unit, which says in which term; name one.", true, Requirements(4, new Requirement("x", new Ask.AllOf(["ashi"]), Carry: Carry.ThisTerm)) },
        { "ranks[4].requirements[1].key", "Two have the key \"x\"; give one of them another.", true, Requirements(4, new Requirement("x", new Ask.AllOf(["bow"])), new Requirement("x", new Ask.AllOf(["belt"]))) },
        { "ranks[1].requirements", "Red asks O-goshi, but no fall is asked by then; partners fall before they are thrown.", false, Rank(1, r => r with { Requirements = [.. r.Requirements.Skip(1)] }) },
        { "units[0]", "No requirement is asked in the term of Hip throws; a child may miss it and nobody will know.", false, Sound with { Ranks = [.. Sound.Ranks.Select(r => r with { Requirements = [.. r.Requirements.Where(q => q.Unit != "hips")] })] } },
        { "units[1].items[0]", "The unit Foot throws names the item \"x\", which is not in the edition; add it or take the name out.", true, Sound with { Units = [Sound.Units[0], Sound.Units[1] with { Items = ["x"] }] } },
        { "firstCourse[1]", "The first course names the item \"x\", which is not in the edition; add it or take the name out.", true, Sound with { FirstCourse = ["back-fall", "x"] } },
        { "firstCourse[0]", "The first course teaches O-goshi before any fall; move a fall before it.", false, Sound with { FirstCourse = ["o-goshi", "back-fall", "side-fall", "kesa-gatame"] } },
        { "firstCourse", "A first course is taught, but no rank is given at its end; say which one is.", false, Rank(1, r => r with { FirstCourse = false }) },
        { "items[0].fall", "Back fall is a fall but does not say which way; add direction, sides and stage.", true, Item("back-fall", i => i with { Fall = null }) },
        { "items[0].fall.bothSides", "Back fall is asked on both sides, but this fall has no sides; take that out.", true, Item("back-fall", i => i with { Fall = new(FallDirection.Back, true, 3) }) },
        { "items[0].fall.stage", "The stage of Back fall is from 1 to 6, not 7; mend it.", true, Item("back-fall", i => i with { Fall = new(FallDirection.Back, false, 7) }) },
        { "items[3].fall", "O-goshi says which way somebody falls but is no fall; change its kind or take that out.", true, Item("o-goshi", i => i with { Fall = new(FallDirection.Back, false, 3) }) },
        { "items[3].order", "O-goshi has an order of two things but is a single one; change its kind or take the order out.", true, Item("o-goshi", i => i with { Order = new Order.Into("A", "B") }) },
        { "items[3].technique", "O-goshi does not say which technique it is a form of; an age rule that names the technique finds it by its name only.", false, Item("o-goshi", i => i with { Technique = null }) },
        { "items[14].order", "Out of Kesa-gatame, trapping the leg does not say out of which hold, and how; add it.", true, Item("kesa-out-leg", i => i with { Order = null }) },
        { "items[14].order.by", "Out of Kesa-gatame, trapping the leg leaves a part of its order empty; fill it in.", true, Item("kesa-out-leg", i => i with { Order = new Order.EscapeFrom("Kesa-gatame", "") }) },
        { "items[8].alternative", "Koshi-guruma gives way to \"x\", which is not in the edition; add it or name another.", true, Item("koshi-guruma", i => i with { Alternative = "x" }) },
        { "items[8].alternative", "Koshi-guruma gives way to itself in the end; break the circle.", true, Item("koshi-guruma", i => i with { Alternative = "koshi-guruma" }) },
        { "items[4].covers[0]", "O-goshi, moving meets itself in the end; break the circle.", true, Item("o-goshi", i => i with { Covers = ["o-goshi-moving"] }) },
        { "items[3].covers[0]", "A fall is met by falls alone; take it out of what another item meets.", true, Item("o-goshi", i => i with { Covers = ["back-fall"] }) },
        { "items[24].times", "The number of times is from 1 to 1000, not 0; mend it.", true, Item("press-ups", i => i with { Times = 0 }) },
        { "items[28].meaning", "The word Hajime has neither a meaning nor an accepted answer; whoever asks it must know.", false, Item("hajime", i => i with { Meaning = null, Answers = null }) },
        { "items[36]", "Nothing names Spare: no rank, no unit, no first course and no other item.", false, Sound with { Items = [.. Sound.Items, new("spare", ItemKind.Grip, "Spare")] } },
        { "items[36].key", "Two have the key \"bow\"; give one of them another.", true, Sound with { Items = [.. Sound.Items, new("bow", ItemKind.Etiquette, "Bow")] } },
        { "techniques[1].name", "neck-wheel is entered twice; take one out.", true, Sound with { Techniques = [new("Neck wheel"), new("neck-wheel")] } },
    };

    [Theory, MemberData(nameof(Slips), DisableDiscoveryEnumeration = true)]
    public void Each_slip_is_found_at_its_place_in_one_sentence(string path, string sentence, bool blocks, Edition edition)
    {
        var faults = CheckEdition.Faults(edition);
        Assert.Contains(new EditionFault(path, sentence, blocks), faults);
        Assert.All(faults, f => Assert.EndsWith(".", f.Sentence, StringComparison.Ordinal));
    }

    [Fact]
    public void A_gap_in_a_list_is_said_and_nothing_breaks()
    {
        var faults = CheckEdition.Faults(Sound with { Ranks = [.. Sound.Ranks, null!], Units = [null!], Items = [.. Sound.Items, null!], Techniques = [null!] });
        Assert.Equal(["ranks[5]", "units[0]", "items[36]", "techniques[0]"], faults.Where(f => f.Sentence == "Nothing stands here; take the place out.").Select(f => f.Path));
    }

    private static Edition Rank(int at, Func<LadderRank, LadderRank> change) => Sound with { Ranks = [.. Sound.Ranks.Select((r, i) => i == at ? change(r) : r)] };

    private static Edition Requirements(int at, params Requirement[] requirements) => Rank(at, r => r with { Requirements = requirements });

    private static Edition Ask4(Ask ask) => Requirements(4, new Requirement("x", ask));

    private static Edition Item(string key, Func<Item, Item> change) => Sound with { Items = [.. Sound.Items.Select(i => i.Key == key ? change(i) : i)] };
}
