using Keikocho.Core.Syllabus;

namespace Keikocho.Store.Syllabus;

/// <summary>What came of beginning a draft.</summary>
public abstract record StartOutcome
{
    private StartOutcome()
    {
    }

    /// <summary>Begun.</summary>
    /// <param name="Draft">Its id.</param>
    public sealed record Begun(Guid Draft) : StartOutcome;

    /// <summary>The ladder has a draft already; nothing was changed.</summary>
    /// <param name="Draft">Its id.</param>
    public sealed record AlreadyThere(Guid Draft) : StartOutcome;

    /// <summary>There is no such programme.</summary>
    public sealed record NoProgramme : StartOutcome;
}

/// <summary>What came of a change to a draft.</summary>
public enum StepOutcome
{
    /// <summary>Stored.</summary>
    Stored,
    /// <summary>Another step was stored since the page was shown; nothing was changed.</summary>
    Stale,
    /// <summary>There is no such draft any more.</summary>
    Gone,
    /// <summary>The draft is as it was already; nothing was changed.</summary>
    TheSame,
    /// <summary>There is nothing left to take back but the draft itself.</summary>
    FirstStep,
}

/// <summary>What came of publishing.</summary>
public abstract record PublishOutcome
{
    private PublishOutcome()
    {
    }

    /// <summary>Published.</summary>
    /// <param name="Edition">Its id.</param>
    /// <param name="Kept">Ranks that somebody wore once and that are not in it: they stay in the rank history.</param>
    public sealed record Published(Guid Edition, IReadOnlyList<string> Kept) : PublishOutcome;

    /// <summary>Not published: faults of the edition, a day that cannot be, ranks that are worn and not in it.</summary>
    /// <param name="Sentences">Each says what is wrong and what to do.</param>
    public sealed record Refused(IReadOnlyList<string> Sentences) : PublishOutcome;

    /// <summary>Another step was stored since the page was shown.</summary>
    public sealed record Stale : PublishOutcome;

    /// <summary>There is no such draft any more.</summary>
    public sealed record Gone : PublishOutcome;
}

/// <summary>A draft as it stands.</summary>
/// <param name="Id">The edition that it will be.</param>
/// <param name="LadderId">Its ladder.</param>
/// <param name="Edition">The whole draft after the last step.</param>
/// <param name="Steps">Every step, oldest first.</param>
public sealed record EditionDraft(Guid Id, Guid LadderId, Edition Edition, IReadOnlyList<DraftStep> Steps)
{
    /// <summary>Number of the last step.</summary>
    public int Step => Steps[^1].Number;
}

/// <summary>One step of a draft, without its document.</summary>
/// <param name="Number">From 1, rising.</param>
/// <param name="Said">What it did.</param>
/// <param name="MadeAt">When.</param>
/// <param name="ById">By whom.</param>
public sealed record DraftStep(int Number, string Said, DateTimeOffset MadeAt, Guid? ById);
