using System.Numerics;
using System.Runtime.InteropServices;

namespace Keikocho.Core.Partners;

/// <remarks>
/// One tree grows from one free vertex. Its time is how far the duals of its outer vertices have risen and those of its inner ones have
/// fallen. Duals are settled when a blossom changes its side and when the tree ends; until then an outer vertex is kept by its dual less
/// the time of its joining, so that the moment at which an edge becomes tight is a constant and nothing is updated as time goes on.
/// </remarks>
internal sealed partial class BlossomSearch<T>
{
    private const int Free = 0, Outer = 1, Inner = 2;

    private readonly T[] _outer;     // an outer vertex' dual less the time of its joining; InTree for every other
    private readonly T[] _free;      // a free vertex' dual; InTree for every other
    private readonly T[] _best;      // least cost less outer dual over all outer vertices
    private readonly T[] _bestFrom;  // the outer vertex that has it
    private readonly T[] _pairKey;   // an outer blossom's least slack to another outer one at time 0; absent for every other
    private readonly int[] _pairFrom;
    private readonly int[] _pairTo;  // -1 where it is looked up when needed
    private readonly T[] _setDual;
    private readonly T[] _joined;
    private readonly int[] _label;
    private readonly int[] _inners;  // inner blossoms that are more than one vertex
    private int _innerCount;

    private SearchOutcome Grow(int root)
    {
        var time = T.Zero;
        _innerCount = 0;
        _best.AsSpan().Fill(AbsentCost);
        _outer.AsSpan().Fill(InTree);
        _pairKey.AsSpan().Fill(AbsentCost);
        _free.AsSpan(_n).Fill(InTree);
        for (var v = 0; v < _n; v++)
        {
            _free[v] = _dual[v];
            _label[_top[v]] = Free;
        }

        JoinOuter(_top[root], time);
        while (true)
        {
            var reach = Least(_best, _free);
            var pair = Least(_pairKey);
            var meet = pair < Never ? pair >> 1 : Never;
            var (open, emptied) = FirstEmptied();
            var next = T.Min(reach, T.Min(meet, open));
            if (next >= Never)
                return SearchOutcome.None;
            if (next > DualLimit)
                return SearchOutcome.TooLarge;
            time = next;
            if (reach == next)
            {
                var to = First(_best, _free, reach, 0);
                var from = int.CreateTruncating(_bestFrom[to]);
                var reached = _top[to];
                var mate = _mate[_base[reached]];
                if (mate < 0)
                {
                    Augment(from, to);
                    return Settle(time);
                }

                JoinInner(reached, from, to, time);
                JoinOuter(_top[mate], time);
            }
            else if (meet == next)
            {
                var (from, to) = PairOf(pair);
                Contract(from, to, time);
            }
            else
            {
                Open(emptied, time);
            }
        }
    }

    private void JoinOuter(int b, T time)
    {
        _label[b] = Outer;
        _joined[b] = time;
        for (var v = _firstLeaf[b]; ; v = _nextLeaf[v])
        {
            _outer[v] = unchecked(_dual[v] - time);
            _free[v] = InTree;
            if (v == _lastLeaf[b])
                break;
        }

        if (b < _n)
            ScanVertex(b);
        else
            ScanBlossom(b);
    }

    private void JoinInner(int b, int from, int to, T time)
    {
        _label[b] = Inner;
        _joined[b] = time;
        _treeFrom[b] = from;
        _treeTo[b] = to;
        for (var v = _firstLeaf[b]; ; v = _nextLeaf[v])
        {
            _free[v] = InTree;
            if (v == _lastLeaf[b])
                break;
        }

        if (b >= _n)
            _inners[_innerCount++] = b;
    }

    /// <summary>Tells every vertex about the edges of a new outer vertex, and finds the best of them to another outer blossom.</summary>
    private void ScanVertex(int u)
    {
        var row = MemoryMarshal.Cast<T, Vector<T>>(_cost.AsSpan(u * _stride, _stride));
        var best = MemoryMarshal.Cast<T, Vector<T>>(_best.AsSpan())[..row.Length];
        var bestFrom = MemoryMarshal.Cast<T, Vector<T>>(_bestFrom.AsSpan())[..row.Length];
        var outer = MemoryMarshal.Cast<T, Vector<T>>(_outer.AsSpan())[..row.Length];
        var own = new Vector<T>(_outer[u]);
        var from = new Vector<T>(T.CreateTruncating(u));
        var pair = new Vector<T>(AbsentCost);
        for (var i = 0; i < row.Length; i++)
        {
            var key = row[i] - own;
            var better = Vector.LessThan(key, best[i]);
            best[i] = Vector.ConditionalSelect(better, key, best[i]);
            bestFrom[i] = Vector.ConditionalSelect(better, from, bestFrom[i]);
            pair = Vector.Min(pair, key - outer[i]);
        }

        _pairKey[u] = Smallest(pair);
        _pairFrom[u] = u;
        _pairTo[u] = -1;
    }

    /// <summary>The same for a blossom, by the row that it keeps of its best vertex for each vertex outside.</summary>
    private void ScanBlossom(int b)
    {
        var row = _rows[b - _n];
        var pair = AbsentCost;
        unchecked
        {
            for (var x = 0; x < _n; x++)
            {
                if (_top[x] == b)
                    continue;
                var u = int.CreateTruncating(row[x]);
                var key = _cost[u * _stride + x] - _outer[u];
                if (key < _best[x])
                {
                    _best[x] = key;
                    _bestFrom[x] = row[x];
                }

                key -= _outer[x];
                if (key < pair)
                {
                    pair = key;
                    _pairFrom[b] = u;
                    _pairTo[b] = x;
                }
            }
        }

        _pairKey[b] = pair;
    }

    /// <summary>The edge between two outer blossoms that has this key.</summary>
    private (int From, int To) PairOf(T key)
    {
        var b = _pairKey.AsSpan().IndexOf(key);
        if (_pairTo[b] < 0)
        {
            var width = unchecked(key + _outer[b]);
            _pairTo[b] = First(_cost.AsSpan(b * _stride, _stride), _outer, width, 0);
        }

        return (_pairFrom[b], _pairTo[b]);
    }

    /// <summary>The inner blossom whose dual is the first to come down to nothing.</summary>
    private (T Time, int Blossom) FirstEmptied()
    {
        var (least, at) = (Never, -1);
        for (var i = 0; i < _innerCount; i++)
        {
            var b = _inners[i];
            if (!_inUse[b] || _parent[b] >= 0 || _label[b] != Inner)
            {
                _inners[i--] = _inners[--_innerCount];
                continue;
            }

            var empty = unchecked(_joined[b] + (_setDual[b] >> 1));
            if (empty < least || (empty == least && b < at))
                (least, at) = (empty, b);
        }

        return (least, at);
    }

    /// <summary>Settles all duals at the end of a tree, and opens the outer blossoms that cost nothing.</summary>
    private SearchOutcome Settle(T time)
    {
        var fits = true;
        unchecked
        {
            for (var v = 0; v < _n; v++)
            {
                var b = _top[v];
                if (_label[b] == Outer)
                    _dual[v] = _outer[v] + time;
                else if (_label[b] == Inner)
                    _dual[v] -= time - _joined[b];
                fits &= _dual[v] <= DualLimit && _dual[v] >= -DualLimit;
            }

            for (var b = _n; b < _ids; b++)
            {
                if (!_inUse[b] || _parent[b] >= 0 || _label[b] == Free)
                    continue;
                var change = (time - _joined[b]) << 1;
                _setDual[b] = _label[b] == Outer ? _setDual[b] + change : _setDual[b] - change;
            }
        }

        for (var b = _n; b < _ids; b++)
        {
            if (_inUse[b] && _parent[b] < 0 && _setDual[b] == T.Zero)
                OpenAll(b);
        }

        return fits ? SearchOutcome.Perfect : SearchOutcome.TooLarge;
    }

    private static T Least(ReadOnlySpan<T> values)
    {
        var least = new Vector<T>(T.MaxValue);
        foreach (var v in MemoryMarshal.Cast<T, Vector<T>>(values))
            least = Vector.Min(least, v);
        return Smallest(least);
    }
}
