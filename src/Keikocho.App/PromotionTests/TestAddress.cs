namespace Keikocho.App.PromotionTests;

/// <summary>Addresses of the promotion tests.</summary>
public static class TestAddress
{
    /// <summary>The tests.</summary>
    public const string Page = "/promotion-tests";

    /// <summary>One test, as a route.</summary>
    public const string TestRoute = "/promotion-tests/{id:guid}";

    /// <summary>One child at one test, as a route.</summary>
    public const string ChildRoute = "/promotion-tests/{id:guid}/children/{person:guid}";

    /// <summary>One test.</summary>
    public static string Of(Guid test) => $"{Page}/{test:D}";

    /// <summary>One child at one test.</summary>
    public static string Child(Guid test, Guid person) => $"{Of(test)}/children/{person:D}";

    /// <summary>What a form of one test posts to.</summary>
    public static string Post(Guid test, string form) => $"{Of(test)}/{form}";

    /// <summary>What a form of one child at one test posts to.</summary>
    public static string Post(Guid test, Guid person, string form) => $"{Child(test, person)}/{form}";
}
