namespace Keikocho.Core.Intake;

/// <summary>What became of a cell.</summary>
public enum Fate
{
    /// <summary>Read into a value.</summary>
    Read,
    /// <summary>A title or a header: read to understand the rest.</summary>
    Heading,
    /// <summary>Recognised, named and not kept: medical, sizes, a line that was set aside, a person who was erased.</summary>
    SetAside,
    /// <summary>Not read, with the reason.</summary>
    Ignored,
}

/// <summary>What became of one cell, so that nothing in a file is lost without a word.</summary>
/// <param name="Row">Row, from 1.</param>
/// <param name="Column">Column, from 1.</param>
/// <param name="Fate">What became of it.</param>
/// <param name="Why">The reason, in a few words; never the cell's own text.</param>
public readonly record struct CellFate(int Row, int Column, Fate Fate, string Why);
