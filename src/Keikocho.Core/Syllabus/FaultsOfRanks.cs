namespace Keikocho.Core.Syllabus;

/// <summary>What is wrong with the ranks of an edition and their least times; the requirements are looked at on the way.</summary>
internal static class FaultsOfRanks
{
    public static void Find(FaultList list)
    {
        var ranks = list.Edition.Ranks;
        if (ranks.Count == 0)
            list.Blocks("ranks", "The ladder has no rank; add the one that is worn on joining.");
        var keys = new HashSet<string>(StringComparer.Ordinal);
        var names = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        for (var i = 0; i < ranks.Count; i++)
        {
            var path = $"ranks[{i}]";
            if (list.Gap(path, ranks[i]))
                continue;
            var rank = ranks[i];
            list.Key($"{path}.key", rank.Key, keys, "A rank");
            list.Text($"{path}.name", rank.Name, "A rank has no name; give it one.");
            if (!string.IsNullOrWhiteSpace(rank.Name) && !names.Add(rank.Name))
                list.Caution($"{path}.name", $"Two ranks are called {rank.Name}; nobody can tell them apart on a sheet.");
            list.Range($"{path}.tips", rank.Tips, 0, 4, "The number of tips");
            Times(list, $"{path}.minima", rank.Minima);
            FaultsOfRequirements.Find(list, i, path);
            if (i == 0 && rank.Requirements.Count > 0)
                list.Caution($"{path}.requirements", $"{rank.Name} is the first rank, worn on joining, and nobody is tested for it; what it asks is asked of nobody.");
        }

        FirstCourse(list);
    }

    private static void Times(FaultList list, string path, Minima minima)
    {
        list.Range($"{path}.lessons", minima.Lessons, 0, 1000, "The least number of lessons");
        list.Range($"{path}.weeks", minima.Weeks, 0, 520, "The least number of weeks");
        list.Range($"{path}.months", minima.Months, 0, 120, "The least number of months");
        list.Range($"{path}.age", minima.Age, 0, 30, "The least age");
        list.Range($"{path}.lessonsADay", minima.LessonsADay, 0, 10, "The number of lessons that count in a day");
        list.Range($"{path}.shortestLessonMinutes", minima.ShortestLessonMinutes, 0, 300, "The shortest lesson");
        list.Range($"{path}.mostReductionPercent", minima.MostReductionPercent, 0, 100, "The largest reduction in per cent");
        if (!Enum.IsDefined(minima.AgeBy))
            list.Blocks($"{path}.ageBy", "An age is reckoned by the birthday or by the calendar year; choose one.");
        for (var i = 0; i < (minima.ForAges?.Count ?? 0); i++)
        {
            var at = $"{path}.forAges[{i}]";
            if (list.Gap(at, minima.ForAges![i]))
                continue;
            var other = minima.ForAges[i];
            Band(list, $"{at}.ages", other.Ages);
            list.Range($"{at}.lessons", other.Lessons, 0, 1000, "The least number of lessons");
            list.Range($"{at}.weeks", other.Weeks, 0, 520, "The least number of weeks");
            list.Range($"{at}.months", other.Months, 0, 120, "The least number of months");
        }

        if (minima.FastTrack is { } fast)
        {
            list.Range($"{path}.fastTrack.fromAge", fast.FromAge, 1, 30, "The age of a fast track");
            list.Range($"{path}.fastTrack.mostRanks", fast.MostRanks, 2, 10, "The number of ranks at one test of a fast track");
            list.Range($"{path}.fastTrack.firstTests", fast.FirstTests, 1, 20, "The number of tests of a fast track");
        }
    }

    internal static void Band(FaultList list, string path, AgeBand? band)
    {
        list.Range($"{path}.from", band?.From, 0, 30, "An age");
        list.Range($"{path}.to", band?.To, 0, 30, "An age");
        if (band is { From: { } from, To: { } to } && from > to)
            list.Blocks(path, $"Ages from {from} to {to} hold for nobody; turn them round.");
    }

    private static void FirstCourse(FaultList list)
    {
        var edition = list.Edition;
        var ends = edition.Ranks.Select((r, i) => (r, i)).Where(p => p.r?.FirstCourse == true).ToList();
        foreach (var (_, i) in ends.Skip(1))
            list.Caution($"ranks[{i}].firstCourse", "Two ranks end the first course; one is enough.");
        if (ends is [var (rank, at), ..])
        {
            if (edition.FirstCourse.Count == 0)
                list.Caution($"ranks[{at}].firstCourse", $"{rank.Name} ends the first course, but nothing is taught in it; list what is.");
            var asked = rank.Requirements.Where(r => r is { Ask: Ask.AllOf, Unit: null }).SelectMany(r => ((Ask.AllOf)r.Ask).Items);
            var untaught = list.Items(asked.Except(edition.FirstCourse)).Where(i => i.Kind is not (ItemKind.Word or ItemKind.Question or ItemKind.Etiquette)).ToList();
            if (edition.FirstCourse.Count > 0 && untaught.Count > 0)
                list.Caution($"ranks[{at}].firstCourse", $"{rank.Name} asks {FaultList.Places(untaught.Select(i => i.Name))}, which the first course does not teach.");
        }
        else if (edition.FirstCourse.Count > 0)
            list.Caution("firstCourse", "A first course is taught, but no rank is given at its end; say which one is.");
    }
}
