using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>Plain words for scopes.</summary>
internal static class ScopeWords
{
    public static string Of(StandDownScope scope) => scope switch
    {
        StandDownScope.NoFalls => "No falls",
        StandDownScope.NoContact => "No contact",
        StandDownScope.OffTheMat => "Off the mat",
        _ => "Nothing that loads the neck",
    };
}

/// <summary>A stand-down stands.</summary>
/// <param name="Which">Which.</param>
/// <param name="On">The day asked about.</param>
public sealed record StandsDown(StandDown Which, DateOnly On) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var word = Which.WhoseWord is { } who ? $", until the word of {who}" : ", until a named adult lifts it with a reason";
            var review = Which.ReviewOn is not { } day ? ""
                : day <= On ? $"; the review of {day.Full()} is due, and it stands all the same"
                : $"; review on {day.Full()}, which ends nothing by itself";
            return $"{ScopeWords.Of(Which.Scope)} since {Which.From.Full()}{word}{review}.";
        }
    }
}

/// <summary>A stand-down was lifted; it stays in the history.</summary>
/// <param name="Which">Which.</param>
public sealed record StandDownLifted(StandDown Which) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"{ScopeWords.Of(Which.Scope)} from {Which.From.Full()} was lifted on {Which.LiftedOn!.Value.Full()}{Entered} by {Which.LiftedBy}: {Which.LiftedWhy!.TrimEnd('.')}.";

    private string Entered => Which.LiftEnteredOn is { } day && day > Which.LiftedOn ? $", entered on {day.Full()}," : "";
}

/// <summary>A stand-down begins later.</summary>
/// <param name="Which">Which.</param>
public sealed record StandDownToCome(StandDown Which) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"{ScopeWords.Of(Which.Scope)} from {Which.From.Full()} on; it has not begun.";
}

/// <summary>Nothing stands and nothing ever did.</summary>
/// <param name="On">The day asked about.</param>
public sealed record NothingStands(DateOnly On) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"No stand-down on {On.Full()}.";
}
