namespace Keikocho.App.Knocks;

/// <summary>Addresses of knocks.</summary>
public static class KnockAddress
{
    /// <summary>First aid, a knock to enter, and those of the evening.</summary>
    public const string Page = "/knocks";

    /// <summary>Enters a knock.</summary>
    public const string Mark = "/knocks/mark";

    /// <summary>Enters a near miss.</summary>
    public const string NearMiss = "/knocks/near-miss";

    /// <summary>One knock, as a route.</summary>
    public const string OneRoute = "/knocks/{id:guid}";

    /// <summary>The slip, as a route.</summary>
    public const string SlipRoute = "/knocks/{id:guid}/slip.pdf";

    /// <summary>The accident record, as a route.</summary>
    public const string RecordRoute = "/knocks/{id:guid}/record.pdf";

    /// <summary>Those of the evening of a lesson.</summary>
    public static string OfLesson(Guid lesson) => $"{Page}?lesson={lesson:D}";

    /// <summary>One knock.</summary>
    public static string Of(Guid knock) => $"{Page}/{knock:D}";

    /// <summary>What a form of one knock posts to.</summary>
    public static string Post(Guid knock, string form) => $"{Of(knock)}/{form}";

    /// <summary>The slip, on the club's usual paper.</summary>
    public static string Slip(Guid knock) => $"{Of(knock)}/slip.pdf";

    /// <summary>The accident record, on the club's usual paper.</summary>
    public static string Record(Guid knock) => $"{Of(knock)}/record.pdf";
}
