using Keikocho.Core.Calendar;

namespace Keikocho.App.Students;

/// <summary>What is to be seen again, in the words of the mat.</summary>
public static class ReturnWords
{
    /// <summary>The words.</summary>
    public static string Of(SeeAgain thing) => thing switch
    {
        SeeAgain.Falls => "falls: one clean a stage lower, then one at the stage; until then not thrown",
        SeeAgain.StopWord => "the stop word",
        SeeAgain.HoldsBeforeThrows => "holds before throws",
        SeeAgain.NoFreePractice => "no free practice at the first lesson",
        _ => throw new ArgumentOutOfRangeException(nameof(thing), thing, "There is no such thing to see."),
    };
}
