namespace Keikocho.App.Mat;

/// <summary>Addresses of the tablet on the mat.</summary>
public static class MatAddress
{
    /// <summary>The page: one for everybody, with nothing of anybody, so that a tablet may keep it.</summary>
    public const string Page = "/mat";
    /// <summary>What this tablet may know of its evening.</summary>
    public const string Evening = "/mat/evening";
    /// <summary>What each child still lacks, and the ready phrases: for an instructor's tablet.</summary>
    public const string Lacks = "/mat/lacks";
    /// <summary>A token for handing in, when the evening is over.</summary>
    public const string Token = "/mat/token";
    /// <summary>Where an adult opens, with a code, what only adults may see of one child.</summary>
    public const string Adult = "/mat/adult";
    /// <summary>Where marks are handed in.</summary>
    public const string Marks = "/mat/marks";
}
