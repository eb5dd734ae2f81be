namespace Keikocho.App.Club;

/// <summary>Addresses of the club's page.</summary>
public static class ClubAddress
{
    /// <summary>The page.</summary>
    public const string Page = "/club";

    /// <summary>Name, zone, units, usual paper.</summary>
    public const string About = "/club/about";

    /// <summary>A hall and its mat.</summary>
    public const string Hall = "/club/hall";

    /// <summary>Where the ambulance goes.</summary>
    public const string Place = "/club/place";

    /// <summary>Whom to ring about a child's welfare.</summary>
    public const string Welfare = "/club/welfare";

    /// <summary>Something that stands at a mat.</summary>
    public const string AddObstacle = "/club/obstacles/add";

    /// <summary>It stands there no more.</summary>
    public const string RemoveObstacle = "/club/obstacles/remove";

    /// <summary>A new programme.</summary>
    public const string AddProgramme = "/club/programmes/add";

    /// <summary>A programme's name and figures.</summary>
    public const string ChangeProgramme = "/club/programmes/change";

    /// <summary>A new weekly hour.</summary>
    public const string AddHour = "/club/hours/add";

    /// <summary>Falls and half time of a weekly hour.</summary>
    public const string ChangeHour = "/club/hours/change";

    /// <summary>The end of a weekly hour.</summary>
    public const string EndHour = "/club/hours/end";

    /// <summary>A new term.</summary>
    public const string AddTerm = "/club/terms/add";

    /// <summary>A new closure.</summary>
    public const string AddClosure = "/club/closures/add";

    /// <summary>Takes a closure back.</summary>
    public const string RemoveClosure = "/club/closures/remove";

    /// <summary>A new promotion test.</summary>
    public const string AddTest = "/club/tests/add";

    /// <summary>Removes a promotion test.</summary>
    public const string RemoveTest = "/club/tests/remove";

    /// <summary>A new adult or leader.</summary>
    public const string AddAdult = "/club/adults/add";

    /// <summary>The dates of a duty.</summary>
    public const string ChangeAdult = "/club/adults/change";

    /// <summary>The end of a duty.</summary>
    public const string EndAdult = "/club/adults/end";

    /// <summary>Whether an assistant may confirm falls.</summary>
    public const string ConfirmFalls = "/club/adults/falls";

    /// <summary>A setting of a sum.</summary>
    public const string Set = "/club/settings";

    /// <summary>The calendar feed.</summary>
    public const string Feed = "/club/calendar.ics";

    /// <summary>The id of the one entry whose form was asked for.</summary>
    public const string Asked = "asked";

    /// <summary>The page with the form of one entry of a long list, at that entry.</summary>
    public static string Edit(string entry) => $"{Page}?edit={entry}#{Asked}";

    /// <summary>The page at one of its parts.</summary>
    public static string At(string part) => $"{Page}#{part}";
}
