namespace Keikocho.App.Shared;

/// <summary>One line of the contents.</summary>
/// <param name="Word">The trade's word.</param>
/// <param name="Address">Where its page is.</param>
public sealed record ContentsLine(string Word, string Address);

/// <summary>The contents of the notebook, in their fixed order; a page that does not exist yet is not listed.</summary>
public sealed class Contents
{
    private static readonly ContentsLine[] Planned =
    [
        new("Tonight", "/tonight"),
        new("Register", "/register"),
        new("Students", "/students"),
        new("Syllabus", "/syllabus"),
        new("Rotation", "/rotation"),
        new("Term plan", "/term-plan"),
        new("Promotion tests", "/promotion-tests"),
        new("Papers", "/papers"),
        new("Club", "/club"),
    ];

    private readonly Lazy<IReadOnlyList<(ContentsLine Line, SeenByAttribute Seen)>> _lines;

    /// <summary>Reads which of the planned pages have an address.</summary>
    public Contents(EndpointDataSource addresses)
    {
        _lines = new(() =>
        {
            var known = addresses.Endpoints.OfType<RouteEndpoint>()
                .Select(endpoint => (Address: "/" + endpoint.RoutePattern.RawText?.TrimStart('/'), Seen: endpoint.Metadata.GetMetadata<SeenByAttribute>()))
                .Where(endpoint => endpoint.Seen is not null)
                .GroupBy(endpoint => endpoint.Address, StringComparer.OrdinalIgnoreCase)
                .ToDictionary(same => same.Key, same => same.First().Seen!, StringComparer.OrdinalIgnoreCase);
            return [.. Planned.Where(line => known.ContainsKey(line.Address)).Select(line => (line, known[line.Address]))];
        });
    }

    /// <summary>The lines whose pages exist and may be seen so.</summary>
    public IEnumerable<ContentsLine> LinesFor(SeenAs seenAs)
    {
        ArgumentNullException.ThrowIfNull(seenAs);
        return _lines.Value.Where(line => seenAs.May(line.Seen)).Select(line => line.Line);
    }

    /// <summary>The word of the page where the notebook opens.</summary>
    public string FirstWord => _lines.Value[0].Line.Word;

    /// <summary>Where the notebook opens.</summary>
    public string First => _lines.Value[0].Line.Address;

    /// <summary>Whether a page belongs to a line: it is that page or lies under it.</summary>
    public static bool Holds(ContentsLine line, string path)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(path);
        return path.StartsWith(line.Address, StringComparison.OrdinalIgnoreCase)
            && (path.Length == line.Address.Length || path[line.Address.Length] == '/');
    }
}
