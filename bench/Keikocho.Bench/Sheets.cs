using System.Diagnostics;
using Keikocho.Core.Syllabus;
using Keikocho.Paper;
using Keikocho.Paper.Sheets;
using Keikocho.Store.Starter;

namespace Keikocho.Bench;

/// <summary>Sixty requirement sheets of the larger sample ladder, A4: made, then drawn as one file and one by one.</summary>
internal static class Sheets
{
    private const int Children = 60;

    public static void Measure()
    {
        if (StarterKit.Ladder("ladder-heron.toml") is not SyllabusReading.Read read) throw new InvalidOperationException("The sample ladder has a fault.");
        var edition = PreparedEdition.Of(read.Edition);
        for (var run = 1; run <= 5; run++)
        {
            var watch = Stopwatch.StartNew();
            RequirementSheetContent[] contents = [.. Enumerable.Range(0, Children).Select(n => Content(edition, n))];
            var made = watch.Elapsed.TotalMilliseconds;
            watch.Restart();
            SheetsPaper.DrawAll(contents, PaperSize.A4);
            var together = watch.Elapsed.TotalMilliseconds;
            watch.Restart();
            foreach (var content in contents) RequirementSheetPaper.Draw(content, PaperSize.A4);
            Console.WriteLine($"sheets: {Children} made in {made:0} ms, in one file {together:0} ms, one by one {watch.Elapsed.TotalMilliseconds:0} ms (run {run})");
        }
    }

    /// <summary>Whoever may choose has chosen: a whole pool is longer than a sheet.</summary>
    private static IEnumerable<ChosenItems> Choices(LadderRank rank)
    {
        foreach (var requirement in rank.Requirements)
        {
            if (requirement.Ask is Ask.FromPool pool)
                yield return new ChosenItems(requirement.Key, [.. (pool.Pool.Count > 0 ? pool.Pool : ["tai-otoshi-both-sides", "ushiro-kesa-gatame", "turnover-from-below"]).Take(pool.Count)]);
        }
    }

    private static RequirementSheetContent Content(PreparedEdition edition, int number)
    {
        var test = new DateOnly(2026, 12, 5);
        var ranks = edition.Edition.Ranks;
        var rank = ranks[1 + number % (ranks.Count - 1)];
        var child = SheetChild.Plain(test.AddYears(-7 - number % 6)) with { Draw = number + 1, Choices = [.. Choices(rank)] };
        var sheet = MakeSheet.Make(new SheetSnapshot(edition.Edition, rank.Key, test, edition.Edition.Units[number % edition.Edition.Units.Count].Key, [], child), edition);
        return new RequirementSheetContent(
            "Larkwater Lock Judo Club", test.AddDays(-14), $"Child {number + 1}", sheet, "Autumn", new TimeOnly(10, 0), [],
            MinimaWords.Of(sheet.Minima, rank.FirstCourse, onTheWall: false), BeltPicture.Of(rank.Cloth, rank.Tips),
            new Dictionary<string, ItemScript>(), ["Say the words aloud."], "Ruth Aldersey");
    }
}
