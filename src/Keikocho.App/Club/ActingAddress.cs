namespace Keikocho.App.Club;

/// <summary>Where a device chooses the adult who acts on it.</summary>
public static class ActingAddress
{
    /// <summary>The page and the endpoint.</summary>
    public const string Page = "/acting";

    /// <summary>The page, and the way back from it.</summary>
    public static string From(string back) => $"{Page}?from={Uri.EscapeDataString(back)}";
}
