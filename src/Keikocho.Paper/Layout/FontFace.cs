using System.Buffers.Binary;
using System.Collections.Frozen;
using System.Text;

namespace Keikocho.Paper.Layout;

/// <summary>
/// What layout must know of one TrueType file: which characters it has and how wide they are. Read here, because the PDF library
/// draws an empty box for a character that a font lacks and says nothing.
/// </summary>
internal sealed class FontFace
{
    private readonly Func<Stream> _open;
    private readonly FrozenDictionary<int, ushort> _glyphs;
    private readonly ushort[] _advances;
    private readonly double _unitsPerEm;

    private FontFace(string family, bool bold, Func<Stream> open, FrozenDictionary<int, ushort> glyphs, ushort[] advances, double unitsPerEm)
    {
        Family = family;
        Bold = bold;
        _open = open;
        _glyphs = glyphs;
        _advances = advances;
        _unitsPerEm = unitsPerEm;
    }

    /// <summary>The family's name in papers.</summary>
    public string Family { get; }

    /// <summary>Bold, or regular.</summary>
    public bool Bold { get; }

    /// <summary>The whole font file, read anew: the PDF library keeps what it needs of it, and who only looks for characters needs none.</summary>
    public byte[] File
    {
        get
        {
            using var file = _open();
            return Part(file, 0, (int)file.Length);
        }
    }

    /// <summary>The number of characters that have a glyph.</summary>
    public int CharacterCount => _glyphs.Count;

    /// <summary>True when the font draws this code point.</summary>
    public bool Has(int codePoint) => _glyphs.ContainsKey(codePoint);

    /// <summary>Width of a code point's glyph for a font size of 1.</summary>
    public double Advance(int codePoint)
    {
        if (!_glyphs.TryGetValue(codePoint, out var glyph))
            throw new ArgumentOutOfRangeException(nameof(codePoint), codePoint, $"{Family} has no such character.");
        return _advances[Math.Min(glyph, _advances.Length - 1)] / _unitsPerEm;
    }

    /// <summary>Reads a TrueType file: of its megabytes, only the few tables that layout asks.</summary>
    public static FontFace Read(string family, bool bold, Func<Stream> open)
    {
        using var file = open();
        var count = U16(Part(file, 0, 12), 4);
        var directory = Part(file, 12, 16 * count);
        byte[] Table(string tag)
        {
            for (var record = 0; record < directory.Length; record += 16)
                if (Encoding.ASCII.GetString(directory, record, 4) == tag)
                    return Part(file, S32(directory, record + 8), S32(directory, record + 12));
            throw new ArgumentException($"Not a TrueType font with a '{tag}' table.", nameof(open));
        }

        var unitsPerEm = U16(Table("head"), 18);
        var advances = new ushort[U16(Table("hhea"), 34)];
        var hmtx = Table("hmtx");
        for (var i = 0; i < advances.Length; i++)
            advances[i] = U16(hmtx, 4 * i);
        return new FontFace(family, bold, open, Characters(Table("cmap")), advances, unitsPerEm);
    }

    private static byte[] Part(Stream file, int at, int length)
    {
        var part = new byte[length];
        file.Position = at;
        file.ReadExactly(part);
        return part;
    }

    // Format 12 (all of Unicode) where the font has it, else format 4 (the basic plane). OpenType 1.9, 'cmap'.
    private static FrozenDictionary<int, ushort> Characters(byte[] cmap)
    {
        int? four = null;
        int? twelve = null;
        for (var i = 0; i < U16(cmap, 2); i++)
        {
            var record = 4 + (8 * i);
            var at = S32(cmap, record + 4);
            var format = U16(cmap, at);
            var unicode = U16(cmap, record) is 0 or 3;
            if (unicode && format == 12)
                twelve = at;
            else if (unicode && format == 4)
                four = at;
        }

        var glyphs = new Dictionary<int, ushort>();
        if (twelve is { } wide)
            ReadGroups(cmap, wide, glyphs);
        else if (four is { } narrow)
            ReadSegments(cmap, narrow, glyphs);
        else
            throw new ArgumentException("The font has no Unicode character table.", nameof(cmap));
        return glyphs.ToFrozenDictionary();
    }

    private static void ReadGroups(byte[] file, int at, Dictionary<int, ushort> glyphs)
    {
        for (var i = 0; i < S32(file, at + 12); i++)
        {
            var group = at + 16 + (12 * i);
            var first = S32(file, group);
            for (var point = first; point <= S32(file, group + 4); point++)
                Add(glyphs, point, S32(file, group + 8) + point - first);
        }
    }

    private static void ReadSegments(byte[] file, int at, Dictionary<int, ushort> glyphs)
    {
        var count = U16(file, at + 6) / 2;
        var ends = at + 14;
        var starts = ends + (2 * count) + 2;
        var deltas = starts + (2 * count);
        var offsets = deltas + (2 * count);
        for (var i = 0; i < count; i++)
        {
            var delta = U16(file, deltas + (2 * i));
            var offset = U16(file, offsets + (2 * i));
            for (int point = U16(file, starts + (2 * i)); point <= U16(file, ends + (2 * i)) && point < 0xFFFF; point++)
            {
                var glyph = offset == 0
                    ? (point + delta) & 0xFFFF
                    : U16(file, offsets + (2 * i) + offset + (2 * (point - U16(file, starts + (2 * i)))));
                if (offset != 0 && glyph != 0)
                    glyph = (glyph + delta) & 0xFFFF;
                Add(glyphs, point, glyph);
            }
        }
    }

    private static void Add(Dictionary<int, ushort> glyphs, int point, int glyph)
    {
        // Glyph 0 is the font's own "not there" box.
        if (glyph != 0)
            glyphs[point] = checked((ushort)glyph);
    }

    private static ushort U16(byte[] file, int at) => BinaryPrimitives.ReadUInt16BigEndian(file.AsSpan(at, 2));

    private static int S32(byte[] file, int at) => BinaryPrimitives.ReadInt32BigEndian(file.AsSpan(at, 4));
}
