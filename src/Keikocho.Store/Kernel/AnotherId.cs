using System.Security.Cryptography;
using System.Text;

namespace Keikocho.Store.Kernel;

/// <summary>
/// A second id out of a first one and what it is now used for. A page that was gone back to still holds the id it was made with; what it
/// sends then is something else and must not pass for what is stored already.
/// </summary>
public static class AnotherId
{
    /// <summary>The id: the moment of <paramref name="id"/>, and chance that <paramref name="use"/> decides. Version 7.</summary>
    /// <param name="id">The id that the page holds.</param>
    /// <param name="use">What it is used for; the same words give the same id.</param>
    public static Guid Of(Guid id, string use)
    {
        ArgumentNullException.ThrowIfNull(use);
        Span<byte> bytes = stackalloc byte[16];
        id.TryWriteBytes(bytes, bigEndian: true, out _);
        Span<byte> chance = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData([.. bytes, .. Encoding.UTF8.GetBytes(use)], chance);
        chance[..10].CopyTo(bytes[6..]);
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x70);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new Guid(bytes, bigEndian: true);
    }
}
