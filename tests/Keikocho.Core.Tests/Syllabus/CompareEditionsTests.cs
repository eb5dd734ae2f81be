using CsCheck;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Tests.Syllabus;

public sealed class CompareEditionsTests
{
    private static readonly Edition Old = EveryShape.Edition;

    private static Edition Rank(string key, Func<LadderRank, LadderRank> change) => Old with { Ranks = [.. Old.Ranks.Select(r => r.Key == key ? change(r) : r)] };

    private static Edition Line(string rank, string key, Func<Requirement, Requirement> change) =>
        Rank(rank, r => r with { Requirements = [.. r.Requirements.Select(q => q.Key == key ? change(q) : q)] });

    private static Edition Item(string key, Func<Item, Item> change) => Old with { Items = [.. Old.Items.Select(i => i.Key == key ? change(i) : i)] };

    public static TheoryData<string, Edition> Changed => new()
    {
        { "Yellow: O-goshi was added.", Line("yellow", "hold", q => q with { Ask = new Ask.AllOf(["mune-gatame", "turn-all-fours", "otoshi-into-kesa", "o-goshi"]) }) },
        { "Yellow: Mune-gatame was dropped.", Line("yellow", "hold", q => q with { Ask = new Ask.AllOf(["turn-all-fours", "otoshi-into-kesa"]) }) },
        { "Red: Any 2 of: O-goshi, O-soto-otoshi, Uki-goshi instead of Either of: O-goshi or O-soto-otoshi.", Line("red", "throw", q => q with { Ask = new Ask.AnyOf(2, ["o-goshi", "o-soto-otoshi", "uki-goshi"]) }) },
        { "Red: A hold for ten seconds was dropped.", Rank("red", r => r with { Requirements = [.. r.Requirements.Where(q => q.Key != "hold")] }) },
        { "Orange: Tai-otoshi was added.", Rank("orange", r => r with { Requirements = [.. r.Requirements, new("new", new Ask.AllOf(["tai-otoshi"]))] }) },
        { "Orange: 4 drawn by lot from what the ranks below asked instead of 3 drawn by lot from what the ranks below asked.", Line("orange", "recall", q => q with { Ask = new Ask.DrawnFromEarlier(4, []) }) },
        { "Orange: 3 drawn by lot from what the ranks below asked is asked of other kinds.", Line("orange", "recall", q => q with { Ask = new Ask.DrawnFromEarlier(3, [], [ItemKind.Throw]) }) },
        { "Yellow: Rolling fall is no longer critical.", Line("yellow", "roll", q => q with { Critical = false }) },
        { "Yellow: Rolling fall, with the condition none instead of \"both sides\".", Line("yellow", "roll", q => q with { Condition = null }) },
        { "Yellow: Either of: Uki-goshi or Tai-otoshi, asked of up to 8 years instead of up to 7 years.", Line("yellow", "one", q => q with { Ages = new(To: 8) }) },
        { "Yellow: Ashi is asked at every test from now on instead of in its unit's term only.", Line("yellow", "feet-words", q => q with { Carry = Carry.Always }) },
        { "Yellow: Ashi is asked in every term instead of the term of Foot throws.", Line("yellow", "feet-words", q => q with { Unit = null }) },
        { "Red: a line reads \"Ten seconds\" instead of \"A hold for ten seconds\".", Line("red", "hold", q => q with { Title = "Ten seconds" }) },
        { "Orange: Name two actions against the rules is no longer asked at once.", Line("orange", "faults", q => q with { AtOnce = false }) },
        { "Orange: the lines stand in another order.", Rank("orange", r => r with { Requirements = [.. r.Requirements.Reverse()] }) },
        { "Yellow: least lessons 24 instead of 20.", Rank("yellow", r => r with { Minima = r.Minima with { Lessons = 24 } }) },
        { "Yellow: least age none instead of 7.", Rank("yellow", r => r with { Minima = r.Minima with { Age = null } }) },
        { "Red: for some ages no other figures instead of up to 7 years 18 lessons and 14 weeks.", Rank("red", r => r with { Minima = r.Minima with { ForAges = null } }) },
        { "Orange: the fast track is from 12 years, 3 ranks at each of the first 2 tests instead of for nobody.", Rank("orange", r => r with { Minima = r.Minima with { FastTrack = new(12, 3, 2) } }) },
        { "\"Orange\" is now \"Orange belt\".", Rank("orange", r => r with { Name = "Orange belt" }) },
        { "Orange was dropped.", Old with { Ranks = [.. Old.Ranks.Take(4)] } },
        { "Green was added, now after Orange.", Old with { Ranks = [.. Old.Ranks, new("green", "Green", null, "green", 0, new(), [])] } },
        { "White has another place: now after Orange.", Old with { Ranks = [.. Old.Ranks.Skip(1), Old.Ranks[0]] } },
        { "The rotation has another order: Foot throws and Hip throws.", Old with { Units = [Old.Units[1], Old.Units[0]] } },
        { "The unit Foot throws was dropped.", Rank("yellow", r => r with { Requirements = [.. r.Requirements.Where(q => q.Unit != "feet")] }) with { Units = [Old.Units[0]] } },
        { "The unit \"Foot throws\" is now \"Feet\".", Old with { Units = [Old.Units[0], Old.Units[1] with { Name = "Feet" }] } },
        { "The unit Foot throws now teaches Bow.", Item("bow", i => i with { Name = "Bow" }) with { Units = [Old.Units[0], Old.Units[1] with { Items = [.. Old.Units[1].Items, "bow"] }] } },
        { "The first course no longer teaches How do you give up?.", Old with { FirstCourse = [.. Old.FirstCourse.Take(9)] } },
        { "\"O-soto-otoshi\" is now \"Large outer drop\".", Item("o-soto-otoshi", i => i with { Name = "Large outer drop" }) },
        { "Kesa-gatame: 15 seconds instead of 10 seconds.", Item("kesa-gatame", i => i with { Seconds = 15 }) },
        { "Koshi-guruma: its alternative is now O-goshi.", Item("koshi-guruma", i => i with { Alternative = "o-goshi" }) },
        { "The club's own technique Neck wheel was dropped.", Old with { Techniques = null } },
    };

    [Theory, MemberData(nameof(Changed), DisableDiscoveryEnumeration = true)]
    public void Each_change_is_said_in_words(string sentence, Edition newer)
    {
        var changes = CompareEditions.Changes(Old, newer);
        Assert.Contains(sentence, changes.Select(c => c.Sentence));
        Assert.Empty(CompareEditionsCheck.Objections(Old, newer, changes));
    }

    [Fact]
    public void A_renamed_item_is_one_change_and_no_line_is_said_to_differ() =>
        Assert.Single(CompareEditions.Changes(Old, Item("o-soto-otoshi", i => i with { Name = "Large outer drop" })));

    [Fact]
    public void Editions_that_ask_the_same_have_no_changes() =>
        Assert.Empty(CompareEditions.Changes(Old, Old with { Name = "edition 4", From = new(2027, 1, 1), Items = [.. Old.Items], Ranks = [.. Old.Ranks.Select(r => r with { Requirements = [.. r.Requirements] })] }));

    [Fact]
    public void Any_two_of_these_editions_are_compared_without_objections()
    {
        var editions = Changed.Select(row => row.Data.Item2).Append(Old).ToList();
        Gen.Int[0, editions.Count - 1].Array[2].Sample(
            pair => CompareEditionsCheck.Objections(editions[pair[0]], editions[pair[1]], CompareEditions.Changes(editions[pair[0]], editions[pair[1]])) is [],
            iter: 300);
    }
}
