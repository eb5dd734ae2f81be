namespace Keikocho.Core.Mat;

/// <summary>What an end works on, as far as its room goes.</summary>
public enum MatWork
{
    /// <summary>Throws: the pair needs the most room.</summary>
    Throwing = 0,
    /// <summary>Technique without being thrown far: turning in, holds, escapes.</summary>
    Technique = 1,
}

/// <summary>Which published rule of the floor's size is the club's.</summary>
public enum FloorRule
{
    /// <summary>At least 2 square metres a child: British Judo Association, mat specification.</summary>
    PerChild = 0,
    /// <summary>At least 25 square metres, and 4 more a pair above 6: French Code du sport, article A322-141.</summary>
    PerPair = 1,
}

/// <summary>The children of one end.</summary>
/// <param name="Children">How many.</param>
/// <param name="Pairs">How many pairs they make; left out, two a pair, and a three counts as one; one alone works with an adult and counts as one.</param>
public sealed record MatGroup(int Children, int? Pairs = null)
{
    /// <summary>The pairs, given or counted.</summary>
    internal int PairsInUse => Pairs ?? (Children <= 1 ? Children : Children / 2);
}

/// <summary>Something that stands on the mat or beside it, seen from above, in centimetres from the corner where the length begins.</summary>
/// <param name="Name">As the club calls it.</param>
/// <param name="FromLengthCm">Along the length; below 0 where it stands before the mat.</param>
/// <param name="FromWidthCm">Along the width; below 0 where it stands beside the mat.</param>
/// <param name="LengthCm">How long.</param>
/// <param name="WidthCm">How wide.</param>
public sealed record MatObstacle(string Name, int FromLengthCm, int FromWidthCm, int LengthCm, int WidthCm);

/// <summary>A mat and who works on it.</summary>
/// <param name="LengthCm">The length; the line between the ends runs across it.</param>
/// <param name="WidthCm">The width; the line is as long.</param>
/// <param name="Beginners">The beginners' end, where the length begins.</param>
/// <param name="Main">The main group.</param>
/// <param name="Work">What the main group works on.</param>
/// <param name="BeginnersWork">What the beginners work on.</param>
/// <param name="ModuleCm">The side of one mat: the line lies where mats meet.</param>
/// <param name="BorderCm">A strip along all four sides on which nobody works.</param>
/// <param name="Obstacles">What stands in the way; may be left out.</param>
/// <param name="Rules">The figures; may be left out.</param>
public sealed record MatSnapshot(
    int LengthCm,
    int WidthCm,
    MatGroup Beginners,
    MatGroup Main,
    MatWork Work = MatWork.Throwing,
    MatWork BeginnersWork = MatWork.Technique,
    int ModuleCm = 100,
    int BorderCm = 0,
    IReadOnlyList<MatObstacle>? Obstacles = null,
    MatRules? Rules = null);
