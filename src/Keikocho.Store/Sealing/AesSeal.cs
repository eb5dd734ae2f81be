using System.Security.Cryptography;

namespace Keikocho.Store.Sealing;

/// <summary>AES-256 in Galois counter mode with a fresh nonce of 12 bytes; what comes out is nonce, tag of 16 bytes, and the closed bytes.</summary>
internal static class AesSeal
{
    public const int KeyBytes = 32, NonceBytes = 12, TagBytes = 16, Overhead = NonceBytes + TagBytes;

    public static byte[] Close(ReadOnlySpan<byte> key, ReadOnlySpan<byte> plain, ReadOnlySpan<byte> about)
    {
        Span<byte> nonce = stackalloc byte[NonceBytes];
        RandomNumberGenerator.Fill(nonce);
        return Close(key, plain, about, nonce);
    }

    /// <summary>With a given nonce: for the published vectors. A nonce used twice with one key opens both values.</summary>
    internal static byte[] Close(ReadOnlySpan<byte> key, ReadOnlySpan<byte> plain, ReadOnlySpan<byte> about, ReadOnlySpan<byte> nonce)
    {
        var closed = new byte[Overhead + plain.Length];
        nonce.CopyTo(closed);
        using var cipher = new AesGcm(key, TagBytes);
        cipher.Encrypt(nonce, plain, closed.AsSpan(Overhead), closed.AsSpan(NonceBytes, TagBytes), about);
        return closed;
    }

    /// <summary>Opens; null where the key, the bytes or what they are about is another.</summary>
    public static byte[]? Open(ReadOnlySpan<byte> key, ReadOnlySpan<byte> closed, ReadOnlySpan<byte> about)
    {
        if (closed.Length < Overhead) return null;
        var plain = new byte[closed.Length - Overhead];
        using var cipher = new AesGcm(key, TagBytes);
        try
        {
            cipher.Decrypt(closed[..NonceBytes], closed[Overhead..], closed[NonceBytes..Overhead], plain, about);
            return plain;
        }
        catch (AuthenticationTagMismatchException)
        {
            return null;
        }
    }
}
