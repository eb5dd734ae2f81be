using Keikocho.Core.Kernel;

namespace Keikocho.Core.Names;

/// <summary>A spelling that is one name.</summary>
public sealed record SpellingIsOne(string Written, string Name, string How) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"\"{Written}\" is {Name}: {How}.";
}

/// <summary>A spelling that may be one of a few names.</summary>
public sealed record SpellingMayBe(string Written, IReadOnlyList<Candidate> Names) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Names.Count == 1
        ? $"\"{Written}\" may be {Names[0].Name} ({Names[0].Apart}), but may be another name too: somebody must say."
        : $"\"{Written}\" may be {string.Join(" or ", Names.Select(n => $"{n.Name} ({n.Apart})"))}: somebody must choose.";
}

/// <summary>A spelling that is no name.</summary>
public sealed record SpellingIsNone(string Written) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"\"{Written}\" is no name that is known.";
}

/// <summary>How many spellings of each kind.</summary>
public sealed record SpellingsCounted(int Written, int Known, int One, int Several, int None) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"{Words.Count(Written, "spelling")} against {Words.Count(Known, "known name")}: {One} one name, {Several} one of a few, {None} no name.";
}
