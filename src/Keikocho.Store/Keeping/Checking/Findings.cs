using System.Globalization;

namespace Keikocho.Store.Keeping.Checking;

/// <summary>
/// Collects the problems of one thread of a check; a damaged file must not fill the memory with sentences. Each thread has its own, so
/// that the list is in the same order whoever is quicker.
/// </summary>
internal sealed class Findings
{
    private readonly List<CheckProblem> problems = [];
    private readonly Dictionary<CheckPart, long> counts = [];

    /// <summary>Adds one problem.</summary>
    public void Add(CheckPart part, string sentence)
    {
        var count = counts[part] = counts.GetValueOrDefault(part) + 1;
        if (count <= CheckReport.MostProblemsOfOnePart) problems.Add(new CheckProblem(part, sentence));
    }

    /// <summary>All problems in the order of the parts; within one, in the order of <paramref name="all"/>.</summary>
    public static IReadOnlyList<CheckProblem> Together(params IReadOnlyList<Findings> all) =>
        [.. Enum.GetValues<CheckPart>().SelectMany(part => OfPart(part, all))];

    private static IEnumerable<CheckProblem> OfPart(CheckPart part, IReadOnlyList<Findings> all)
    {
        var more = all.Sum(f => f.counts.GetValueOrDefault(part)) - CheckReport.MostProblemsOfOnePart;
        var listed = all.SelectMany(f => f.problems).Where(p => p.Part == part).Take(CheckReport.MostProblemsOfOnePart);
        return more <= 0 ? listed : listed.Append(new CheckProblem(part, string.Create(CultureInfo.InvariantCulture, $"And {more} more of this kind.")));
    }
}
