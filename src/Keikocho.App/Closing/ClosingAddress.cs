namespace Keikocho.App.Closing;

/// <summary>Addresses of closing an evening.</summary>
public static class ClosingAddress
{
    /// <summary>The page.</summary>
    public const string Page = "/close";

    /// <summary>Closes the evening.</summary>
    public const string Close = "/close/evening";

    /// <summary>Opens it again.</summary>
    public const string Open = "/close/open-again";

    /// <summary>Confirms what leaders suggested.</summary>
    public const string Confirm = "/close/confirm";

    /// <summary>The page of a lesson's evening.</summary>
    public static string Of(Guid lesson) => $"{Page}?lesson={lesson:D}";
}
