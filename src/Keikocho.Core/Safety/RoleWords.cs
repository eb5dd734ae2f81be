namespace Keikocho.Core.Safety;

/// <summary>What a child does tonight, as a card prints it. No word of these gives a reason.</summary>
public static class RoleWords
{
    /// <summary>Everything.</summary>
    public const string ThrowsAndIsThrown = "throws and is thrown";

    /// <summary>Throws and is not thrown.</summary>
    public const string ToriOnly = "tori only";

    /// <summary>No partner.</summary>
    public const string MovementAlone = "movement alone";

    /// <summary>Beside the mat.</summary>
    public const string Watches = "watches";
}
