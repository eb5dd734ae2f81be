using System.Numerics;
using System.Runtime.InteropServices;

namespace Keikocho.Core.Partners;

/// <remarks>
/// A blossom is a ring of an odd number of children, each a vertex or a blossom, that begins with the child that holds its base. A link
/// is the tight edge from a child to the next. The vertices of a blossom are one run of a linked list, so joining two needs no copying, and
/// a blossom that is opened finds the runs of its children as they were.
/// </remarks>
internal sealed partial class BlossomSearch<T>
{
    private readonly int _ids;
    private readonly int[] _mate;
    private readonly int[] _top;
    private readonly int[] _nextLeaf;
    private readonly int[] _parent;
    private readonly int[] _base;
    private readonly int[] _firstChild;
    private readonly int[] _nextChild;
    private readonly int[] _previousChild;
    private readonly int[] _linkFrom;
    private readonly int[] _linkTo;
    private readonly int[] _firstLeaf;
    private readonly int[] _lastLeaf;
    private readonly int[] _treeFrom;
    private readonly int[] _treeTo;
    private readonly int[] _stamp;
    private readonly bool[] _inUse;
    private readonly T[][] _rows; // for each vertex outside, the vertex of the blossom with the least cost less dual; holds as long as the blossom
    private readonly int[] _spareIds;
    private readonly int[] _path;
    private int _spareCount;
    private int _stamps;

    private void MakeShape()
    {
        for (var b = 0; b < _ids; b++)
            _parent[b] = -1;
        for (var v = 0; v < _n; v++)
            (_mate[v], _top[v], _base[v], _firstLeaf[v], _lastLeaf[v]) = (-1, v, v, v, v);
        for (var b = _ids - 1; b >= _n; b--)
            _spareIds[_spareCount++] = b;
    }

    private int[] Leaves(int b)
    {
        var leaves = new List<int>();
        for (var v = _firstLeaf[b]; ; v = _nextLeaf[v])
        {
            leaves.Add(v);
            if (v == _lastLeaf[b])
                return [.. leaves];
        }
    }

    /// <summary>Makes one blossom of the ring that a tight edge between two outer blossoms closes.</summary>
    private void Contract(int from, int to, T time)
    {
        var meeting = Meeting(_top[from], _top[to]);
        var b = _spareIds[--_spareCount];
        _inUse[b] = true;
        _setDual[b] = T.Zero;
        _base[b] = _base[meeting];
        _firstChild[b] = meeting;

        // Down from the meeting point to the near end: the path up, read backward.
        var steps = 0;
        for (var c = _top[from]; c != meeting; c = Above(c))
            _path[steps++] = c;
        var last = meeting;
        while (steps > 0)
        {
            var c = _path[--steps];
            if (_label[c] == Inner)
                Link(last, c, _treeFrom[c], _treeTo[c]);
            else
                Link(last, c, _mate[_base[c]], _base[c]);
            last = c;
        }

        var far = _top[to];
        Link(last, far, from, to);
        while (far != meeting)
        {
            var above = Above(far);
            if (_label[far] == Inner)
                Link(far, above, _treeTo[far], _treeFrom[far]);
            else
                Link(far, above, _base[far], _mate[_base[far]]);
            far = above;
        }

        Gather(b, time);
    }

    private void Link(int child, int next, int from, int to)
    {
        _nextChild[child] = next;
        _previousChild[next] = child;
        _linkFrom[child] = from;
        _linkTo[child] = to;
    }

    /// <summary>The blossom above in the tree; -1 above the root.</summary>
    private int Above(int b)
    {
        if (_label[b] == Inner)
            return _top[_treeFrom[b]];
        var mate = _mate[_base[b]];
        return mate < 0 ? -1 : _top[mate];
    }

    private int Meeting(int a, int b)
    {
        _stamps++;
        while (true)
        {
            if (a >= 0)
            {
                if (_stamp[a] == _stamps)
                    return a;
                _stamp[a] = _stamps;
                a = Above(a);
            }

            (a, b) = b >= 0 ? (b, a) : (a, b);
        }
    }

    /// <summary>Settles the children, joins their vertices, and reckons the row of the new outer blossom.</summary>
    private void Gather(int b, T time)
    {
        var first = _firstChild[b];
        var child = first;
        var tail = -1;
        do
        {
            var joined = unchecked(time - _joined[child]);
            var wasInner = _label[child] == Inner;
            if (child >= _n)
                _setDual[child] = unchecked(wasInner ? _setDual[child] - (joined << 1) : _setDual[child] + (joined << 1));
            for (var v = _firstLeaf[child]; ; v = _nextLeaf[v])
            {
                if (wasInner)
                {
                    _dual[v] = unchecked(_dual[v] - joined);
                    _outer[v] = unchecked(_dual[v] - time);
                }

                _top[v] = b;
                if (v == _lastLeaf[child])
                    break;
            }

            if (tail < 0)
                _firstLeaf[b] = _firstLeaf[child];
            else
                _nextLeaf[tail] = _firstLeaf[child];
            tail = _lastLeaf[child];
            _parent[child] = b;
            _pairKey[child] = AbsentCost;
            child = _nextChild[child];
        }
        while (child != first);

        _lastLeaf[b] = tail;
        _parent[b] = -1;
        _label[b] = Outer;
        _joined[b] = time;
        MakeRow(b);
        ScanBlossom(b);
    }

    private void MakeRow(int b)
    {
        var row = _rows[b - _n] ??= new T[_stride];
        var least = ArrayOfLeast();
        least.AsSpan().Fill(T.MaxValue);
        var child = _firstChild[b];
        do
        {
            if (child < _n)
            {
                LowerByVertex(child, row, least);
            }
            else
            {
                var own = _rows[child - _n];
                unchecked
                {
                    for (var x = 0; x < _n; x++)
                    {
                        if (_top[x] == b)
                            continue;
                        var u = int.CreateTruncating(own[x]);
                        var key = _cost[u * _stride + x] - _outer[u];
                        if (key < least[x])
                            (least[x], row[x]) = (key, own[x]);
                    }
                }
            }

            child = _nextChild[child];
        }
        while (child != _firstChild[b]);
    }

    private T[]? _least;

    private T[] ArrayOfLeast() => _least ??= new T[_stride];

    private void LowerByVertex(int u, T[] row, T[] least)
    {
        var costs = MemoryMarshal.Cast<T, Vector<T>>(_cost.AsSpan(u * _stride, _stride));
        var rows = MemoryMarshal.Cast<T, Vector<T>>(row.AsSpan())[..costs.Length];
        var leasts = MemoryMarshal.Cast<T, Vector<T>>(least.AsSpan())[..costs.Length];
        var own = new Vector<T>(_outer[u]);
        var from = new Vector<T>(T.CreateTruncating(u));
        for (var i = 0; i < costs.Length; i++)
        {
            var key = costs[i] - own;
            var better = Vector.LessThan(key, leasts[i]);
            leasts[i] = Vector.ConditionalSelect(better, key, leasts[i]);
            rows[i] = Vector.ConditionalSelect(better, from, rows[i]);
        }
    }

    /// <summary>Opens an inner blossom whose dual is nothing: the even way round from where the tree came in stays in the tree.</summary>
    private void Open(int b, T time)
    {
        var since = unchecked(time - _joined[b]);
        for (var v = _firstLeaf[b]; ; v = _nextLeaf[v])
        {
            _dual[v] = unchecked(_dual[v] - since);
            if (v == _lastLeaf[b])
                break;
        }

        var (from, to) = (_treeFrom[b], _treeTo[b]);
        var entry = ChildOf(b, to);
        var first = _firstChild[b];
        Release(b);
        var forward = PlaceOf(first, entry) % 2 == 1;
        var c = first;
        do
        {
            _label[c] = Free;
            _joined[c] = time;
            for (var v = _firstLeaf[c]; ; v = _nextLeaf[v])
            {
                _free[v] = _dual[v];
                if (v == _lastLeaf[c])
                    break;
            }

            c = _nextChild[c];
        }
        while (c != first);

        // Labels first, then the scans: a scan looks at every vertex' side.
        var steps = 0;
        for (c = entry; ;)
        {
            JoinInner(c, from, to, time);
            if (c == first)
                break;
            var outer = forward ? _nextChild[c] : _previousChild[c];
            _path[steps++] = outer;
            (from, to) = forward ? (_linkFrom[outer], _linkTo[outer]) : (_linkTo[_previousChild[outer]], _linkFrom[_previousChild[outer]]);
            c = forward ? _nextChild[outer] : _previousChild[outer];
        }

        for (var i = 0; i < steps; i++)
            JoinOuter(_path[i], time);
    }

    /// <summary>Opens a blossom outside any tree, and each child that costs nothing too.</summary>
    private void OpenAll(int b)
    {
        var first = _firstChild[b];
        Release(b);
        var c = first;
        do
        {
            // A child that is opened keeps its place in this ring.
            var next = _nextChild[c];
            if (c >= _n && _setDual[c] == T.Zero)
                OpenAll(c);
            c = next;
        }
        while (c != first);
    }

    private void Release(int b)
    {
        var first = _firstChild[b];
        var c = first;
        do
        {
            _parent[c] = -1;
            for (var v = _firstLeaf[c]; ; v = _nextLeaf[v])
            {
                _top[v] = c;
                if (v == _lastLeaf[c])
                    break;
            }

            c = _nextChild[c];
        }
        while (c != first);
        _inUse[b] = false;
        _parent[b] = -1;
        _spareIds[_spareCount++] = b;
    }

    private int ChildOf(int b, int vertex)
    {
        var c = vertex;
        while (_parent[c] != b)
            c = _parent[c];
        return c;
    }

    private int PlaceOf(int first, int child)
    {
        var place = 0;
        for (var c = first; c != child; c = _nextChild[c])
            place++;
        return place;
    }

    /// <summary>Turns the path from a free vertex over a tight edge up to the root.</summary>
    private void Augment(int outer, int other)
    {
        while (true)
        {
            var b = _top[outer];
            var above = _mate[_base[b]];
            if (b >= _n)
                Rebase(b, outer);
            _mate[outer] = other;
            _mate[other] = outer;
            if (above < 0)
                return;
            var inner = _top[above];
            var (from, to) = (_treeFrom[inner], _treeTo[inner]);
            if (inner >= _n)
                Rebase(inner, to);
            (outer, other) = (from, to);
        }
    }

    /// <summary>Turns the matching inside a blossom so that <paramref name="vertex"/> is the one that is matched outside.</summary>
    private void Rebase(int b, int vertex)
    {
        var child = ChildOf(b, vertex);
        if (child >= _n)
            Rebase(child, vertex);
        var first = _firstChild[b];
        var forward = PlaceOf(first, child) % 2 == 1;
        for (var c = child; c != first;)
        {
            var near = forward ? _nextChild[c] : _previousChild[c];
            var next = forward ? _nextChild[near] : _previousChild[near];
            var (p, q) = forward ? (_linkFrom[near], _linkTo[near]) : (_linkTo[_previousChild[near]], _linkFrom[_previousChild[near]]);
            if (near >= _n)
                Rebase(near, p);
            if (next >= _n)
                Rebase(next, q);
            _mate[p] = q;
            _mate[q] = p;
            c = next;
        }

        _firstChild[b] = child;
        _base[b] = vertex;
    }
}
