namespace Keikocho.Paper.Register;

/// <summary>The box for "handed over to the right adult".</summary>
public enum CollectionBox
{
    /// <summary>No box: the child is not here, or goes home alone.</summary>
    NoBox = 0,

    /// <summary>An empty box, to tick with a pen.</summary>
    Open = 1,

    /// <summary>Handed over; the box is ticked.</summary>
    Collected = 2,

    /// <summary>An empty box with "check with instructor"; never with a reason.</summary>
    CheckWithInstructor = 3,
}
