namespace Keikocho.App.Register;

/// <summary>Addresses of the register.</summary>
public static class RegisterAddress
{
    /// <summary>The page.</summary>
    public const string Page = "/register";

    /// <summary>A tap.</summary>
    public const string Mark = "/register/mark";

    /// <summary>Undo of the last tap.</summary>
    public const string Undo = "/register/undo";

    /// <summary>"The rest are absent."</summary>
    public const string Rest = "/register/rest-absent";

    /// <summary>The child who has just walked in.</summary>
    public const string New = "/register/new";

    /// <summary>The page of one lesson.</summary>
    public static string Of(Guid lesson, bool afterwards = false) => $"{Page}?lesson={lesson:D}{(afterwards ? "&afterwards=yes" : "")}";
}
