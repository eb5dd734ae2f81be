using System.Text.RegularExpressions;
using Keikocho.Core.Kernel;
using Keikocho.Core.Readiness;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Testing;
using static Keikocho.Core.Tests.Readiness.Readies;

namespace Keikocho.Core.Tests.Readiness;

/// <summary>The whole question, as the command line asks it.</summary>
public sealed partial class ReadinessQuestionTests
{
    private static ReadinessSnapshot Asked()
    {
        var page = File.ReadAllText(Path.Combine(Command.Repository.Root, "docs", "formats", "readiness.md"));
        return SumJson.Read<ReadinessSnapshot>(Assert.Single(Command.Repository.Blocks(page, "json question")));
    }

    [Fact]
    public void The_whole_question_and_its_parts_have_one_answer()
    {
        var asked = Asked();
        var parts = new ReadinessParts(
            asked.Clock.AsOf, asked.Sheet.TestOn, asked.Clock.NextTestOn, Core.Calendar.Clock.Reckon(asked.Clock), MakeSheet.Make(asked.Sheet), asked.Evidence,
            asked.StandDowns, asked.Papers, asked.Common, asked.LessonsLeft, asked.Overrule, asked.GateRule, asked.Rule);
        Assert.Equal(SumJson.Write(ReckonReadiness.Reckon(parts)), SumJson.Write(ReckonReadiness.Reckon(asked)));
        Assert.Empty(ReadinessCheck.Objections(parts, ReckonReadiness.Reckon(asked)));
    }

    [Fact]
    public void A_harder_form_of_the_edition_counts_though_the_sheet_does_not_ask_it()
    {
        var asked = Asked();
        var edition = asked.Sheet.Edition;
        var harder = asked with
        {
            Sheet = asked.Sheet with { Edition = edition with { Items = [.. edition.Items, Throw("o-goshi-both", "O-goshi, both sides", "o-goshi")] } },
            Evidence = asked.Evidence with { Seen = [Good("o-goshi-both", Day(9, 29), Day(10, 13)), Good("uke", Day(10, 6))] },
        };
        Assert.Equal(["O-goshi"], ReckonReadiness.Reckon(harder).Lines.Single(l => l.Line.Requirement == "hip").MetBy);
    }

    [Fact]
    public void A_spared_neck_is_spared_on_the_sheet_whoever_forgot_to_say_so()
    {
        var asked = Asked();
        var edition = asked.Sheet.Edition;
        var loads = asked with
        {
            Sheet = asked.Sheet with { Edition = edition with { Items = [.. edition.Items.Select(i => i.Key == "tsurikomi-goshi" ? i with { LoadsTheNeck = true } : i)] } },
            StandDowns = [new StandDown(StandDownScope.SpareTheNeck, Day(1, 1), null, "a named adult")],
        };
        Assert.DoesNotContain(ReckonReadiness.Reckon(loads).Lines.SelectMany(l => l.Items), i => i.Item == "tsurikomi-goshi");
    }

    [Fact]
    public void Parts_of_the_whole_question_that_contradict_each_other_are_refused()
    {
        var asked = Asked();
        void Refused(ReadinessSnapshot wrong, string sentence) =>
            Assert.StartsWith(sentence, Assert.Throws<ArgumentException>(() => ReckonReadiness.Reckon(wrong)).Message, StringComparison.Ordinal);
        Refused(asked with { Sheet = asked.Sheet with { Child = null } }, "The sheet is the copy on the wall");
        Refused(asked with { Clock = asked.Clock with { TestOn = null, NextTestOn = null } }, "The clock is for no test and the sheet for one on 8 December 2026");
        Refused(asked with { Papers = asked.Papers with { Born = new DateOnly(2015, 1, 1) } }, "The birth date is 14 May 2016 on the sheet and 1 January 2015 on the papers");
    }

    [Fact, Statement(59)]
    public void Nothing_that_is_asked_or_answered_has_a_word_of_money()
    {
        var known = new HashSet<Type>();
        void Walk(Type type)
        {
            foreach (var part in type.GetGenericArguments())
                Walk(part);
            if (type.Namespace?.StartsWith("Keikocho", StringComparison.Ordinal) != true || !known.Add(type))
                return;
            foreach (var member in type.GetProperties())
            {
                Assert.DoesNotMatch(Money(), member.Name);
                Walk(member.PropertyType);
            }

            foreach (var form in type.GetNestedTypes())
                Walk(form);
        }

        Walk(typeof(ReadinessSnapshot));
        Walk(typeof(ReadinessParts));
        Walk(typeof(ReadinessAnswer));
        Walk(typeof(ParentsPageSnapshot));
        Walk(typeof(ParentsPageAnswer));
        Assert.True(known.Count > 30);
    }

    // The touch at a higher stage restarts nothing below it, but tonight it shuts the whole direction, whichever side lacks more.
    [Fact]
    public void A_kept_fall_of_both_sides_does_not_hold_while_one_side_touched_on_the_evening_just_closed()
    {
        var fall = new Item("rolling", ItemKind.Fall, "Rolling", Fall: new FallForm(FallDirection.Rolling, BothSides: true, 2));
        FallMark[] open = [.. new[] { Day(10, 13), Day(10, 20) }.SelectMany(d => new[] { Clean(d, FallDirection.Rolling, FallSide.Left, 2), Clean(d, FallDirection.Rolling, FallSide.Right, 2) })];
        var parts = Parts(10, Sheet(All(fall) with { Items = [new SheetItem(fall, KeptUntil: TestOn)] })).With(open);
        Assert.Equal(ReadyWord.PutForward, ReadinessTests.Reckon(parts).Verdict);
        var touched = parts.With([.. open, Touched(AsOf, FallDirection.Rolling, FallSide.Right, 4)]);
        Assert.Equal(ReadyWord.If, ReadinessTests.Reckon(touched).Verdict);
        Assert.Empty(ReadinessCheck.Objections(touched, ReadinessTests.Reckon(touched)));
    }

    [Fact]
    public void A_kept_fall_does_not_hold_past_a_head_touch_or_a_stand_down()
    {
        var fall = Fall("back-3", "Backward breakfall", FallDirection.Back, 3);
        FallMark[] open = [Clean(Day(10, 13), FallDirection.Back, FallSide.None, 3), Clean(Day(10, 20), FallDirection.Back, FallSide.None, 3)];
        var parts = Parts(10, Sheet(All(fall) with { Items = [new SheetItem(fall, KeptUntil: TestOn)] })).With(open);
        Assert.Equal(ReadyWord.PutForward, ReadinessTests.Reckon(parts).Verdict);
        Assert.Equal(ReadyWord.If, ReadinessTests.Reckon(parts.With([.. open, Touched(Day(11, 3), FallDirection.Back, FallSide.None, 3)])).Verdict);
        Assert.Equal(ReadyWord.NotThisTime, ReadinessTests.Reckon(parts.Under(new StandDown(StandDownScope.NoFalls, Day(11, 3), null, null))).Verdict);
    }

    // The pass spares that an open gate is fresh to the day of the test; it opens none.
    [Fact]
    public void A_kept_fall_opens_no_gate_that_is_shut()
    {
        var fall = Fall("back-3", "Backward breakfall", FallDirection.Back, 3);
        var parts = Parts(10, Sheet(All(fall) with { Items = [new SheetItem(fall, KeptUntil: TestOn)] }));
        var never = ReadinessTests.Reckon(parts);
        Assert.Equal((ReadyWord.If, 2, ItemStandingWord.NeverSeen), (never.Verdict, never.EveningsNeeded, never.Lines[0].Items[0].Word));
        Assert.Equal("0 of 1 good; Backward breakfall: kept until 8 December, but the gate is shut; not yet seen clean: two evenings", never.ItemsSaid);
        Assert.Equal(["Backward breakfall: seen clean on 2 of the 4 evenings left."], never.Conditions.Said());
        Assert.Equal(TestOn, never.Lines[0].Line.Items[0].KeptUntil);
        Assert.Contains(never.Reasons.Said(), s => s.StartsWith("Backward breakfall: kept from an earlier test until 8 December 2026, which opens no gate that is shut; not yet seen clean;", StringComparison.Ordinal));

        var once = ReadinessTests.Reckon(parts.With(Clean(Day(11, 3), FallDirection.Back, FallSide.None, 3)));
        Assert.Equal((ReadyWord.If, 1), (once.Verdict, once.EveningsNeeded));
        Assert.Equal("kept until 8 December, but the gate is shut; clean once, on 3 November: once more", once.Lines[0].Items[0].Said);

        // Nobody overrules it either.
        var forced = ReadinessTests.Reckon(parts with { Overrule = new Overrule(ReadyWord.PutForward, "Ada Brook", Day(11, 4), "passed it in summer") });
        Assert.Equal(ReadyWord.If, forced.Verdict);

        // Open, and too old for the test without the pass.
        FallMark[] open = [Clean(Day(10, 13), FallDirection.Back, FallSide.None, 3), Clean(Day(10, 20), FallDirection.Back, FallSide.None, 3)];
        var kept = ReadinessTests.Reckon(parts.With(open));
        Assert.Equal((ReadyWord.PutForward, ItemStandingWord.Kept, "kept until 8 December"), (kept.Verdict, kept.Lines[0].Items[0].Word, kept.Lines[0].Items[0].Said));
        Assert.Equal(ReadyWord.If, ReadinessTests.Reckon(Parts(10, Sheet(All(fall))).With(open)).Verdict);

        // Look again blocks like shut.
        var old = ReadinessTests.Reckon(parts.With(Clean(Day(9, 29), FallDirection.Back, FallSide.None, 3), Clean(Day(10, 6), FallDirection.Back, FallSide.None, 3)));
        Assert.Equal((ReadyWord.If, 1, "kept until 8 December, but the gate is not open; clean last on 6 October, too long before the test: once more"), (old.Verdict, old.EveningsNeeded, old.Lines[0].Items[0].Said));
    }

    // Three weeks off the mat shut every gate until the fall is shown again, whatever was passed before the break.
    [Fact]
    public void A_kept_fall_does_not_hold_past_a_break_until_it_is_shown_again()
    {
        var fall = Fall("back-3", "Backward breakfall", FallDirection.Back, 3);
        var parts = Parts(10, Sheet(All(fall) with { Items = [new SheetItem(fall, KeptUntil: TestOn)] }));
        var away = parts with { Evidence = parts.Evidence with { OnTheMat = [.. parts.Evidence.OnTheMat.Where(d => d <= AsOf.AddDays(-21))] } };
        foreach (FallMark[] falls in new FallMark[][] { [], [Clean(AsOf.AddDays(-28), FallDirection.Back, FallSide.None, 3), Clean(AsOf.AddDays(-21), FallDirection.Back, FallSide.None, 3)] })
        {
            var asked = away.With(falls);
            var answer = ReadinessTests.Reckon(asked);
            Assert.Equal(ReadyWord.If, answer.Verdict);
            Assert.Empty(ReadinessCheck.Objections(asked, answer));
        }

        var back = away with { Evidence = away.Evidence with { OnTheMat = [.. away.Evidence.OnTheMat, AsOf] } };
        FallMark[] again =
        [
            Clean(AsOf, FallDirection.Back, FallSide.None, 2) with { Sequence = 1 },
            Clean(AsOf, FallDirection.Back, FallSide.None, 3) with { Sequence = 2 },
        ];
        Assert.Equal(ReadyWord.If, ReadinessTests.Reckon(back.With(again)).Verdict);
        Assert.Equal(ReadyWord.PutForward, ReadinessTests.Reckon(back.With([Clean(AsOf.AddDays(-21), FallDirection.Back, FallSide.None, 3), .. again])).Verdict);
    }

    [Fact]
    public void A_fast_track_and_the_rules_of_the_table_are_said()
    {
        var sheet = Sheet(All(Throw("o-goshi", "O-goshi"))) with { Minima = new Minima(FastTrack: new FastTrack(10, 2, 2), ExaminerIsNotTheCoach: true, ShortestLessonMinutes: 60, CountedOverTwoRanks: true) };
        var parts = Parts(0, sheet, Good("o-goshi", Day(9, 29), Day(10, 13)));
        var answer = ReadinessTests.Reckon(parts with { Papers = parts.Papers with { StartedOn = Day(9, 1) } });
        Assert.Contains("Started at 10, and the rule is from 10: up to 2 ranks at one test, at the first 2 tests.", answer.Time.Said());
        Assert.Contains("Whoever teaches the child does not examine that child.", answer.Time.Said());
        Assert.Contains("Lessons shorter than 60 minutes do not count.", answer.Time.Said());
    }

    [GeneratedRegex("(Fee|Dues|Paid|Pay|Money|Price|Owe|Debt|Invoice|Cost)(?![a-z])")]
    private static partial Regex Money();
}
