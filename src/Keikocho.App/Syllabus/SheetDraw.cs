using System.Buffers.Binary;
using System.Security.Cryptography;

namespace Keikocho.App.Syllabus;

/// <summary>The number from which the lots of a sheet are drawn.</summary>
public static class SheetDraw
{
    /// <summary>Number of the draw of one child at one test: the same whenever it is asked, another for the next child.</summary>
    public static int Of(Guid person, Guid test)
    {
        Span<byte> both = stackalloc byte[32];
        person.TryWriteBytes(both, bigEndian: true, out _);
        test.TryWriteBytes(both[16..], bigEndian: true, out _);
        Span<byte> hash = stackalloc byte[32];
        SHA256.HashData(both, hash);
        return 1 + (int)(BinaryPrimitives.ReadUInt32BigEndian(hash) % 9_999);
    }
}
