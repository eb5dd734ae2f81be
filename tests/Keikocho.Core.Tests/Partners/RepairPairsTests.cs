using Keikocho.Core.Partners;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Partners;

public sealed class RepairPairsTests
{
    private static RepairAnswer Make(PartnersQuestion now, IEnumerable<StandingGroup> standing)
    {
        var question = new RepairQuestion(now, [.. standing]);
        var answer = RepairPairs.Make(question);
        Assert.Empty(RepairCheck.Objections(question, answer));
        return answer;
    }

    private static StandingGroup[] Stand(string groups) => [.. groups.Split(' ').Select(g => new StandingGroup([.. g.Select(Mats.Id)]))];

    private static PartnersQuestion Alike(string letters) =>
        Mats.Seven with { Children = [.. letters.Select(l => Mats.Child(l, 30, 9))], KeepApart = [], Together = [] };

    [Fact, Statement(40)]
    public void A_late_arrival_changes_at_most_two_pairs()
    {
        // The three takes the newcomer in: A-B-C becomes two pairs, and nobody else moves.
        var answer = Make(Mats.Seven with { Children = [.. Mats.Seven.Children, Mats.Child('H', 25, 8)] }, Stand("ABC DE FG"));
        Assert.Equal("A-H B-C D-E F-G", Mats.Text(answer.Offers[0].Arrangement));
        Assert.Equal((1, true, "1 pair changes"), (answer.Offers[0].Changed, answer.AtMostTwo, answer.Headline));
        Assert.Equal(2, answer.Offers[0].New.Count);

        // For every evening made up: at most two, or the answer says that the gates leave no such way, and offers the fewest.
        for (var seed = 1UL; seed <= 150; seed++)
        {
            foreach (var n in (int[])[5, 6, 7, 8, 14, 19])
            {
                var question = AnyMat.Question(seed, n);
                var before = question with { Children = [.. question.Children.SkipLast(1)] };
                var offers = PairsTonight.Make(before).Offers;
                if (offers[0].Kind == OfferKind.Part)
                    continue;
                var repaired = Make(question, offers[0].WorstFirst.Groups.Select(StandingGroup.Of));
                var said = repaired.Reasons.Select(r => r.Sentence).ToArray();
                Assert.True(repaired.AtMostTwo || said.Any(s => s.StartsWith("The gates leave no way", StringComparison.Ordinal) || s.StartsWith("There is no arrangement", StringComparison.Ordinal)));
            }
        }
    }

    [Fact]
    public void One_who_comes_to_pairs_makes_a_three_or_works_with_an_adult()
    {
        var answer = Make(Alike("ABCDE") with { Adults = ["Anna"] }, Stand("AB CD"));
        Assert.Equal(["A-B C-D E+Anna", "A-B C-D-E"], answer.Offers.Select(o => Mats.Text(o.Arrangement)).Select(t => t.Replace("D-C-E", "C-D-E", StringComparison.Ordinal).Replace("B-A-E C-D", "A-B C-D-E", StringComparison.Ordinal)));
        Assert.Equal((0, 1), (answer.Offers[0].Changed, answer.Offers[1].Changed));
    }

    [Fact]
    public void Who_leaves_changes_the_own_pair_and_one_more()
    {
        var answer = Make(Alike("ABCDE"), Stand("AB CD EF"));
        Assert.Equal(2, answer.Offers[0].Changed);
        Assert.True(answer.AtMostTwo);
        var three = Make(Alike("ABDE"), Stand("ABC DE"));
        Assert.Equal("A-B D-E", Mats.Text(three.Offers[0].Arrangement));
    }

    [Fact]
    public void A_gate_that_shuts_breaks_the_pair_that_stands()
    {
        var now = Alike("ABCD");
        now = now with { Children = [.. now.Children.Select(c => c.Name is "A" or "B" ? c with { MayFall = false } : c)] };
        var answer = Make(now, Stand("AB CD"));
        Assert.Equal("A-C B-D", Mats.Text(answer.Offers[0].Arrangement));
        Assert.Equal(2, answer.Offers[0].Changed);
    }

    [Fact]
    public void Where_two_changes_do_not_do_it_says_so_and_offers_the_fewest()
    {
        // A chain: each fits only its neighbours, so one who comes at one end moves everybody.
        PartnersChild[] chain = [Mats.Child('A', 20, 8), Mats.Child('B', 22.8m, 8), Mats.Child('C', 26, 8), Mats.Child('D', 29.7m, 8), Mats.Child('E', 33.8m, 8), Mats.Child('F', 38.6m, 8), Mats.Child('G', 44, 8), Mats.Child('H', 50, 8)];
        var answer = Make(Mats.Seven with { Children = chain, KeepApart = [], Together = [] }, Stand("BC DE FG"));
        Assert.Equal("A-B C-D E-F G-H", Mats.Text(answer.Offers[0].Arrangement));
        Assert.False(answer.AtMostTwo);
        Assert.Contains("The gates leave no way that changes at most 2 pairs: the fewest is 3.", answer.Reasons.Select(r => r.Sentence));
    }

    [Fact]
    public void Everybody_who_leaves_or_stays_is_repaired_with_the_fewest_changes()
    {
        for (var seed = 1UL; seed <= 120; seed++)
        {
            var question = AnyMat.Question(seed, 5 + (int)(seed % 5));
            var offers = PairsTonight.Make(question).Offers;
            var standing = offers.Count == 0 ? [] : offers[0].WorstFirst.Groups.Select(StandingGroup.Of).ToArray();
            Make(question, standing);
            foreach (var child in question.Children)
                Make(question with { Children = [.. question.Children.Where(c => c != child)] }, standing);
        }
    }

    [Fact]
    public void Groups_that_mean_nothing_are_refused()
    {
        Assert.Throws<ArgumentException>(() => RepairPairs.Make(new RepairQuestion(Mats.Seven, Stand("AB BC"))));
        Assert.Throws<ArgumentException>(() => RepairPairs.Make(new RepairQuestion(Mats.Seven, [new StandingGroup([])])));
    }
}
