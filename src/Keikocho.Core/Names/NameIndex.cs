namespace Keikocho.Core.Names;

/// <summary>Names made ready for finding; made once, used for many spellings, and safe to share.</summary>
public sealed class NameIndex
{
    private NameIndex()
    {
    }

    /// <summary>Makes the index.</summary>
    /// <exception cref="ArgumentException">Two names are alike.</exception>
    public static NameIndex Of(IReadOnlyList<KnownName> names) => throw new NotImplementedException();

    /// <summary>What <paramref name="written"/> may mean.</summary>
    public NameOutcome Resolve(string written) => throw new NotImplementedException();

    /// <summary>The name itself; null when it is not one of them.</summary>
    public KnownName? Find(string name) => throw new NotImplementedException();
}
