using Keikocho.App.People;

namespace Keikocho.App.ParentsPages;

/// <summary>Addresses of the parent's page.</summary>
public static class ParentsPageAddress
{
    /// <summary>The page, as a route.</summary>
    public const string Route = "/students/{id:guid}/parents-page";

    /// <summary>A page as it was told, as a route.</summary>
    public const string KeptRoute = "/students/{id:guid}/parents-page/{kept:guid}";

    /// <summary>Keeps the page as it is told, as a route.</summary>
    public const string KeepRoute = "/students/{id:guid}/parents-page/keep";

    /// <summary>Keeps the child's sheet as it is printed, as a route.</summary>
    public const string KeepSheetRoute = "/students/{id:guid}/sheet/keep";

    /// <summary>The page of one child for the next test.</summary>
    public static string Of(Guid child) => $"{StudentAddress.Of(child)}/parents-page";

    /// <summary>The page of one child for a test.</summary>
    public static string Of(Guid child, Guid test) => $"{Of(child)}?test={test:D}";

    /// <summary>A page as it was told.</summary>
    public static string Kept(Guid child, Guid kept) => $"{Of(child)}/{kept:D}";

    /// <summary>Where the button posts to.</summary>
    public static string Keep(Guid child) => $"{Of(child)}/keep";

    /// <summary>Where the other button posts to.</summary>
    public static string KeepSheet(Guid child) => $"{StudentAddress.Of(child)}/sheet/keep";
}
