namespace Keikocho.App.Shared.Parts;

/// <summary>A colour of cloth that the style sheet can draw.</summary>
public enum BeltCloth
{
    /// <summary>White.</summary>
    White,

    /// <summary>Yellow.</summary>
    Yellow,

    /// <summary>Orange.</summary>
    Orange,

    /// <summary>Green.</summary>
    Green,

    /// <summary>Blue.</summary>
    Blue,

    /// <summary>Brown.</summary>
    Brown,

    /// <summary>Black.</summary>
    Black,
}
