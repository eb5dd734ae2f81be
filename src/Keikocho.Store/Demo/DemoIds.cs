using System.Buffers.Binary;

namespace Keikocho.Store.Demo;

/// <summary>Ids shaped like version 7 (RFC 9562, 5.7): the time in front, the rest from the seed instead of from chance.</summary>
internal sealed class DemoIds(int seed)
{
    /// <summary>The id of one thing.</summary>
    public Guid Of(DemoPart part, DateTimeOffset madeAt, int first, int second = 0)
    {
        var draw = Draw.About(seed, part, first, second);
        Span<byte> bytes = stackalloc byte[16];
        BinaryPrimitives.WriteInt64BigEndian(bytes, madeAt.ToUnixTimeMilliseconds() << 16);
        var high = (ushort)(draw.Next() >> 52);
        BinaryPrimitives.WriteUInt16BigEndian(bytes[6..], (ushort)(0x7000 | high));
        BinaryPrimitives.WriteUInt64BigEndian(bytes[8..], (draw.Next() >> 2) | 0x8000000000000000);
        return new Guid(bytes, bigEndian: true);
    }
}
