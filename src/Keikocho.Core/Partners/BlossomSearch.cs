using System.Numerics;
using System.Runtime.InteropServices;

namespace Keikocho.Core.Partners;

/// <summary>What came of a search.</summary>
internal enum SearchOutcome
{
    /// <summary>A perfect matching.</summary>
    Perfect,
    /// <summary>There is none.</summary>
    None,
    /// <summary>A dual left the range of the number type; a wider one is needed.</summary>
    TooLarge,
}

/// <summary>
/// The primal-dual method for the cheapest perfect matching (Edmonds 1965), one tree at a time in O(n²), with best edges kept for each
/// vertex and each blossom (Gabow 1973, Lawler 1976; the account of Galil 1986). Our own code; docs/sums/matching.md explains it.
/// </summary>
/// <remarks>
/// Costs are doubled, so that every dual stays whole. This file has the duals before and after; <c>BlossomTree.cs</c> grows a tree,
/// <c>BlossomShape.cs</c> keeps the blossoms.
/// </remarks>
internal sealed partial class BlossomSearch<T>
    where T : unmanaged, IBinaryInteger<T>, IMinMaxValue<T>
{
    // Bands of the number type, so that one comparison tells them apart: real figures stay below Never; a vertex inside the tree and an
    // edge that is not there come out above it, and no sum of them overflows.
    private static readonly int Bits = T.Zero.GetByteCount() * 8;
    private static readonly T AbsentCost = T.One << (Bits - 2);
    private static readonly T InTree = -(T.One << (Bits - 3));
    private static readonly T Never = T.One << (Bits - 4);
    private static readonly T DualLimit = T.One << (Bits - 7);

    private readonly int _n;
    private readonly int _stride;
    private readonly T[] _cost;
    private readonly T[] _dual;

    public BlossomSearch(MatchingCosts costs)
    {
        _n = costs.Vertices;
        var width = Vector<T>.Count;
        _stride = (_n + width - 1) / width * width;
        _ids = _n + _n / 2 + 1;
        var idStride = (_ids + width - 1) / width * width;
        _cost = GC.AllocateUninitializedArray<T>(_n * _stride);
        for (var u = 0; u < _n; u++)
        {
            var from = costs.Row(u);
            var to = _cost.AsSpan(u * _stride, _stride);
            for (var v = 0; v < from.Length; v++)
                to[v] = from[v] == MatchingCosts.Absent ? AbsentCost : T.CreateTruncating(unchecked(from[v] * 2));
            to[u] = AbsentCost;
            to[_n..].Fill(AbsentCost);
        }

        _dual = new T[_stride];
        _outer = new T[_stride];
        _free = new T[_stride];
        _best = new T[_stride];
        _bestFrom = new T[_stride];
        _pairKey = new T[idStride];
        _pairFrom = new int[_ids];
        _pairTo = new int[_ids];
        _setDual = new T[_ids];
        _joined = new T[_ids];
        _label = new int[_ids];
        _inners = new int[_ids];
        _mate = new int[_n];
        _top = new int[_n];
        _nextLeaf = new int[_n];
        _parent = new int[_ids];
        _base = new int[_ids];
        _firstChild = new int[_ids];
        _nextChild = new int[_ids];
        _previousChild = new int[_ids];
        _linkFrom = new int[_ids];
        _linkTo = new int[_ids];
        _firstLeaf = new int[_ids];
        _lastLeaf = new int[_ids];
        _treeFrom = new int[_ids];
        _treeTo = new int[_ids];
        _stamp = new int[_ids];
        _inUse = new bool[_ids];
        _rows = new T[_ids - _n][];
        _spareIds = new int[_ids - _n];
        _path = new int[_ids];
        MakeShape();
    }

    /// <summary>Costs above this do not fit.</summary>
    public static long LargestCost { get; } = long.CreateTruncating(T.One << (Bits - 10));

    /// <summary>Runs to the end.</summary>
    public SearchOutcome Run()
    {
        if (!Begin())
            return SearchOutcome.None;
        for (var root = 0; root < _n; root++)
        {
            if (_mate[root] >= 0)
                continue;
            var outcome = Grow(root);
            if (outcome != SearchOutcome.Perfect)
                return outcome;
        }

        return SearchOutcome.Perfect;
    }

    /// <summary>The matching and its proof, in the table's own numbers.</summary>
    public MatchingAnswer Answer(MatchingCosts costs)
    {
        var cost = 0L;
        var duals = new long[_n];
        for (var v = 0; v < _n; v++)
        {
            duals[v] = long.CreateTruncating(_dual[v]);
            if (v < _mate[v])
                cost += costs[v, _mate[v]];
        }

        var sets = new List<OddSetDual>();
        for (var b = _n; b < _ids; b++)
        {
            if (!_inUse[b] || _setDual[b] == T.Zero)
                continue;
            var vertices = Leaves(b);
            Array.Sort(vertices);
            sets.Add(new OddSetDual(vertices, long.CreateTruncating(_setDual[b])));
        }

        // Sets that begin alike lie within one another.
        sets.Sort((a, b) => a.Vertices[0] != b.Vertices[0] ? a.Vertices[0] - b.Vertices[0] : a.Vertices.Count - b.Vertices.Count);
        return new MatchingAnswer([.. _mate], cost, new MatchingCertificate(duals, sets), null);
    }

    /// <summary>First duals: half of the cheapest edge, then one after the other as high as it may go. Tight edges of two free ends are taken.</summary>
    private bool Begin()
    {
        var half = new T[_stride];
        for (var v = 0; v < _n; v++)
        {
            var least = Least(_cost.AsSpan(v * _stride, _stride), _dual);
            if (least >= Never)
                return false;
            half[v] = least >> 1;
        }

        half.CopyTo(_dual, 0);
        for (var v = 0; v < _n; v++)
        {
            var row = _cost.AsSpan(v * _stride, _stride);
            var least = Least(row, _dual);
            _dual[v] = least;
            if (_mate[v] >= 0)
                continue;
            for (var at = First(row, _dual, least, 0); at >= 0; at = First(row, _dual, least, at + 1))
            {
                if (_mate[at] >= 0)
                    continue;
                _mate[v] = at;
                _mate[at] = v;
                break;
            }
        }

        return true;
    }

    /// <summary>The least difference of two rows.</summary>
    private static T Least(ReadOnlySpan<T> values, ReadOnlySpan<T> less)
    {
        var a = MemoryMarshal.Cast<T, Vector<T>>(values);
        var b = MemoryMarshal.Cast<T, Vector<T>>(less)[..a.Length];
        var least = new Vector<T>(T.MaxValue);
        for (var i = 0; i < a.Length; i++)
            least = Vector.Min(least, a[i] - b[i]);
        return Smallest(least);
    }

    /// <summary>The first place from <paramref name="from"/> on where the difference of two rows is <paramref name="wanted"/>; -1 where there is none.</summary>
    private static int First(ReadOnlySpan<T> values, ReadOnlySpan<T> less, T wanted, int from)
    {
        var width = Vector<T>.Count;
        var a = MemoryMarshal.Cast<T, Vector<T>>(values);
        var b = MemoryMarshal.Cast<T, Vector<T>>(less)[..a.Length];
        var all = new Vector<T>(wanted);
        for (var i = from / width; i < a.Length; i++)
        {
            if (!Vector.EqualsAny(a[i] - b[i], all))
                continue;
            for (var k = Math.Max(from, i * width); k < (i + 1) * width; k++)
            {
                if (unchecked(values[k] - less[k]) == wanted)
                    return k;
            }
        }

        return -1;
    }

    private static T Smallest(Vector<T> values)
    {
        var least = values[0];
        for (var k = 1; k < Vector<T>.Count; k++)
            least = T.Min(least, values[k]);
        return least;
    }
}
