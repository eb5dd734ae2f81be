using System.Text.Json.Serialization;

namespace Keikocho.Core.Names;

/// <summary>A name that can be found.</summary>
/// <param name="Name">The spelling to show.</param>
/// <param name="Kana">Kana, the truth of the spelling; null where there is none (an English name of the club's own).</param>
/// <param name="Kanji">Kanji.</param>
/// <param name="Class">Class of the Kodokan's list, or the topic of a word; what tells two of one sound apart.</param>
/// <param name="Meaning">Plain meaning.</param>
/// <param name="Spellings">Other spellings that are known.</param>
/// <param name="CountedAs">For a club's own name: the listed one that it is counted as.</param>
public sealed record KnownName(
    string Name, string? Kana, string? Kanji, string? Class, string? Meaning, IReadOnlyList<string> Spellings, string? CountedAs = null);

/// <summary>What a spelling may mean. A closed set; never a silent guess.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "is")]
[JsonDerivedType(typeof(One), "one")]
[JsonDerivedType(typeof(Several), "several")]
[JsonDerivedType(typeof(None), "none")]
public abstract record NameOutcome
{
    private NameOutcome()
    {
    }

    /// <summary>Exactly one name.</summary>
    /// <param name="Name">The name to show.</param>
    /// <param name="How">How it was found, in plain words: "written without hyphens".</param>
    public sealed record One(string Name, string How) : NameOutcome;

    /// <summary>One of a few; somebody must choose.</summary>
    /// <param name="Names">The names, each with what tells it apart, in a fixed order.</param>
    public sealed record Several(IReadOnlyList<Candidate> Names) : NameOutcome;

    /// <summary>No name that is known.</summary>
    public sealed record None : NameOutcome;
}

/// <summary>One of a few names that a spelling may mean.</summary>
/// <param name="Name">The name.</param>
/// <param name="Apart">What tells it apart: "ko, the minor one".</param>
public sealed record Candidate(string Name, string Apart);
