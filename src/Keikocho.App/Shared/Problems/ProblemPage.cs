using Keikocho.App.Shared.Layout;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Keikocho.App.Shared.Problems;

/// <summary>The page of a problem.</summary>
public static class ProblemPage
{
    /// <summary>The answer.</summary>
    /// <param name="problem">What went wrong.</param>
    /// <param name="typed">What was typed; null if there is nothing to keep.</param>
    public static IResult Answer(Problem problem, TypedFields? typed)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return new RazorComponentResult<SinglePage>(new Dictionary<string, object?>
        {
            [nameof(SinglePage.Page)] = typeof(ProblemText),
            [nameof(SinglePage.PageParameters)] = new Dictionary<string, object?>
            {
                [nameof(ProblemText.Problem)] = problem,
                [nameof(ProblemText.Typed)] = typed,
            },
        })
        { StatusCode = problem.Status };
    }
}
