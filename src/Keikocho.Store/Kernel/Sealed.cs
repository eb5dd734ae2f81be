namespace Keikocho.Store.Kernel;

/// <summary>
/// A personal value as it lies in the database: opaque bytes that only <see cref="Seal"/> can open. Nothing personal is searched,
/// sorted or indexed in SQL; a <see cref="Sealed{T}"/> cannot be, because it is nothing but bytes.
/// </summary>
/// <typeparam name="T">What is inside: text, a date, a number or bytes.</typeparam>
public readonly struct Sealed<T> : IEquatable<Sealed<T>>
{
    private readonly byte[]? bytes;

    /// <summary>Takes bytes that a seal made or a database gave back.</summary>
    public Sealed(byte[] bytes) => this.bytes = bytes;

    /// <summary>The sealed bytes; empty for a default value.</summary>
    public byte[] Bytes => bytes ?? [];

    /// <inheritdoc/>
    public bool Equals(Sealed<T> other) => Bytes.AsSpan().SequenceEqual(other.Bytes);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Sealed<T> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        hash.AddBytes(Bytes);
        return hash.ToHashCode();
    }

    /// <summary>Never the value: a sealed value may end up in a log.</summary>
    public override string ToString() => "sealed";

    /// <summary>Same bytes.</summary>
    public static bool operator ==(Sealed<T> left, Sealed<T> right) => left.Equals(right);

    /// <summary>Other bytes.</summary>
    public static bool operator !=(Sealed<T> left, Sealed<T> right) => !left.Equals(right);
}
