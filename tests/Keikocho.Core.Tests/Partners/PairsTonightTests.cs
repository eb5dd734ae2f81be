using Keikocho.Core.Kernel;
using Keikocho.Core.Partners;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Partners;

public sealed class PairsTonightTests
{
    [Fact, Statement(33)]
    public void The_worked_seven_make_a_three_with_B_in_the_middle()
    {
        var offer = Assert.Single(Mats.Make(Mats.Seven).Offers);
        Assert.Equal(OfferKind.Three, offer.Kind);
        Assert.Equal("A-B-C D-E F-G", Mats.Text(offer.WorstFirst));
        Assert.Equal("A-B-C D-E F-G", Mats.Text(offer.BySum));
        Assert.Equal((16, 58), (offer.WorstFirst.Worst, offer.WorstFirst.Total));
        Assert.Equal(Mats.Id('B'), offer.WorstFirst.Groups[0].Middle);
        Assert.Contains(
            "The dearest pair costs 16, all together 58: in no arrangement is the dearest pair cheaper, and no arrangement has a lower sum.",
            Mats.Make(Mats.Seven).Reasons.Select(r => r.Sentence));
    }

    [Fact]
    public void With_an_adult_it_is_A_who_works_with_the_adult_and_the_three_comes_second()
    {
        var answer = Mats.Make(Mats.Seven with { Adults = ["Anna", "Ben"] });
        Assert.Equal([OfferKind.Adult, OfferKind.Three], answer.Offers.Select(o => o.Kind));
        Assert.Equal("A+Anna B-C D-E F-G", Mats.Text(answer.Offers[0].WorstFirst));
        Assert.Equal(42, answer.Offers[0].BySum.Total);
        Assert.Equal("3 pairs and A with Anna", answer.Headline);
        Assert.Contains("Anna takes A: without A the others pair best.", answer.Reasons.Select(r => r.Sentence));
    }

    // Every allowed pair of the worked seven with its cost, and the two that the page names as barred.
    [Theory]
    [InlineData("AB", 16)]
    [InlineData("BC", 15)]
    [InlineData("CE", 17)]
    [InlineData("DE", 13)]
    [InlineData("EF", 14)]
    [InlineData("FG", 14)]
    [InlineData("BD", null)]
    [InlineData("EG", null)]
    [InlineData("CD", null)]
    [InlineData("AC", null)]
    public void The_costs_of_the_worked_seven_are_those_of_the_page(string two, int? cost)
    {
        var seven = Mats.Seven;
        var pair = seven with { Children = [.. seven.Children.Where(c => two.Contains(c.Name, StringComparison.Ordinal))] };
        var offer = Mats.Make(pair).Offers[0];
        Assert.Equal(cost, offer.Kind == OfferKind.Pairs ? offer.BySum.Total : null);
    }

    [Fact, Statement(32)]
    public void A_gap_above_the_limit_is_never_a_throwing_pair_even_if_a_child_is_left_over()
    {
        var question = Mats.Seven with { Children = [Mats.Child('A', 20, 8), Mats.Child('B', 23.001m, 8), Mats.Child('C', 20.5m, 8), Mats.Child('D', 30, 8)], KeepApart = [] };
        var answer = Mats.Make(question);
        Assert.Equal("A-C", Mats.Text(answer.Offers[0].WorstFirst));
        Assert.Equal(["B", "D"], answer.Unplaced.Select(u => u.Name));
        Assert.Equal("D may work with none of the 3 others: 3 size gap above the limit.", answer.Unplaced[1].Because.Sentence);

        // Exactly the limit is within it.
        var exact = Mats.Make(question with { Together = [], Children = [Mats.Child('A', 20, 8), Mats.Child('B', 23, 8)] });
        Assert.Equal((15, OfferKind.Pairs), (exact.Offers[0].WorstFirst.Total, exact.Offers[0].Kind));
    }

    [Fact, Statement(34)]
    public void The_outer_children_of_a_three_are_told_not_to_throw_each_other()
    {
        var answer = Mats.Make(Mats.Seven);
        Assert.Equal("A – B – C: B in the middle; A and C do not throw each other", answer.Offers[0].WorstFirst.Groups[0].Line);
        Assert.Contains("The three is A, B and C with B in the middle: A and C do not throw each other, and B falls for two.", answer.Reasons.Select(r => r.Sentence));
    }

    [Fact, Statement(35)]
    public void A_keep_apart_pair_is_in_no_pair_and_in_no_three()
    {
        PartnersChild[] three = [Mats.Child('A', 30, 9), Mats.Child('B', 30, 9), Mats.Child('C', 30, 9)];
        var question = Mats.Seven with { Children = three, KeepApart = [Mats.Two("BA")], Together = [] };
        var answer = Mats.Make(question);
        Assert.Equal("A-C", Mats.Text(answer.Offers[0].WorstFirst));
        Assert.Equal(["B"], answer.Unplaced.Select(u => u.Name));
        Assert.Equal("B-A-C", Mats.Text(Mats.Make(question with { KeepApart = [] }).Offers[0].WorstFirst));
    }

    [Fact, Statement(36)]
    public void Without_a_legal_arrangement_it_says_who_why_and_what_else_there_is()
    {
        var answer = Mats.Make(Mats.Seven with { Children = [Mats.Child('A', 24, 7), Mats.Child('B', 26, 8), Mats.Child('C', 29, 9), Mats.Child('D', 36, 9)], Together = [], KeepApart = [] });
        Assert.Equal("no arrangement for throwing: no partner for C and D", answer.Headline);
        Assert.Equal(OfferKind.Part, Assert.Single(answer.Offers).Kind);
        Assert.Equal("C may work only with B, and the others cannot spare one of them: 2 size gap above the limit.", answer.Unplaced[0].Because.Sentence);
        Assert.Equal(
            ["With turn-ins (at most 25 % apart in size) everybody has a place.", "With 2 adults as partners for C and D everybody has a place."],
            answer.Help.Select(h => h.Sentence));
    }

    [Fact, Statement(36)]
    public void Where_nobody_may_be_thrown_one_sentence_says_so_and_what_else_there_is()
    {
        PartnersActivity[] instead = [new("turn-ins", false, 25), new("holds", false, 40)];
        var question = Mats.Seven with
        {
            Children = [.. "ABCD".Select((letter, i) => Mats.Child(letter, letter == 'D' ? 36 : 24 + i, 8) with { MayFall = false })],
            Together = [],
            KeepApart = [],
            Instead = instead,
        };
        Assert.Equal(
            ["Nobody here may be thrown tonight: for throwing no fall gate is open. In turn-ins there is a place for all but C and D, in holds for everybody."],
            PairsTonight.Make(question).Help.Select(h => h.Sentence));
        Assert.Empty(PartnersCheck.Objections(question, PairsTonight.Make(question)));
        Assert.Equal(
            ["Nobody here may be thrown tonight: for throwing no fall gate is open. In turn-ins and holds there is a place for everybody."],
            PairsTonight.Make(question with { Children = [.. question.Children.Take(2)] }).Help.Select(h => h.Sentence));
    }

    [Fact, Statement(37)]
    public void The_same_question_twice_gives_the_same_pairs()
    {
        for (var seed = 1UL; seed <= 30; seed++)
        {
            var question = AnyMat.Question(seed, 21);
            Assert.Equal(SumJson.Write(PairsTonight.Make(question)), SumJson.Write(PairsTonight.Make(question)));
        }
    }

    [Fact, Statement(38)]
    public void The_order_of_the_list_is_that_of_the_register_and_no_sentence_has_a_size()
    {
        for (var seed = 1UL; seed <= 60; seed++)
        {
            var question = AnyMat.Question(seed, 13);
            var answer = PairsTonight.Make(question);
            var place = question.Children.ToDictionary(c => c.Child, c => c.Register);
            foreach (var arrangement in answer.Offers.SelectMany(o => (Arrangement[])[o.WorstFirst, o.BySum]))
            {
                int[] firsts = [.. arrangement.Groups.Select(g => g.Members.Min(m => place[m.Child]))];
                Assert.Equal(firsts.Order(), firsts);
                foreach (var group in arrangement.Groups)
                {
                    int[] members = [.. group.Members.Where(m => m.Child != group.Middle).Select(m => place[m.Child])];
                    Assert.Equal(members.Order(), members);
                }
            }

            // The sizes of these children have a fraction that stands nowhere else.
            Assert.DoesNotContain(".37", SumJson.Write(answer), StringComparison.Ordinal);
        }
    }

    [Fact, Statement(39)]
    public void Siblings_throw_with_others_unless_the_family_asked()
    {
        PartnersChild[] four = [Mats.Child('A', 30, 9), Mats.Child('B', 30, 9), Mats.Child('C', 33, 9), Mats.Child('D', 33, 9)];
        var siblings = Mats.Seven with { Children = [four[0] with { Family = "Lind" }, four[1] with { Family = "Lind" }, four[2], four[3]], KeepApart = [], Together = [] };
        Assert.Equal("A-C B-D", Mats.Text(Mats.Make(siblings).Offers[0].WorstFirst));
        var asked = Mats.Make(siblings with { KeepTogether = [Mats.Two("AB")] });
        Assert.Equal("A-B C-D", Mats.Text(asked.Offers[0].WorstFirst));
        Assert.Contains("A and B work together, as was asked.", asked.Reasons.Select(r => r.Sentence));
        Assert.Equal("A-B C-D", Mats.Text(Mats.Make(siblings with { Activity = Mats.TurnIns }).Offers[0].WorstFirst));
    }

    [Fact]
    public void Two_who_may_not_fall_are_never_together_and_one_is_tori_only()
    {
        PartnersChild[] four = [Mats.Child('A', 30, 9) with { MayFall = false }, Mats.Child('B', 30, 9) with { MayFall = false }, Mats.Child('C', 33, 9), Mats.Child('D', 33, 9)];
        var answer = Mats.Make(Mats.Seven with { Children = four, KeepApart = [], Together = [] });
        Assert.Equal("A-C B-D", Mats.Text(answer.Offers[0].WorstFirst));
        Assert.Equal("A (tori only) – C", answer.Offers[0].WorstFirst.Groups[0].Line);
        Assert.Contains("Tori only: A and B.", answer.Reasons.Select(r => r.Sentence));

        // A three's middle falls for both, so only C may be it.
        var three = Mats.Make(Mats.Seven with { Children = four[..3], KeepApart = [], Together = [] });
        Assert.Equal("A-C-B", Mats.Text(three.Offers[0].WorstFirst));
    }

    [Fact]
    public void Without_contact_nobody_has_a_partner_and_no_reason_is_given()
    {
        var answer = Mats.Make(Mats.Seven with { Children = [Mats.Child('A', 30, 9) with { MayHaveContact = false }, Mats.Child('B', 30, 9), Mats.Child('C', 33, 9), Mats.Child('D', 3, 9) with { MayBeOnTheMat = false }] });
        Assert.Equal("B-C", Mats.Text(answer.Offers[0].WorstFirst));
        Assert.Equal([("A", "movement alone"), ("D", "watches")], answer.WithoutPartner.Select(w => (w.Name, w.Role)));
    }

    [Fact]
    public void Without_sizes_it_says_so_and_pairs_by_age_and_rank_with_the_stricter_limit()
    {
        PartnersChild[] four = [Mats.Child('A', null, 9) with { Steps = 1 }, Mats.Child('B', null, 11) with { Steps = 5 }, Mats.Child('C', null, 10) with { Steps = 4 }, Mats.Child('D', null, 10) with { Steps = 2 }];
        var answer = Mats.Make(Mats.Seven with { Children = four, KeepApart = [], Together = [] });
        Assert.Equal("A-D B-C", Mats.Text(answer.Offers[0].WorstFirst));
        Assert.Contains("No size is held of anybody here: paired by age, at most 1 year apart, and by rank; look at the pairs before they begin.", answer.Reasons.Select(r => r.Sentence));
        var far = Mats.Make(Mats.Seven with { Children = [four[0], four[1]], Activity = Mats.TurnIns });
        Assert.Equal(2, far.Unplaced.Count);
    }

    [Fact]
    public void An_old_size_is_named_with_its_day_only()
    {
        var answer = Mats.Make(Mats.Seven with { Children = [Mats.Child('A', 30, 9) with { WeighedOn = Mats.Today.AddMonths(-4) }, Mats.Child('B', 30, 9) with { WeighedOn = Mats.Today.AddMonths(-4).AddDays(-1) }] });
        Assert.Equal(
            "The size of B was taken on 23 November 2025, more than 4 months ago: take it again, children grow.",
            Assert.Single(answer.Reasons, r => r is SizeIsOld).Sentence);
    }

    [Fact]
    public void Equal_arrangements_are_settled_by_the_longest_since_together_then_by_the_register()
    {
        PartnersChild[] four = [Mats.Child('A', 30, 9), Mats.Child('B', 30, 9), Mats.Child('C', 30, 9), Mats.Child('D', 30, 9)];
        var question = Mats.Seven with { Children = four, KeepApart = [], Together = [] };
        Assert.Equal("A-B C-D", Mats.Text(Mats.Make(question).Offers[0].WorstFirst));
        var worked = question with { Together = [Mats.Together("AB", 3), Mats.Together("AC", 2), Mats.Together("BD", 9), Mats.Together("AD", 4), Mats.Together("BC", 4), Mats.Together("CD", 7)] };
        Assert.Equal("A-D B-C", Mats.Text(Mats.Make(worked).Offers[0].WorstFirst));
        Assert.Equal("A-B C-D", Mats.Text(Mats.Make(worked with { Together = [.. worked.Together!, Mats.Together("BC", 3)] }).Offers[0].WorstFirst));
    }

    [Fact]
    public void A_question_that_means_nothing_is_refused_in_one_sentence()
    {
        void Refused(string sentence, PartnersQuestion question) => Assert.StartsWith(sentence, Assert.Throws<ArgumentException>(() => PairsTonight.Make(question)).Message, StringComparison.Ordinal);
        Refused("A is there 2 times", Mats.Seven with { Children = [Mats.Child('A', 30, 9), Mats.Child('A', 30, 9)] });
        Refused("A and B have the same place", Mats.Seven with { Children = [Mats.Child('A', 30, 9), Mats.Child('B', 30, 9) with { Register = 'A' }] });
        Refused("The size of A is out of range", Mats.Seven with { Children = [Mats.Child('A', 0, 9)] });
        Refused("The size limit of throwing", Mats.Seven with { Activity = new("throwing", true, 101) });
        Refused("A child is named as its own partner", Mats.Seven with { KeepApart = [Mats.Two("AA")] });
    }
}
