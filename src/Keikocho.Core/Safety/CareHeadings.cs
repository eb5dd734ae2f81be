namespace Keikocho.Core.Safety;

/// <summary>The headings under which a hall keeps what it needs to know of a child in an emergency. Stored by number.</summary>
public enum CareHeading
{
    /// <summary>What the child is allergic to.</summary>
    Allergies = 1,
    /// <summary>An inhaler, or a medicine.</summary>
    Medicine = 2,
    /// <summary>Fits or fainting.</summary>
    Fits = 3,
    /// <summary>Anything else that an adult must know at once.</summary>
    Other = 4,
    /// <summary>What the family or a doctor says is to be done.</summary>
    WhatToDo = 5,
}

/// <summary>A heading in words.</summary>
/// <param name="Heading">Which.</param>
/// <param name="Words">As it stands on the page and in the red folder.</param>
/// <param name="Ask">What to ask the family.</param>
public sealed record CareHeadingWords(CareHeading Heading, string Words, string Ask);

/// <summary>The headings of care notes, in the order in which they are read out. Ours, no source: what a hall asks a family before the first lesson.</summary>
public static class CareHeadings
{
    /// <summary>The longest note: a few lines, read standing.</summary>
    public const int LongestNote = 400;

    /// <summary>All of them.</summary>
    public static IReadOnlyList<CareHeadingWords> All { get; } =
    [
        new(CareHeading.Allergies, "Allergies", "To what, what is seen, and how fast."),
        new(CareHeading.Medicine, "Inhaler or medicine", "Which, where it is kept tonight, and when it is used."),
        new(CareHeading.Fits, "Fits or fainting", "What is seen, how long it lasts, and when to ring."),
        new(CareHeading.Other, "Other care", "Anything else an adult in the hall has to know at once."),
        new(CareHeading.WhatToDo, "What to do", "In the family’s words, or the doctor’s: first this, then that."),
    ];

    /// <summary>A heading in words.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such heading.</exception>
    public static string Words(CareHeading heading) =>
        All.FirstOrDefault(h => h.Heading == heading)?.Words ?? throw new ArgumentOutOfRangeException(nameof(heading), heading, "There is no such heading.");
}
