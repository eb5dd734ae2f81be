using System.Security.Cryptography;

namespace Keikocho.Store.Sealing;

/// <summary>What a sealed value is about: bytes that were closed for one row of one child do not open for another.</summary>
/// <param name="PersonId">The child.</param>
/// <param name="RowId">The row.</param>
public readonly record struct SealedAbout(Guid PersonId, Guid RowId)
{
    // The club by its own id: the number that a database gives it changes with the database.
    internal byte[] Bytes(Guid club) => [.. club.ToByteArray(bigEndian: true), .. PersonId.ToByteArray(bigEndian: true), .. RowId.ToByteArray(bigEndian: true)];
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
    internal OpenedLock(Guid id, Guid club, byte[] key) => (Id, ClubId, this.key) = (id, club, key);

    /// <summary>Which lock of the club.</summary>
    public Guid Id { get; }

    /// <summary>The club's own id, the same in every database that it moves to.</summary>
    public Guid ClubId { get; }

    /// <summary>Whether the key is gone.</summary>
    public bool IsClosed => Volatile.Read(ref isClosed);

    /// <exception cref="ObjectDisposedException">The lock was closed in the meantime.</exception>
    internal byte[] Close(ReadOnlySpan<byte> plain, SealedAbout about)
    {
        lock (gate)
        {
            ObjectDisposedException.ThrowIf(isClosed, this);
            return AesSeal.Close(key, plain, about.Bytes(ClubId));
        }
    }

    /// <summary>Null where the bytes were closed by another key or for another row.</summary>
    /// <exception cref="ObjectDisposedException">The lock was closed in the meantime.</exception>
    internal byte[]? Open(ReadOnlySpan<byte> closed, SealedAbout about)
    {
        lock (gate)
        {
            ObjectDisposedException.ThrowIf(isClosed, this);
            return AesSeal.Open(key, closed, about.Bytes(ClubId));
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
