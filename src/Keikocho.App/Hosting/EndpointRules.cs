using Keikocho.App.Shared;

namespace Keikocho.App.Hosting;

/// <summary>What every address must say about itself; checked when the program starts, so that nobody can forget it.</summary>
public static class EndpointRules
{
    /// <summary>The endpoints that do not say who may see them, by name. Empty when all is well.</summary>
    public static IReadOnlyList<string> WithoutSeenBy(IEnumerable<Endpoint> endpoints) =>
    [
        .. endpoints
            .Where(endpoint => endpoint.Metadata.GetMetadata<SeenByAttribute>() is null && !IsTheFrameworks(endpoint))
            .Select(endpoint => endpoint.DisplayName ?? endpoint.ToString() ?? "an endpoint without a name")
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>
    /// The component framework brings one address of its own, for redirects of pages that are fetched by its script. We have no such
    /// script; without a protected token of the framework's making it answers 400 and shows nothing.
    /// </summary>
    public static bool IsTheFrameworks(Endpoint endpoint) =>
        endpoint is RouteEndpoint { RoutePattern.RawText: { } address } && address.TrimStart('/') == "_framework/opaque-redirect";

    /// <summary>Stops the start if an endpoint says nothing.</summary>
    /// <exception cref="InvalidOperationException">Names all offenders.</exception>
    public static void Demand(IEnumerable<Endpoint> endpoints)
    {
        var offenders = WithoutSeenBy(endpoints);
        if (offenders.Count > 0)
            throw new InvalidOperationException($"These addresses do not say who may see them (SeenBy): {string.Join(", ", offenders)}");
    }
}
