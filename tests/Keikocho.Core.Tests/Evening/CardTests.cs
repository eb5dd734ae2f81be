using CsCheck;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Testing;
using static Keikocho.Core.Tests.Evening.Cards;

namespace Keikocho.Core.Tests.Evening;

/// <summary>Tonight's card for one end.</summary>
public sealed class CardTests
{
    private static EndCard Make(CardSnapshot question)
    {
        var card = MakeCard.Make(question);
        Assert.Empty(CardCheck.Objections(question, card));
        return card;
    }

    private static string? RoleOf(EndCard card, string item, string child) =>
        card.Slots.Single(s => s.Item == item).Roles.Single(r => r.Child == child).Role;

    [Fact]
    public void The_example_by_hand_gives_M_then_T2_and_the_newcomer_turns_in_only()
    {
        var card = Make(FiveBeginners());
        Assert.Equal([("m", 12m), ("t2", 9m), ("t1", 4m), ("h1", 4m), ("h2", 4m)], card.Items.Select(i => (i.Key, i.Score)));
        Assert.Equal(["m", "t2"], card.Slots.Where(s => s.Kind == CardPartKind.Slot).Select(s => s.Item));
        Assert.Equal(RoleWords.FitInOnly, RoleOf(card, "t2", "P"));
        Assert.Equal(RoleWords.LowAndSlowOnly, RoleOf(card, "t2", "Q"));
        Assert.Equal(RoleWords.ThrowsAndIsThrown, RoleOf(card, "t2", "R"));
        Assert.Equal(RoleWords.ToriOnly, RoleOf(card, "t2", "S"));
        Assert.Null(RoleOf(card, "m", "P"));
    }

    [Fact, Statement(47)]
    public void A_newcomer_and_a_child_in_the_last_week_both_gain_and_falls_come_first()
    {
        var only = new Dictionary<string, CardStanding> { ["Wren"] = CardStanding.Fresh, ["Tove"] = CardStanding.Stale };
        Dictionary<string, CardStanding> Fresh() => new() { ["Tove"] = CardStanding.Fresh };
        // By the numbers alone both slots would be the newcomer's.
        var card = Make(Question(
            [new CardChild("Wren", "Wren", IsNewcomer: true), new CardChild("Tove", "Tove", LessonsToTest: 1)],
            [Hold("a", "A", Fresh()), Hold("b", "B", Fresh()), Hold("c", "C", only)]));
        Assert.Equal(["a", "c"], card.Slots.Select(s => s.Item).OfType<string>());
        Assert.Contains("The last slot is C and not B: without it nothing tonight would be for Tove.", card.Reasons.Select(r => r.Sentence));
        var kinds = card.Slots.Select(s => s.Kind).ToList();
        Assert.True(kinds.IndexOf(CardPartKind.Falls) < kinds.IndexOf(CardPartKind.Slot));
        Assert.Contains(card.Falls, f => f.Way.Direction == FallDirection.Back && f.Stage == 1 && f.Children.Contains("Wren"));
    }

    [Fact, Statement(47)]
    public void A_lesson_without_falls_before_its_first_slot_makes_no_card()
    {
        var question = FiveBeginners();
        var fault = Assert.Throws<ArgumentException>(() => MakeCard.Make(question with { Parts = [.. Parts.Where(p => p.Kind != CardPartKind.Falls)] }));
        Assert.StartsWith("Falls come before the first slot; put them there.", fault.Message, StringComparison.Ordinal);
    }

    [Fact, Statement(48)]
    public void Of_two_items_at_the_same_state_the_one_not_shown_for_five_evenings_comes_before_last_times()
    {
        Dictionary<string, CardStanding> Shown() => new() { ["A"] = CardStanding.NotSigned, ["B"] = CardStanding.NotSigned };
        var card = Make(Question([new CardChild("A", "A"), new CardChild("B", "B")], [Hold("x", "X", Shown(), 1), Hold("y", "Y", Shown(), 6), Hold("z", "Z", Shown(), 2)]));
        Assert.Equal(["y", "z", "x"], card.Items.Select(i => i.Key));
    }

    [Fact]
    public void Never_taught_at_this_end_is_longest_since_then_the_ladder_decides()
    {
        Dictionary<string, CardStanding> Shown() => new() { ["A"] = CardStanding.NotSigned };
        var card = Make(Question([new CardChild("A", "A")], [Hold("x", "X", Shown(), 9), Hold("y", "Y", Shown()), Hold("z", "Z", Shown())]));
        Assert.Equal(["y", "z", "x"], card.Items.Select(i => i.Key));
    }

    [Fact, Statement(49)]
    public void Nobody_at_this_end_is_said_and_the_card_is_empty()
    {
        var card = Make(Question([], [Hold("x", "X", new Dictionary<string, CardStanding>())]));
        Assert.True(card.IsEmpty);
        Assert.Empty(card.Slots);
        Assert.Equal("Nobody is at the beginners' end tonight, so there is no card.", Assert.Single(card.Reasons).Sentence);
    }

    [Theory]
    [InlineData(2, 1, "x")] // twice the best of the others is allowed
    [InlineData(3, 2, "y")] // less than twice is not
    public void A_third_class_running_needs_twice_the_best_of_the_others(int running, int other, string first)
    {
        var children = Enumerable.Range(0, 3).Select(i => new CardChild($"c{i}", $"C{i}")).ToArray();
        Dictionary<string, CardStanding> For(int some) => children.ToDictionary(c => c.Key, c => children.ToList().IndexOf(c) < some ? CardStanding.NotSigned : CardStanding.Fresh);
        var card = Make(Question(children, [Hold("x", "X", For(running), 1, 2), Hold("y", "Y", For(other), 3)]));
        Assert.Equal(first, card.Items[0].Key);
    }

    [Fact]
    public void Slots_are_filled_by_the_ties_where_nobody_needs_anything()
    {
        var card = Make(Question([new CardChild("A", "A")], [Hold("x", "X", new Dictionary<string, CardStanding> { ["A"] = CardStanding.Fresh }, 1)]));
        Assert.Equal(["x", null], card.Slots.Where(s => s.Kind == CardPartKind.Slot).Select(s => s.Item));
    }

    [Fact, Statement(18)]
    public void A_stand_down_of_no_falls_is_tori_only_without_a_reason()
    {
        var question = FiveBeginners();
        var card = Make(question with { Children = [.. question.Children.Select(c => c.Key == "R" ? c with { MayFall = false } : c)] });
        Assert.Equal(RoleWords.ToriOnly, card.Children.Single(c => c.Key == "R").Role);
        Assert.Equal(RoleWords.ToriOnly, RoleOf(card, "t2", "R"));
        Assert.DoesNotContain(card.Falls, f => f.Children.Contains("R"));
        Assert.DoesNotContain(card.Reasons, r => r.Sentence.Contains("stand", StringComparison.OrdinalIgnoreCase));
    }

    [Fact, Statement(23)]
    public void A_child_whose_gates_stay_shut_has_work_in_every_slot_and_nothing_is_held_against_it()
    {
        var question = FiveBeginners();
        var card = Make(question with { Children = [.. question.Children.Select(c => c.Key == "V" ? c with { Gates = [] } : c)] });
        Assert.Equal(RoleWords.ToriOnly, RoleOf(card, "t2", "V"));
        Assert.Equal(card.Items.Select(i => (i.Key, i.Score)), Make(question).Items.Select(i => (i.Key, i.Score)));
        Assert.All(card.Slots.Where(s => s.Item is not null), s => Assert.NotEqual(RoleWords.Watches, s.Roles.Single(r => r.Child == "V").Role));
    }

    [Fact, Statement(45)]
    public void A_missing_adult_takes_throwing_off_the_beginners_card_and_leaves_the_main_group_as_planned()
    {
        var question = FiveBeginners() with { ShortBy = 1 };
        var card = Make(question);
        Assert.Equal(CardPlan.NoThrowing, card.Plan);
        Assert.Equal(["m", "h1"], card.Slots.Select(s => s.Item).OfType<string>());
        Assert.Contains("The hall is short by 1 adult: nothing is thrown at this end.", card.Reasons.Select(r => r.Sentence));
        Assert.Equal(CardPlan.AsPlanned, Make(question with { End = MatEnd.Main }).Plan);
    }

    [Fact, Statement(45)]
    public void Without_an_adult_who_may_lead_the_ends_are_joined_and_a_leader_holds_a_drill_only()
    {
        var card = Make(FiveBeginners() with { Adults = [new CardAdult("priya", "Priya", false)] });
        Assert.Equal(CardPlan.EndsJoined, card.Plan);
        Assert.Null(card.Lead);
        Assert.Equal(["priya"], card.Drills);
        Assert.DoesNotContain(card.Slots, s => s.Item is "t1" or "t2");
    }

    [Fact]
    public void Where_nobody_leads_nothing_is_thrown_whatever_was_chosen() =>
        Assert.Equal(CardPlan.NoThrowing, Make(FiveBeginners() with { Adults = [], Plan = CardPlan.AsPlanned }).Plan);

    [Fact, Statement(22)]
    public void A_child_spared_the_neck_does_the_other_item_or_watches()
    {
        var item = new CardItem("x", "X", ItemKind.HoldDown, new Dictionary<string, CardStanding>(), [], LoadsTheNeck: true, Alternative: "Yoko-shiho-gatame");
        CardChild[] children = [new("A", "A", SparesTheNeck: true), new("B", "B")];
        Assert.Equal("Yoko-shiho-gatame instead", RoleOf(Make(Question(children, [item])), "x", "A"));
        Assert.Equal(RoleWords.Watches, RoleOf(Make(Question(children, [item with { Alternative = null }])), "x", "A"));
        Assert.Equal(2m, Make(Question(children, [item])).Items[0].Score);
    }

    [Fact]
    public void Where_no_gate_is_open_everybody_turns_in_only()
    {
        var card = Make(Question([new CardChild("A", "A"), new CardChild("B", "B", IsNewcomer: true)], [Throw("t", "T", new Dictionary<string, CardStanding>())]));
        Assert.All(card.Slots.Single(s => s.Item == "t").Roles, r => Assert.Equal(RoleWords.FitInOnly, r.Role));
        Assert.Contains("T: no gate is open for it here, so everybody turns in only and nobody is thrown.", card.Reasons.Select(r => r.Sentence));
    }

    [Fact]
    public void A_throw_that_the_fall_table_does_not_know_is_thrown_with_nobody()
    {
        var item = new CardItem("t", "T", ItemKind.Throw, new Dictionary<string, CardStanding>(), [], new PlannedThrow("T", [], 6));
        var card = Make(Question([new CardChild("A", "A", Gates: [.. FallWay.All.Select(w => new CardGate(w, [1, 2, 3, 4, 5, 6]))])], [item]));
        Assert.Equal(RoleWords.FitInOnly, RoleOf(card, "t", "A"));
    }

    [Fact]
    public void What_was_done_tonight_stays_in_its_slot_when_somebody_new_arrives()
    {
        var question = FiveBeginners() with { Taken = [new SlotTaken(1, "h2")] };
        Assert.Equal(["h2", "m"], Make(question).Slots.Select(s => s.Item).OfType<string>());
        var more = question with { Children = [.. question.Children, new CardChild("W", "W", IsNewcomer: true)] };
        Assert.Equal("h2", Make(more).Slots.First(s => s.Slot == 1).Item);
    }

    [Fact]
    public void In_the_main_group_the_plan_comes_first_and_at_the_beginners_end_it_breaks_ties()
    {
        Dictionary<string, CardStanding> Shown() => new() { ["A"] = CardStanding.NotSigned };
        var question = Question([new CardChild("A", "A")], [Hold("x", "X", new Dictionary<string, CardStanding>()), Hold("y", "Y", Shown(), 9), Hold("z", "Z", Shown(), 1) with { Planned = 1 }]);
        Assert.Equal(["x", "z", "y"], Make(question).Items.Select(i => i.Key));
        Assert.Equal(["z", "x", "y"], Make(question with { End = MatEnd.Main }).Items.Select(i => i.Key));
    }

    [Fact]
    public void Nobody_with_a_stand_down_plays_a_game_with_contact_or_falls()
    {
        var question = FiveBeginners() with
        {
            Games = [new CardGame("Tails", 4, 20, 4, GameContact.Touch, false, "turning"), new CardGame("Ships", 2, 20, 2, GameContact.None, true, "falls"), new CardGame("River", 2, 20, 2, GameContact.None, false, "crawling")],
            Together = new CardPlayers(12, 30, true),
            Here = new CardPlayers(5, 20, false),
        };
        var card = Make(question);
        Assert.Equal(["River"], card.Slots.Single(s => s.Kind == CardPartKind.WarmUp).Games);
        Assert.Equal(["Tails", "Ships", "River"], card.Slots.Single(s => s.Kind == CardPartKind.Game).Games);
        Assert.Equal(["Ships", "River"], Make(question with { Here = new CardPlayers(5, 19, false) }).Slots.Single(s => s.Kind == CardPartKind.Game).Games);
    }

    [Fact]
    public void Every_card_stands_before_the_check() => AnyCard.Sample(q => CardCheck.Objections(q, MakeCard.Make(q)).Count == 0, iter: 4_000);

    [Fact]
    public void The_order_in_which_facts_are_given_changes_nothing() => Gen.Select(AnyCard, Gen.Int[0, 1000]).Sample((q, seed) =>
    {
        var other = q with
        {
            Children = [.. q.Children.Select(c => c with { Gates = Mixed(c.Gates ?? [], seed), Asked = Mixed(c.Asked ?? [], seed) })],
            Items = [.. q.Items.Select(i => i with { ShownAgo = Mixed(i.ShownAgo, seed), Standing = Mixed([.. i.Standing], seed).ToDictionary() })],
            Taken = Mixed(q.Taken, seed),
        };
        return SumJson.Write(MakeCard.Make(q)) == SumJson.Write(MakeCard.Make(other));
    }, iter: 1_000);

    [Fact]
    public void Less_evidence_never_gives_more_falls() => Gen.Select(AnyCard, Gen.Int[0, 100], Gen.Int[0, 100]).Sample((q, who, which) =>
    {
        if (q.Children.Count == 0) return true;
        var at = who % q.Children.Count;
        var less = q with
        {
            Children = [.. q.Children.Select((c, i) => i != at ? c : c with { Gates = [.. (c.Gates ?? []).Select((g, n) => n == which % Math.Max(1, c.Gates!.Count) ? g with { OpenStages = [.. g.OpenStages.SkipLast(1)] } : g)] })],
        };
        return Thrown(MakeCard.Make(less)).IsSubsetOf(Thrown(MakeCard.Make(q)));
    }, iter: 2_000);

    [Fact]
    public void A_stand_down_more_never_gives_more_falls() => Gen.Select(AnyCard, Gen.Int[0, 100]).Sample((q, who) =>
    {
        if (q.Children.Count == 0) return true;
        var less = q with { Children = [.. q.Children.Select((c, i) => i != who % q.Children.Count ? c : c with { MayFall = false })] };
        return Thrown(MakeCard.Make(less)).IsSubsetOf(Thrown(MakeCard.Make(q)));
    }, iter: 1_000);

    private static HashSet<(int, string)> Thrown(EndCard card) =>
        [.. card.Slots.SelectMany(s => s.Roles.Where(r => r.Role?.Contains("; is thrown", StringComparison.Ordinal) == true || r.Role == RoleWords.ThrowsAndIsThrown).Select(r => (s.Number, r.Child)))];

    private static IReadOnlyList<T> Mixed<T>(IReadOnlyList<T> list, int seed) => [.. list.OrderBy(i => HashCode.Combine(list.ToList().IndexOf(i) * 7919, seed))];
}
