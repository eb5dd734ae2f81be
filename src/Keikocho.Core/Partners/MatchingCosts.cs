namespace Keikocho.Core.Partners;

/// <summary>Who may be matched with whom and at what cost: a dense symmetric table of whole numbers with absent edges.</summary>
public sealed class MatchingCosts
{
    /// <summary>The value of an edge that is not there.</summary>
    public const long Absent = long.MaxValue;

    private readonly long[] _table;

    /// <summary>A table without any edge.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A negative number of vertices, or more than 20,000.</exception>
    public MatchingCosts(int vertices)
    {
        if (vertices is < 0 or > 20_000)
            throw new ArgumentOutOfRangeException(nameof(vertices), vertices, "A matching has 0 to 20,000 vertices.");
        Vertices = vertices;
        _table = new long[vertices * vertices];
        _table.AsSpan().Fill(Absent);
    }

    private MatchingCosts(int vertices, long[] table)
    {
        Vertices = vertices;
        _table = table;
    }

    /// <summary>Number of vertices.</summary>
    public int Vertices { get; }

    /// <summary>The cost of an edge, <see cref="Absent"/> where there is none; setting one sets both directions.</summary>
    /// <exception cref="ArgumentException">An edge from a vertex to itself.</exception>
    public long this[int u, int v]
    {
        get => _table[u * Vertices + v];
        set
        {
            if (u == v)
                throw new ArgumentException("No vertex is matched with itself.", nameof(v));
            _table[u * Vertices + v] = value;
            _table[v * Vertices + u] = value;
        }
    }

    /// <summary>The costs of all edges of one vertex, in the order of the other ends.</summary>
    public ReadOnlySpan<long> Row(int vertex) => _table.AsSpan(vertex * Vertices, Vertices);

    /// <summary>Whether the edge is there.</summary>
    public bool Has(int u, int v) => u != v && this[u, v] != Absent;

    /// <summary>The same table without the edges dearer than <paramref name="most"/>.</summary>
    public MatchingCosts UpTo(long most)
    {
        var table = new long[_table.Length];
        for (var i = 0; i < table.Length; i++)
            table[i] = _table[i] <= most ? _table[i] : Absent;
        return new MatchingCosts(Vertices, table);
    }

    /// <summary>A copy that may be changed.</summary>
    public MatchingCosts Copy() => new(Vertices, [.. _table]);

    /// <summary>The distinct costs of the edges that are there, cheapest first.</summary>
    public long[] Distinct()
    {
        var seen = new long[Vertices * Math.Max(0, Vertices - 1) / 2];
        var count = 0;
        for (var u = 0; u < Vertices; u++)
        {
            foreach (var cost in Row(u)[(u + 1)..])
            {
                if (cost != Absent)
                    seen[count++] = cost;
            }
        }

        Array.Sort(seen, 0, count);
        var distinct = 0;
        for (var i = 0; i < count; i++)
        {
            if (i == 0 || seen[i] != seen[i - 1])
                seen[distinct++] = seen[i];
        }

        return seen[..distinct];
    }
}
