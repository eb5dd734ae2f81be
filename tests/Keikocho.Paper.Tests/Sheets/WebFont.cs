using System.Buffers.Binary;
using System.IO.Compression;
using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Tests;

/// <summary>Which characters a WOFF2 file has: the tables are unpacked (W3C, WOFF File Format 2.0, section 4) and read like those of papers.</summary>
internal static class WebFont
{
    private static readonly string[] Known =
    [
        "cmap", "head", "hhea", "hmtx", "maxp", "name", "OS/2", "post", "cvt ", "fpgm", "glyf", "loca", "prep", "CFF ", "VORG", "EBDT", "EBLC", "gasp", "hdmx", "kern", "LTSH",
        "PCLT", "VDMX", "vhea", "vmtx", "BASE", "GDEF", "GPOS", "GSUB", "EBSC", "JSTF", "MATH", "CBDT", "CBLC", "COLR", "CPAL", "SVG ", "sbix", "acnt", "avar", "bdat", "bloc",
        "bsln", "cvar", "fdsc", "feat", "fmtx", "fvar", "gvar", "hsty", "just", "lcar", "mort", "morx", "opbd", "prop", "trak", "Zapf", "Silf", "Glat", "Gloc", "Feat", "Sill",
    ];

    /// <summary>The face in a file.</summary>
    public static FontFace Read(string path)
    {
        var file = File.ReadAllBytes(path);
        var count = BinaryPrimitives.ReadUInt16BigEndian(file.AsSpan(12));
        var packed = BinaryPrimitives.ReadInt32BigEndian(file.AsSpan(20));
        var at = 48;
        var tables = new List<(string Tag, int Length)>();
        for (var i = 0; i < count; i++)
        {
            var flags = file[at++];
            var tag = (flags & 63) == 63 ? System.Text.Encoding.ASCII.GetString(file, (at += 4) - 4, 4) : Known[flags & 63];
            var length = Number(file, ref at);
            // A length of its own stands where a table is packed in another form: glyf and loca unless version 3, others unless version 0.
            var plain = tag is "glyf" or "loca" ? flags >> 6 == 3 : flags >> 6 == 0;
            tables.Add((tag, plain ? length : Number(file, ref at)));
        }

        using var stream = new BrotliStream(new MemoryStream(file, at, packed), CompressionMode.Decompress);
        using var all = new MemoryStream();
        stream.CopyTo(all);
        var font = Pack(tables, all.ToArray(), ["head", "hhea", "hmtx", "cmap"]);
        return FontFace.Read("web", false, () => new MemoryStream(font));
    }

    private static byte[] Pack(List<(string Tag, int Length)> tables, byte[] data, string[] wanted)
    {
        var font = new byte[12 + (16 * wanted.Length) + data.Length];
        BinaryPrimitives.WriteUInt16BigEndian(font.AsSpan(4), (ushort)wanted.Length);
        data.CopyTo(font, 12 + (16 * wanted.Length));
        for (var i = 0; i < wanted.Length; i++)
        {
            var offset = tables.TakeWhile(table => table.Tag != wanted[i]).Sum(table => table.Length);
            System.Text.Encoding.ASCII.GetBytes(wanted[i]).CopyTo(font, 12 + (16 * i));
            BinaryPrimitives.WriteInt32BigEndian(font.AsSpan(12 + (16 * i) + 8), 12 + (16 * wanted.Length) + offset);
            BinaryPrimitives.WriteInt32BigEndian(font.AsSpan(12 + (16 * i) + 12), tables.First(table => table.Tag == wanted[i]).Length);
        }

        return font;
    }

    // UIntBase128: seven bits a byte, the high bit says that more follow.
    private static int Number(byte[] file, ref int at)
    {
        var number = 0;
        byte part;
        do
        {
            part = file[at++];
            number = (number << 7) | (part & 127);
        }
        while ((part & 128) != 0);
        return number;
    }
}
