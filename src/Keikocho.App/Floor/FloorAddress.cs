namespace Keikocho.App.Floor;

/// <summary>Addresses of the mat plan.</summary>
public static class FloorAddress
{
    /// <summary>The page.</summary>
    public const string Page = "/mat-plan";

    /// <summary>The plan of one lesson.</summary>
    public static string Of(Guid lesson) => $"{Page}?lesson={lesson:D}";
}
