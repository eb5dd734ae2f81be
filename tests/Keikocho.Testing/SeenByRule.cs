namespace Keikocho.Testing;

/// <summary>Every view says who sees it, on which device. The rule for endpoints: a test of the running app hands them in.</summary>
public static class SeenByRule
{
    /// <summary>The attribute of the app that says it; found by name, so that this project needs no reference to the app.</summary>
    public const string AttributeName = "Keikocho.App.Shared.SeenByAttribute";

    /// <summary>The names of all endpoints whose metadata hold no such attribute, in order.</summary>
    /// <param name="endpoints">Each endpoint's name and metadata.</param>
    /// <param name="attributeName">The attribute's full name.</param>
    public static IReadOnlyList<string> EndpointsWithout(
        IEnumerable<(string Name, IEnumerable<object> Metadata)> endpoints, string attributeName = AttributeName)
    {
        ArgumentNullException.ThrowIfNull(endpoints);
        return
        [
            .. endpoints
                .Where(endpoint => !endpoint.Metadata.Any(item => item.GetType().FullName == attributeName))
                .Select(endpoint => endpoint.Name)
                .Order(StringComparer.Ordinal),
        ];
    }
}
