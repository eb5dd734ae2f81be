using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.Core.Readiness;
using Keikocho.Core.Syllabus;
using Keikocho.Paper.Sheets;

namespace Keikocho.App.Papers;

/// <summary>Fills the requirement sheet: what one child shows at a test, or, as the copy for the wall, what a rank asks.</summary>
public static class SheetPaper
{
    /// <summary>The copy for the wall: nothing about one child.</summary>
    /// <param name="club">The club.</param>
    /// <param name="test">The test.</param>
    /// <param name="sheet">What the rank asks, made for nobody in particular.</param>
    public static RequirementSheetContent Wall(OpenClub club, PaperTest test, RequirementSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(test);
        // Other tests of the same term ask the same.
        var others = club.Book.Tests.Where(t => t.ProgrammeId == test.Programme.Id && test.Term is { } term && t.Date >= term.From && t.Date <= term.To && t.Date >= club.Today).Select(t => t.Date);
        return Content(club, test, test.Edition!.Edition, sheet, null, HomePractice.Of(sheet)) with { OtherTestDays = [.. others] };
    }

    /// <summary>One child's sheet.</summary>
    /// <param name="club">The club.</param>
    /// <param name="test">The test.</param>
    /// <param name="edition">The edition that the sheet was made from.</param>
    /// <param name="sheet">The child's sheet.</param>
    /// <param name="child">The child's name as papers print it.</param>
    /// <param name="lines">How each line stands; empty where nothing is known of it.</param>
    /// <param name="whichList">While the syllabus changes: by which list the child is tested, in sentences.</param>
    public static RequirementSheetContent Child(
        OpenClub club, PaperTest test, Edition edition, RequirementSheet sheet, string child, IReadOnlyList<LineStanding> lines, IReadOnlyList<string>? whichList = null)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(test);
        ArgumentNullException.ThrowIfNull(lines);
        var met = lines.SelectMany(l => l.Items).Where(i => i.IsMet).DistinctBy(i => i.Item).ToList();
        var secure = met.Select(i => i.Item).ToHashSet(StringComparer.Ordinal);
        return Content(club, test, edition, sheet, child, HomePractice.Of(sheet, secure), whichList) with
        {
            SeenGood = met.Where(i => i.SeenOn.Count > 0).ToDictionary(i => i.Item, i => i.SeenOn[^1], StringComparer.Ordinal),
        };
    }

    private static RequirementSheetContent Content(
        OpenClub club, PaperTest test, Edition edition, RequirementSheet sheet, string? child, IReadOnlyList<string> home, IReadOnlyList<string>? whichList = null)
    {
        var rank = edition.Ranks.First(r => r.Key == sheet.Rank);
        var rule = ClubRules.Readiness(club.Book, club.Today);
        return new RequirementSheetContent(
            club.Book.Club.Name,
            club.Today,
            child,
            sheet,
            test.Term?.Name,
            TestStart: null,
            OtherTestDays: [],
            [
                .. MinimaWords.Of(sheet.Minima, rank.FirstCourse, child is null),
                .. whichList ?? [],
                $"An adult must have seen each technique good on {Counted.Of(rule.TechniqueEvenings, "evening")}, and each word and answer on {Counted.Of(rule.WordEvenings, "evening")}.",
            ],
            BeltPicture.Of(rank.Cloth, rank.Tips),
            ItemScripts.Of(edition, sheet),
            home,
            PaperTest.SpeakTo(club),
            // Figures and body's rules are the adults' affair: a child's sheet says only what nobody has reviewed.
            Cautions: child is null ? edition.Cautions : edition.Cautions?.Where(c => c.Contains("review", StringComparison.OrdinalIgnoreCase)).ToList());
    }
}
