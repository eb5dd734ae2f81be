namespace Keikocho.App.Shared.Parts;

/// <summary>What a stamp in the register says.</summary>
public enum StampKind
{
    /// <summary>Present.</summary>
    Present,

    /// <summary>Came late.</summary>
    Late,

    /// <summary>Left early.</summary>
    LeftEarly,

    /// <summary>Absent, and told us.</summary>
    Told,

    /// <summary>Absent, and nobody told us.</summary>
    Absent,

    /// <summary>Not marked, or still to come.</summary>
    None,
}
