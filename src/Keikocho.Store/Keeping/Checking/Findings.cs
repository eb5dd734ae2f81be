using System.Globalization;

namespace Keikocho.Store.Keeping.Checking;

/// <summary>Collects problems from both threads of a check; a damaged file must not fill the memory with sentences.</summary>
internal sealed class Findings
{
    private readonly Lock guard = new();
    private readonly List<CheckProblem> problems = [];
    private readonly Dictionary<CheckPart, long> counts = [];

    /// <summary>Adds one problem.</summary>
    public void Add(CheckPart part, string sentence)
    {
        lock (guard)
        {
            var count = counts[part] = counts.GetValueOrDefault(part) + 1;
            if (count <= CheckReport.MostProblemsOfOnePart) problems.Add(new CheckProblem(part, sentence));
        }
    }

    /// <summary>All problems in the order of the parts.</summary>
    public IReadOnlyList<CheckProblem> ToList()
    {
        lock (guard)
        {
            foreach (var (part, count) in counts)
            {
                if (count > CheckReport.MostProblemsOfOnePart)
                    problems.Add(new CheckProblem(part, string.Create(CultureInfo.InvariantCulture, $"And {count - CheckReport.MostProblemsOfOnePart} more of this kind.")));
            }

            return [.. problems.OrderBy(p => p.Part)];
        }
    }
}
