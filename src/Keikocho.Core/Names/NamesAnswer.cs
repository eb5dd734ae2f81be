using System.Text.Json.Serialization;
using Keikocho.Core.Kernel;

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
    /// <param name="CountedFrom">The name that was written, where <paramref name="Name"/> is the listed one that it is counted as.</param>
    public sealed record One(string Name, string How, string? CountedFrom = null) : NameOutcome;

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

/// <summary>One spelling and what it may mean.</summary>
/// <param name="Written">The spelling as it was written.</param>
/// <param name="Outcome">What it may mean.</param>
/// <param name="Shown">For one name, the name as the club shows it; null otherwise.</param>
public sealed record NameResolved(string Written, NameOutcome Outcome, string? Shown);

/// <summary>The spellings with their names.</summary>
/// <param name="Resolved">Each spelling, in the order of the question.</param>
/// <param name="One">How many are one name.</param>
/// <param name="Several">How many may be one of a few.</param>
/// <param name="None">How many are no name that is known.</param>
/// <param name="Reasons">For each spelling why, and how many there are of each kind.</param>
/// <param name="Settings">The settings used.</param>
public sealed record NamesAnswer(
    IReadOnlyList<NameResolved> Resolved, int One, int Several, int None, IReadOnlyList<Reason> Reasons, IReadOnlyList<SettingUsed> Settings);
