namespace Keikocho.App.Sizes;

/// <summary>Addresses of the lock and of sizes.</summary>
public static class SizesAddress
{
    /// <summary>Sizes of a register.</summary>
    public const string Page = "/sizes";
    /// <summary>The size of one child, as a route.</summary>
    public const string ChildRoute = "/sizes/{id:guid}";
    /// <summary>Where sizes are posted.</summary>
    public const string Enter = "/sizes/enter";
    /// <summary>The club's lock.</summary>
    public const string Lock = "/lock";
    /// <summary>Makes the lock.</summary>
    public const string Make = "/lock/make";
    /// <summary>The recovery key on paper, posted by the page that shows it.</summary>
    public const string KeyPaper = "/lock/recovery-key.pdf";
    /// <summary>Opens it.</summary>
    public const string Open = "/lock/open";
    /// <summary>Shuts it.</summary>
    public const string Shut = "/lock/shut";
    /// <summary>Sets another passphrase.</summary>
    public const string Change = "/lock/change";

    /// <summary>One child.</summary>
    public static string Of(Guid person) => $"{Page}/{person:D}";
}
