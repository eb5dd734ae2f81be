using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Tests.Syllabus;

public sealed class HomePracticeTests
{
    [Fact]
    public void The_worked_example_gives_words_then_the_belt_then_the_escape_alone_on_a_carpet()
    {
        // Gaps: a throw, an escape, four words, tying the belt.
        var sheet = Sheet(
            new("throw", ItemKind.Throw, "O-goshi"), new("way", ItemKind.Escape, "Out of the hold: turn in", Order: new Order.EscapeFrom("Kesa-gatame", "turn in")),
            new("rei", ItemKind.Word, "rei"), new("tori", ItemKind.Word, "tori"), new("uke", ItemKind.Word, "uke"), new("mate", ItemKind.Word, "mate", Safety: true),
            new("belt", ItemKind.Etiquette, "Tying your own belt"));
        var things = HomePractice.Of(sheet);
        Assert.Equal(
            ["Ask somebody to call mate, rei, tori and uke, and say what each means.", "Twice, slowly: tying your own belt.", "Alone on a carpet, slowly, with nobody on you: turn in."], things);
        Assert.Empty(HomePracticeCheck.Objections(sheet, null, things));
    }

    [Fact]
    public void What_loads_the_neck_needs_a_partner_or_is_secure_is_not_practised_and_three_things_stand_all_the_same()
    {
        var sheet = Sheet(
            new("bridge", ItemKind.Escape, "Bridge", Order: new Order.EscapeFrom("Kesa-gatame", "bridge and roll"), LoadsTheNeck: true),
            new("bow", ItemKind.Etiquette, "Bowing to a partner"), new("rei", ItemKind.Word, "rei"), new("fall", ItemKind.Fall, "Falling backward"));
        var secure = new HashSet<string> { "rei" };
        var things = HomePractice.Of(sheet, secure);
        Assert.Equal(["Tie your own belt twice.", "Bow standing and kneeling, as at the start of a lesson.", "Tell somebody what you practised at the last lesson."], things);
        Assert.Empty(HomePracticeCheck.Objections(sheet, secure, things));
    }

    [Theory]
    [InlineData("Practise O-goshi.", "O-goshi is not for the home.")]
    [InlineData("Tie your own belt twice.", "A thing is said twice.")]
    public void The_check_objects_to_what_is_wrong(string first, string objection)
    {
        var sheet = Sheet(new Item("throw", ItemKind.Throw, "O-goshi"));
        Assert.Contains(objection, HomePracticeCheck.Objections(sheet, null, [first, "Tie your own belt twice.", "Bow."]));
    }

    [Fact]
    public void No_sheet_of_every_shape_gives_the_check_anything_to_object_to()
    {
        foreach (var rank in EveryShape.Edition.Ranks)
        {
            var sheet = MakeSheet.Make(new SheetSnapshot(EveryShape.Edition, rank.Key, new DateOnly(2026, 7, 25), null, [], SheetChild.Plain()));
            Assert.Empty(HomePracticeCheck.Objections(sheet, null, HomePractice.Of(sheet)));
        }
    }

    private static RequirementSheet Sheet(params Item[] items) => new(
        "red", "Red", "White", "edition 1", null, null, null, new DateOnly(2026, 7, 25),
        [.. items.Select(i => new SheetLine(i.Key, SheetPart.Standing, 1, [new SheetItem(i)], i.Name, null, false, Carry.ThisRank, null, null))], new Minima(), null, [], [], []);
}
