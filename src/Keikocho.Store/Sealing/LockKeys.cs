using System.Security.Cryptography;
using System.Text;
using NSec.Cryptography;

namespace Keikocho.Store.Sealing;

/// <summary>From what a person types to a key that wraps the club's key: Argon2id, version 1.3, one lane.</summary>
internal static class LockKeys
{
    /// <summary>The only way of wrapping so far: Argon2id, AES-256-GCM.</summary>
    public const int Form = 1;

    public const int SaltBytes = 16;

    /// <summary>64 MiB and three passes: the memory and passes of RFC 9106's second choice, with one lane, since the library has no more.</summary>
    public const int MemoryKib = 64 * 1024, Passes = 3;

    public static byte[] Derive(string typed, ReadOnlySpan<byte> salt, int memoryKib, int passes)
    {
        var secret = Encoding.UTF8.GetBytes(typed);
        try
        {
            var argon = PasswordBasedKeyDerivationAlgorithm.Argon2id(new Argon2Parameters { DegreeOfParallelism = 1, MemorySize = memoryKib, NumberOfPasses = passes });
            return argon.DeriveBytes(secret, salt, AesSeal.KeyBytes);
        }
        finally
        {
            CryptographicOperations.ZeroMemory(secret);
        }
    }

    /// <summary>What a wrapped key is about: this club's lock, opened in this way.</summary>
    public static byte[] About(Guid club, Guid id, bool byRecovery) => [.. club.ToByteArray(bigEndian: true), .. id.ToByteArray(bigEndian: true), byRecovery ? (byte)2 : (byte)1];
}
