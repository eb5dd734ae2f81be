namespace Keikocho.App.CareNotes;

/// <summary>Addresses of care notes.</summary>
public static class CareAddress
{
    /// <summary>Whom to ask.</summary>
    public const string Page = "/care";

    /// <summary>One child, as a route.</summary>
    public const string ChildRoute = "/care/{id:guid}";

    /// <summary>One child.</summary>
    public static string Of(Guid person) => $"{Page}/{person:D}";

    /// <summary>The child's own page.</summary>
    public static string OwnPage(Guid person) => $"/students/{person:D}";

    /// <summary>What a form of one child posts to.</summary>
    public static string Post(Guid person, string form) => $"{Of(person)}/{form}";

    /// <summary>The register of a programme.</summary>
    public static string Programme(Guid programme) => $"{Page}?programme={programme:D}";
}
