using System.Buffers.Binary;
using System.Security.Cryptography;

namespace Keikocho.Store.Sealing;

/// <summary>What a sealed value is about: bytes that were closed for one row of one child do not open for another.</summary>
/// <param name="Club">Number of the club.</param>
/// <param name="PersonId">The child.</param>
/// <param name="RowId">The row.</param>
public readonly record struct SealedAbout(int Club, Guid PersonId, Guid RowId)
{
    internal byte[] Bytes()
    {
        var bytes = new byte[36];
        BinaryPrimitives.WriteInt32BigEndian(bytes, Club);
        PersonId.TryWriteBytes(bytes.AsSpan(4), bigEndian: true, out _);
        RowId.TryWriteBytes(bytes.AsSpan(20), bigEndian: true, out _);
        return bytes;
    }
}

/// <summary>
/// The club's key while the lock is open: in the memory of this process only, and overwritten when it is closed. Whoever reads or writes
/// while it is being closed finishes first.
/// </summary>
public sealed class OpenedLock : IDisposable
{
    private readonly byte[] key;
    private readonly Lock gate = new();
    private bool isClosed;

    /// <summary>Takes the key; the array is its own from here on.</summary>
    internal OpenedLock(Guid id, byte[] key) => (Id, this.key) = (id, key);

    /// <summary>Which lock of the club.</summary>
    public Guid Id { get; }

    /// <summary>Whether the key is gone.</summary>
    public bool IsClosed => Volatile.Read(ref isClosed);

    /// <exception cref="ObjectDisposedException">The lock was closed in the meantime.</exception>
    internal byte[] Close(ReadOnlySpan<byte> plain, SealedAbout about)
    {
        lock (gate)
        {
            ObjectDisposedException.ThrowIf(isClosed, this);
            return AesSeal.Close(key, plain, about.Bytes());
        }
    }

    /// <summary>Null where the bytes were closed by another key or for another row.</summary>
    /// <exception cref="ObjectDisposedException">The lock was closed in the meantime.</exception>
    internal byte[]? Open(ReadOnlySpan<byte> closed, SealedAbout about)
    {
        lock (gate)
        {
            ObjectDisposedException.ThrowIf(isClosed, this);
            return AesSeal.Open(key, closed, about.Bytes());
        }
    }

    /// <summary>The key wrapped by another one.</summary>
    internal byte[] WrapBy(ReadOnlySpan<byte> wrapping, ReadOnlySpan<byte> about)
    {
        lock (gate)
        {
            ObjectDisposedException.ThrowIf(isClosed, this);
            return AesSeal.Close(wrapping, key, about);
        }
    }

    /// <summary>Overwrites the key.</summary>
    public void Dispose()
    {
        lock (gate)
        {
            CryptographicOperations.ZeroMemory(key);
            Volatile.Write(ref isClosed, true);
        }
    }
}
