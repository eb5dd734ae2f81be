namespace Keikocho.Core.Partners;

/// <summary>
/// As many pairs as there can be among the edges that cost at most so much, and why there are no more: Edmonds' search for augmenting paths
/// (1965) with bases instead of shrunken graphs (Gabow 1976). A tree that finds no path is left standing: what it covers is the proof.
/// </summary>
internal sealed class MaximumCardinality
{
    private readonly MatchingCosts _costs;
    private readonly long _most;
    private readonly int _n;
    private readonly int[] _parent;
    private readonly int[] _base;
    private readonly int[] _queue;
    private readonly bool[] _outer;
    private readonly bool[] _settled;
    private readonly bool[] _inBlossom;
    private readonly int[] _seen;
    private int _marks;
    private int _tail;

    private MaximumCardinality(MatchingCosts costs, long most, int[] mates)
    {
        (_costs, _most, _n, Mates) = (costs, most, costs.Vertices, mates);
        _parent = new int[_n];
        _base = new int[_n];
        _queue = new int[_n];
        _outer = new bool[_n];
        _settled = new bool[_n];
        _inBlossom = new bool[_n];
        _seen = new int[_n];
    }

    /// <summary>Each vertex' partner, -1 for none.</summary>
    public int[] Mates { get; }

    /// <summary>How many vertices have none.</summary>
    public int LeftOver { get; private set; }

    /// <summary>Finds it.</summary>
    /// <param name="costs">The table.</param>
    /// <param name="most">Edges dearer than this are not used.</param>
    /// <param name="start">A matching to begin from; its edges that are too dear are dropped. Null to begin from none.</param>
    /// <param name="stopAtFirst">Stop as soon as one vertex is known to stay without a partner.</param>
    public static MaximumCardinality Find(MatchingCosts costs, long most, int[]? start = null, bool stopAtFirst = false)
    {
        var n = costs.Vertices;
        var mates = new int[n];
        Array.Fill(mates, -1);
        for (var v = 0; v < n && start is not null; v++)
        {
            if (start[v] >= 0 && costs[v, start[v]] <= most)
                mates[v] = start[v];
        }

        for (var v = 0; v < n; v++)
        {
            if (mates[v] >= 0)
                continue;
            var row = costs.Row(v);
            for (var u = 0; u < n; u++)
            {
                if (mates[u] < 0 && row[u] <= most)
                {
                    (mates[v], mates[u]) = (u, v);
                    break;
                }
            }
        }

        var search = new MaximumCardinality(costs, most, mates);
        for (var v = 0; v < n; v++)
        {
            if (mates[v] >= 0)
                continue;
            search.GrowFrom(v);
            if (mates[v] >= 0)
                continue;
            search.LeftOver++;
            if (stopAtFirst)
                break;
        }

        return search;
    }

    /// <summary>The barrier and the odd parts, after a search that ran to its end.</summary>
    public TutteBerge Proof(MatchingCosts costs)
    {
        var barrier = new List<int>();
        var part = new int[_n];
        for (var v = 0; v < _n; v++)
        {
            if (_settled[v] && !_outer[v])
            {
                barrier.Add(v);
                part[v] = -1;
            }
        }

        var odd = new List<IReadOnlyList<int>>();
        for (var v = 0; v < _n; v++)
        {
            if (part[v] != 0)
                continue;
            var members = new List<int> { v };
            part[v] = 1;
            for (var i = 0; i < members.Count; i++)
            {
                var row = costs.Row(members[i]);
                for (var u = 0; u < _n; u++)
                {
                    if (part[u] == 0 && row[u] <= _most)
                    {
                        part[u] = 1;
                        members.Add(u);
                    }
                }
            }

            members.Sort();
            if (members.Count % 2 == 1)
                odd.Add(members);
        }

        return new TutteBerge(barrier, odd, odd.Count - barrier.Count);
    }

    private void GrowFrom(int root)
    {
        for (var v = 0; v < _n; v++)
        {
            if (_settled[v])
                continue;
            _parent[v] = -1;
            _base[v] = v;
            _outer[v] = false;
        }

        _tail = 0;
        Enter(root);
        for (var head = 0; head < _tail; head++)
        {
            var v = _queue[head];
            var row = _costs.Row(v);
            for (var to = 0; to < _n; to++)
            {
                if (row[to] > _most || _settled[to] || _base[v] == _base[to] || Mates[v] == to)
                    continue;
                if (to == root || (Mates[to] >= 0 && _parent[Mates[to]] >= 0))
                {
                    Contract(v, to);
                }
                else if (_parent[to] < 0)
                {
                    _parent[to] = v;
                    if (Mates[to] < 0)
                    {
                        Turn(to);
                        return;
                    }

                    Enter(Mates[to]);
                }
            }
        }

        for (var v = 0; v < _n; v++)
            _settled[v] |= _outer[v] || _parent[v] >= 0;
    }

    private void Enter(int v)
    {
        if (_outer[v])
            return;
        _outer[v] = true;
        _queue[_tail++] = v;
    }

    private void Turn(int end)
    {
        while (end >= 0)
        {
            var near = _parent[end];
            var next = Mates[near];
            (Mates[end], Mates[near]) = (near, end);
            end = next;
        }
    }

    private void Contract(int v, int to)
    {
        var meeting = Meeting(v, to);
        Array.Clear(_inBlossom);
        Mark(v, meeting, to);
        Mark(to, meeting, v);
        for (var u = 0; u < _n; u++)
        {
            if (_settled[u] || !_inBlossom[_base[u]])
                continue;
            _base[u] = meeting;
            Enter(u);
        }
    }

    private void Mark(int v, int meeting, int child)
    {
        while (_base[v] != meeting)
        {
            _inBlossom[_base[v]] = _inBlossom[_base[Mates[v]]] = true;
            _parent[v] = child;
            child = Mates[v];
            v = _parent[Mates[v]];
        }
    }

    private int Meeting(int a, int b)
    {
        _marks++;
        for (a = _base[a]; ; a = _base[_parent[Mates[a]]])
        {
            _seen[a] = _marks;
            if (Mates[a] < 0)
                break;
        }

        for (b = _base[b]; _seen[b] != _marks; b = _base[_parent[Mates[b]]])
        {
        }

        return b;
    }
}
