namespace Keikocho.Core.Safety;

/// <summary>What a child does tonight, as a card prints it. No word of these gives a reason.</summary>
public static class RoleWords
{
    /// <summary>Everything.</summary>
    public const string ThrowsAndIsThrown = "throws and is thrown";

    /// <summary>Throws and is not thrown.</summary>
    public const string ToriOnly = "tori only";

    /// <summary>Turns in and does not throw; nobody throws it.</summary>
    public const string FitInOnly = "fit-in only";

    /// <summary>Open for a first drill and not for a free one.</summary>
    public const string LowAndSlowOnly = "throws; is thrown low and slow only";

    private const string OnlyStart = "throws; ", OnlyEnd = " only";

    /// <summary>"throws; is thrown backward only": open some ways and not others.</summary>
    public static string OneWayOnly(IReadOnlyList<FallWay> ways) => $"{OnlyStart}is thrown {FallWords.Together(ways)}{OnlyEnd}";

    /// <summary>Of such a role what comes after "throws": "is thrown backward only"; null of another.</summary>
    public static string? ThrownOnly(string role)
    {
        ArgumentNullException.ThrowIfNull(role);
        return role.StartsWith(OnlyStart, StringComparison.Ordinal) && role.EndsWith(OnlyEnd, StringComparison.Ordinal) ? role[OnlyStart.Length..] : null;
    }

    /// <summary>No partner.</summary>
    public const string MovementAlone = "movement alone";

    /// <summary>Beside the mat.</summary>
    public const string Watches = "watches";
}
