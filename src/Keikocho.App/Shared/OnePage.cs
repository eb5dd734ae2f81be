using Keikocho.App.Shared.Layout;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Keikocho.App.Shared;

/// <summary>
/// A page as the answer of an endpoint: a form that could not be taken comes back with what was typed and what is wrong, in the same
/// answer, so that nothing typed is lost.
/// </summary>
public static class OnePage
{
    /// <summary>Answers with a page.</summary>
    /// <typeparam name="TPage">The page's component.</typeparam>
    /// <param name="parameters">Its parameters by name.</param>
    /// <param name="status">422 unless said otherwise: understood, but not taken.</param>
    public static IResult Of<TPage>(IReadOnlyDictionary<string, object?> parameters, int status = StatusCodes.Status422UnprocessableEntity)
        where TPage : IComponent =>
        new RazorComponentResult<SinglePage>(new Dictionary<string, object?>
        {
            [nameof(SinglePage.Page)] = typeof(TPage),
            [nameof(SinglePage.PageParameters)] = parameters,
        })
        { StatusCode = status };
}
