using System.Text;
using Keikocho.Core.Syllabus;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Syllabus;

public sealed class EveryShapeTests
{
    private static readonly SheetChild Twelve = SheetChild.Plain(new(2013, 9, 14));
    private static readonly SheetChild Nine = SheetChild.Plain(new(2016, 5, 14));

    [Fact]
    public void Every_sheet_of_the_edition_reads_as_it_was_agreed()
    {
        var text = new StringBuilder();
        foreach (var rank in EveryShape.Edition.Ranks)
        {
            Write(text, "the copy on the wall", EveryShape.Ask(rank.Key, null));
            Write(text, "twelve years old", EveryShape.Ask(rank.Key, Twelve with { ShownAtRank = ["o-goshi"], AskedBefore = ["koshi"], Draw = 17 }));
        }

        Write(text, "nine, in no unit", EveryShape.Ask("yellow", Nine, null));
        Write(text, "no birth date, in the other unit", EveryShape.Ask("yellow", SheetChild.Plain() with { AskedBefore = ["founder"] }, "feet"));
        Write(text, "nine, with a choice, a kept pass, an agreed way and the neck spared", EveryShape.Ask("orange", Nine with
        {
            Choices = [new("own", ["koshi-guruma", "bow"]), new("set", ["mune-gatame", "hajime"])],
            Kept = [new("press-ups", EveryShape.TestOn), new("randori", EveryShape.TestOn.AddDays(-1))],
            Ways = [new("kami-shiho-gatame", "with the partner's arm beside the body")],
            SpareTheNeck = true,
            Draw = 18,
        }));
        Golden.Check("tests/Keikocho.Core.Tests/Syllabus/Golden/every-shape.txt", text.ToString());
    }

    private static void Write(StringBuilder text, string heading, SheetSnapshot question)
    {
        var sheet = MakeSheet.Make(question);
        Assert.Empty(MakeSheetCheck.Objections(question, sheet));
        text.Append(SheetText.Of(heading, sheet));
    }
}
