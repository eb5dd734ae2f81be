namespace Keikocho.Store.Keeping;

/// <summary>What a check looked at.</summary>
public enum CheckPart
{
    /// <summary>The engine's own pages and indexes.</summary>
    Engine,
    /// <summary>Rows that point to rows.</summary>
    Links,
    /// <summary>The trail's numbers and hashes.</summary>
    Trail,
    /// <summary>Marks: their device's count, and what they take the place of.</summary>
    Marks,
    /// <summary>States of person and lesson, of child and item, and of falls, against their marks folded again.</summary>
    States,
    /// <summary>Sealed values.</summary>
    Sealed,
    /// <summary>Evenings, lessons, places in the register.</summary>
    Calendar,
}

/// <summary>One thing that is not as it should be.</summary>
/// <param name="Part">Where.</param>
/// <param name="Sentence">What, in one sentence with its table, ids and dates; never a personal value.</param>
public sealed record CheckProblem(CheckPart Part, string Sentence);

/// <summary>How far a check is.</summary>
/// <param name="Part">What it looks at.</param>
/// <param name="Done">Rows looked at so far.</param>
public readonly record struct CheckProgress(CheckPart Part, long Done);

/// <summary>What a check found. It changed nothing.</summary>
/// <param name="Problems">In the order of the parts; at most <see cref="MostProblemsOfOnePart"/> of each, then how many more.</param>
/// <param name="Marks">Marks read.</param>
/// <param name="States">States of person and lesson compared.</param>
/// <param name="TrailLines">Lines of the trail read.</param>
/// <param name="SealedValues">Sealed values opened.</param>
/// <param name="Thorough">Whether every index was compared with its table.</param>
public sealed record CheckReport(
    IReadOnlyList<CheckProblem> Problems, long Marks, long States, long TrailLines, long SealedValues, bool Thorough)
{
    /// <summary>How many problems of one part are listed.</summary>
    public const int MostProblemsOfOnePart = 20;

    /// <summary>True when nothing is wrong.</summary>
    public bool Sound => Problems.Count == 0;
}
