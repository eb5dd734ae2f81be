using System.Globalization;
using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Sheets;

/// <summary>What stands at the head of a requirement sheet.</summary>
internal static class SheetHead
{
    /// <summary>Head and foot.</summary>
    public static SheetFrame Of(RequirementSheetContent content)
    {
        var sheet = content.Sheet;
        var under = new List<IReadOnlyList<Words>> { Ranks(content) };
        under.Add([Edition(content)]);
        if (Term(content) is { Length: > 0 } term)
            under.Add([term]);
        under.Add([content.TestWord + ": ", new Words(Days(content), true)]);
        var again = string.Join(",  ", new[] { content.Child ?? SheetTexts.Wall, EditionName(content) });
        return new SheetFrame(content.Club, sheet.RankName, SheetTexts.Slip, under, again, content.PrintedOn, content.Belt, content.SpeakTo);
    }

    /// <summary>The title line of the file.</summary>
    public static string FileTitle(RequirementSheetContent content) =>
        string.Join(", ", new[] { "Sheet", content.Sheet.RankName, content.Child ?? SheetTexts.Wall, PaperDate.Full(content.Sheet.TestOn) });

    private static IReadOnlyList<Words> Ranks(RequirementSheetContent content)
    {
        var ranks = content.Sheet.FromRankName is { } from ? $"from {from} to {content.Sheet.RankName}" : $"for {content.Sheet.RankName}";
        return content.Child is { } child ? [new Words(child, true), ", " + ranks] : [new Words(SheetTexts.Wall, true), ": " + ranks];
    }

    private static string Edition(RequirementSheetContent content)
    {
        var edition = EditionName(content);
        return content.Sheet.EditionFrom is { } from ? $"{edition}, from {PaperDate.Day(from)}" : edition;
    }

    private static string EditionName(RequirementSheetContent content) =>
        ItemNotes.Says(content.Sheet.EditionName, "syllabus") ? content.Sheet.EditionName : "Syllabus " + content.Sheet.EditionName;

    private static string Term(RequirementSheetContent content)
    {
        var unit = content.Sheet.UnitName is not { } name ? null
            : content.Sheet.UnitNumber is { } number ? string.Create(CultureInfo.InvariantCulture, $"unit {number}: {name}")
            : "unit: " + name;
        return string.Join(", ", new[] { content.Term, unit }.OfType<string>());
    }

    private static string Days(RequirementSheetContent content)
    {
        var first = PaperDate.Full(content.Sheet.TestOn) + (content.TestStart is { } start ? ", " + PaperDate.Clock(start) : "");
        var others = content.OtherTestDays.Where(day => day != content.Sheet.TestOn).Distinct().Order().Select(PaperDate.Full);
        return string.Join(", or ", others.Prepend(first));
    }
}
