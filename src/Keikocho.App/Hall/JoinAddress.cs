namespace Keikocho.App.Hall;

/// <summary>Addresses of the hall's tablets.</summary>
public static class JoinAddress
{
    /// <summary>The laptop's page of its tablets.</summary>
    public const string Tablets = "/tablets";
    /// <summary>Opens and shuts the door.</summary>
    public const string Door = "/tablets/door";
    /// <summary>Makes an invitation.</summary>
    public const string Invite = "/tablets/invite";
    /// <summary>Sets an adult's code.</summary>
    public const string Code = "/tablets/code";
    /// <summary>Puts a tablet out.</summary>
    public const string PutOut = "/tablets/put-out";
    /// <summary>Where a tablet joins.</summary>
    public const string Page = "/join";
    /// <summary>Where a tablet goes once it is in.</summary>
    public const string AfterJoining = "/mat";
    /// <summary>How a tablet comes to trust the laptop.</summary>
    public const string Trust = "/join/trust";
    /// <summary>The authority's certificate.</summary>
    public const string Certificate = "/join/keikocho-hall.crt";

    /// <summary>What the square says, after the laptop's address.</summary>
    public static string Of(string token) => $"{Page}?square={token}";
}
