using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Tests.Syllabus;

/// <summary>
/// Shapes of published junior syllabi, put into an edition and read back from the sheets. Sources, as read in stored copies:
/// British Judo Association, Junior Mon Grade Promotion Syllabus (2008, revised 2009) and Mon Grade Promotion Syllabus (2016):
/// novice to 1st, 1st to 2nd and 6th to 7th Mon; Judo Canada's kyu syllabus (half belts, 7 of 10, recall of earlier grades, strangles
/// from 13); a club that follows the USJF handbook (least ages and classes). Falls stages are ours.
/// </summary>
public sealed class PublishedSyllabiTests
{
    private static readonly ItemKind[] Shown = [ItemKind.Throw, ItemKind.HoldDown];

    private static Item Throw(string name) => new(Key(name), ItemKind.Throw, name, name);

    private static Item Hold(string name) => new(Key(name), ItemKind.HoldDown, name, name);

    private static Item Word(string name) => new(Key(name), ItemKind.Word, name, Meaning: "-", Safety: name == "Matte");

    private static string Key(string name) => name.ToLowerInvariant().Replace(' ', '-');

    private static readonly Edition Mon = new(
        "Mon grades", "2016", new(2016, 4, 1),
        [
            new("novice", "Novice", null, "white", 0, new(), []),
            new("mon-1", "1st Mon", null, "red", 1, new(Months: 1, ForAges: [new(new(5, 7), Months: 3)]),
            [
                new("ukemi", new Ask.AllOf(["back"])),
                new("fundamental", new Ask.AllOf(["o-soto-otoshi", "kesa-gatame"])),
                new("performance", new Ask.AllOf(["osoto-kesa", "kesa-leg"])),
                new("choice", new Ask.FromPool(2, Chooser.Child, [], Shown)),
                new("words", new Ask.AllOf(["rei", "hajime", "matte"]), Carry: Carry.Always),
                new("country", new Ask.AllOf(["country"])),
            ], FirstCourse: true),
            new("mon-2", "2nd Mon", null, "red", 2, new(Months: 1, ForAges: [new(new(5, 7), Months: 3)]),
            [
                new("ukemi", new Ask.AllOf(["side"])),
                new("fundamental", new Ask.AllOf(["de-ashi-barai", "mune-gatame"])),
                new("performance", new Ask.AllOf(["barai-mune", "mune-bridge"])),
                new("choice", new Ask.FromPool(2, Chooser.Child, [], Shown)),
                new("words", new Ask.AllOf(["osaekomi", "toketa", "randori-word"]), Carry: Carry.Always),
                new("bows", new Ask.AllOf(["bows"])),
            ]),
            new("mon-7", "7th Mon", null, "orange", 1, new(Months: 2),
            [
                new("fundamental", new Ask.AllOf(["tsurikomi-goshi", "o-goshi", "ko-uchi-gari"])),
                new("performance", new Ask.AllOf(["ouchi-kouchi", "ouchi-by-tsurikomi", "between-legs"])),
                new("osoto", new Ask.AnyOf(1, ["kouchi-osoto-gari", "kouchi-osoto-gake"])),
                new("randori", new Ask.AllOf(["randori"])),
                new("choice-standing", new Ask.FromPool(2, Chooser.Child, [], [ItemKind.Throw])),
                new("choice-ground", new Ask.FromPool(1, Chooser.Child, [], [ItemKind.HoldDown])),
                new("words", new Ask.AllOf(["uke", "tori"]), Carry: Carry.Always),
            ]),
        ],
        [], ["back", "o-soto-otoshi", "kesa-gatame", "osoto-kesa", "kesa-leg"],
        [
            new("back", ItemKind.Fall, "Ushiro-ukemi", Fall: new(FallDirection.Back, false, 3)),
            new("side", ItemKind.Fall, "Yoko-ukemi", Fall: new(FallDirection.Side, true, 3)),
            Throw("O-soto-otoshi"), Throw("De-ashi-barai"), Throw("Tsurikomi-goshi"), Throw("O-goshi"), Throw("Ko-uchi-gari"),
            Hold("Kesa-gatame"), Hold("Mune-gatame"),
            new("osoto-kesa", ItemKind.Sequence, "O-soto-otoshi into Kesa-gatame", Order: new Order.Into("O-soto-otoshi", "Kesa-gatame")),
            new("barai-mune", ItemKind.Sequence, "De-ashi-barai into Mune-gatame", Order: new Order.Into("De-ashi-barai", "Mune-gatame")),
            new("kesa-leg", ItemKind.Escape, "Escape from Kesa-gatame, trapping uke's leg", Order: new Order.EscapeFrom("Kesa-gatame", "trapping uke's leg")),
            new("mune-bridge", ItemKind.Escape, "Escape from Mune-gatame, bridge and roll", Order: new Order.EscapeFrom("Mune-gatame", "bridge and roll")),
            new("ouchi-kouchi", ItemKind.Combination, "O-uchi-gari into Ko-uchi-gari", Order: new Order.Into("O-uchi-gari", "Ko-uchi-gari")),
            new("kouchi-osoto-gari", ItemKind.Combination, "Ko-uchi-gari into O-soto-gari", Order: new Order.Into("Ko-uchi-gari", "O-soto-gari")),
            new("kouchi-osoto-gake", ItemKind.Combination, "Ko-uchi-gari into O-soto-gake", Order: new Order.Into("Ko-uchi-gari", "O-soto-gake")),
            new("ouchi-by-tsurikomi", ItemKind.Counter, "O-uchi-gari countered by Tsurikomi-goshi", Order: new Order.CounteredBy("O-uchi-gari", "Tsurikomi-goshi")),
            new("between-legs", ItemKind.Turnover, "Into Kesa-gatame from between uke's legs", Order: new Order.TurnoverInto("Kesa-gatame", "between uke's legs")),
            new("randori", ItemKind.FreePractice, "Randori with a co-operative partner", Seconds: 120),
            new("bows", ItemKind.Etiquette, "Tachi-rei and Za-rei"),
            new("country", ItemKind.Question, "In which country was judo devised?", Answers: ["Japan"]),
            Word("Rei"), Word("Hajime"), Word("Matte"), Word("Osaekomi"), Word("Toketa"), Word("Uke"), Word("Tori"),
            new("randori-word", ItemKind.Word, "Randori", Meaning: "free practice"),
        ]);

    [Fact]
    public void The_mon_grades_hold_together_and_words_of_all_earlier_grades_are_asked()
    {
        Assert.DoesNotContain(CheckEdition.Faults(Mon), f => f.Blocks);
        var sheet = MakeSheetTests.Make(new(Mon, "mon-7", new(2026, 3, 28), null, [], SheetChild.Plain(new(2016, 5, 14))));
        Assert.Equal(["Matte", "Rei", "Hajime", "Uke", "Tori", "Osaekomi", "Toketa", "Randori"], OralList.Of(sheet).Select(q => q.Item.Name));
        Assert.Equal((2, 5), (Line(sheet, "choice-standing").Count, Line(sheet, "choice-standing").Items.Count));
        Assert.Equal((1, 2), (Line(sheet, "choice-ground").Count, Line(sheet, "choice-ground").Items.Count));
        Assert.Equal("Either of: Ko-uchi-gari into O-soto-gari or Ko-uchi-gari into O-soto-gake", Line(sheet, "osoto").Title);
    }

    [Theory]
    [InlineData(7, 3)]
    [InlineData(8, 1)]
    public void One_promotion_in_three_months_to_seven_years_and_in_one_from_eight(int age, int months) => Assert.Equal(
        months, MakeSheetTests.Make(new(Mon, "mon-2", new(2026, 3, 28), null, [], SheetChild.Plain(new DateOnly(2026, 3, 28).AddYears(-age)))).Minima.Months);

    // Judo Canada: half of the elements for a half belt, 7 of 10 in motion, recall of the earlier grade, no strangle below 13, bands to 8, 9-12 and from 13.
    [Fact]
    public void Half_belts_seven_of_ten_and_recall_come_out_as_the_tables_have_them()
    {
        string[] ten = [.. Enumerable.Range(1, 10).Select(n => $"element-{n}")];
        var edition = new Edition("Kyu", "tables", null,
            [
                new("white", "White", null, "white", 0, new(), []),
                new("half", "White-yellow", null, "white", 1, new(), [new("half", new Ask.ShareOfRank("yellow", 50))]),
                new("yellow", "Yellow", null, "yellow", 0, new(), [new("falls", new Ask.AllOf(["back"])), new("motion", new Ask.AnyOf(7, ten), Condition: "in motion"), new("still", new Ask.AllOf(["hold"]))]),
                new("orange", "Orange", null, "orange", 0, new(48, Age: 8),
                [
                    new("recall", new Ask.DrawnFromEarlier(2, ["yellow"], [ItemKind.Throw])),
                    new("strangle", new Ask.AllOf(["hadaka-jime"]), Ages: new(13)),
                    new("goal", new Ask.AllOf(["goal"]), Ages: new(9, 12)),
                ]),
            ],
            [], [],
            [
                new("back", ItemKind.Fall, "Back", Fall: new(FallDirection.Back, false, 3)), .. ten.Select(k => new Item(k, ItemKind.Throw, k, k)),
                new("hold", ItemKind.HoldDown, "Hold", "Kesa-gatame"), new("hadaka-jime", ItemKind.Strangle, "Hadaka-jime", "Hadaka-jime"), new("goal", ItemKind.Exercise, "Goal", Times: 10),
            ]);
        Assert.DoesNotContain(CheckEdition.Faults(edition), f => f.Blocks);
        RequirementSheet Of(string rank, int age) => MakeSheetTests.Make(new(edition, rank, new(2026, 3, 28), null, [], SheetChild.Plain(new DateOnly(2026, 3, 28).AddYears(-age))));
        // 7 of 10 and 1 hold are 8; half of it is 4 of the 11; the fall is asked in full.
        Assert.Equal([("half:falls", 1, 1), ("half", 4, 11)], Of("half", 9).Lines.Select(l => (l.Requirement, l.Count, l.Items.Count)));
        Assert.Equal(("Any 7 of: " + string.Join(", ", ten), "in motion"), (Line(Of("yellow", 9), "motion").Title, Line(Of("yellow", 9), "motion").Condition));
        Assert.Equal(["recall"], Of("orange", 8).Lines.Select(l => l.Requirement));
        Assert.Equal(["recall", "goal"], Of("orange", 9).Lines.Select(l => l.Requirement));
        Assert.Equal(["recall", "strangle"], Of("orange", 13).Lines.Select(l => l.Requirement));
        Assert.Equal(2, Line(Of("orange", 8), "recall").Items.Count);
    }

    [Fact]
    public void An_edition_without_blocking_faults_makes_every_sheet()
    {
        foreach (var edition in CheckEditionTests.Slips.Select(row => row.Data.Item4).Concat(CompareEditionsTests.Changed.Select(row => row.Data.Item2)).Append(Mon))
        {
            if (CheckEdition.Faults(edition).Any(f => f.Blocks))
                continue;
            foreach (var rank in edition.Ranks)
            {
                MakeSheetTests.Make(new(edition, rank.Key, EveryShape.TestOn, edition.Units is [var unit, ..] ? unit.Key : null, EveryShape.Rules, SheetChild.Plain()));
                MakeSheetTests.Make(new(edition, rank.Key, EveryShape.TestOn, null, EveryShape.Rules, null));
            }
        }
    }

    private static SheetLine Line(RequirementSheet sheet, string key) => Assert.Single(sheet.Lines, l => l.Requirement == key);
}
