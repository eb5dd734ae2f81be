using Keikocho.Store.Kernel;

namespace Keikocho.Store.Sealing;

/// <summary>
/// The lock of a club's sealed values: the key itself, wrapped once by the passphrase and once by the printed recovery key. Neither of
/// the two is stored.
/// </summary>
public sealed class LockRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>Which way of wrapping, from 1.</summary>
    public int Form { get; set; }
    /// <summary>Chance of the passphrase.</summary>
    public byte[] Salt { get; set; } = [];
    /// <summary>Memory of the derivation in KiB.</summary>
    public int MemoryKib { get; set; }
    /// <summary>Passes of the derivation.</summary>
    public int Passes { get; set; }
    /// <summary>The key, wrapped by the passphrase.</summary>
    public byte[] ByPassphrase { get; set; } = [];
    /// <summary>Chance of the recovery key.</summary>
    public byte[] RecoverySalt { get; set; } = [];
    /// <summary>The key, wrapped by the recovery key.</summary>
    public byte[] ByRecovery { get; set; } = [];
    /// <summary>When.</summary>
    public DateTimeOffset MadeAt { get; set; }
    /// <summary>By whom.</summary>
    public Guid? ById { get; set; }
    /// <summary>When a newer lock took its place; null while it holds.</summary>
    public DateTimeOffset? EndedAt { get; set; }
}
