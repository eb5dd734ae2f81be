using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>Whom to look at.</summary>
/// <param name="MoreThan">Longer than so many evenings without a look. Proposed 3 (ours, no source).</param>
/// <param name="Names">At most so many children. Proposed 3 (ours, no source).</param>
public sealed record LookAtRule(int MoreThan = 3, int Names = 3)
{
    private static readonly WholeNumberSetting Evenings = new("lookAt.moreThan", "Looked at again after more than so many evenings", 3, "evenings", 0, 30, Setting.Ours);
    private static readonly WholeNumberSetting Most = new("lookAt.names", "Children to look at on one evening, at each end", 3, "children", 1, 10, Setting.Ours);

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Evenings, Most];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() => [Evenings.Use(MoreThan), Most.Use(Names)];

    internal void Guard()
    {
        Evenings.Guard(MoreThan, nameof(MoreThan));
        Most.Guard(Names, nameof(Names));
    }
}

/// <summary>A child present.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Name">As called.</param>
/// <param name="Evenings">Evenings attended since an adult last marked something of it, tonight not counted.</param>
/// <param name="LessonsToTest">Lessons left before its test; null where none is near.</param>
public sealed record LookChild(string Key, string Name, int Evenings, int? LessonsToTest = null);

/// <summary>The question: whom has nobody looked at.</summary>
/// <param name="Children">Those present, in register order.</param>
/// <param name="Rule">The rule.</param>
public sealed record LookAtSnapshot(IReadOnlyList<LookChild> Children, LookAtRule Rule);

/// <summary>Whom to look at tonight.</summary>
/// <param name="Chosen">Keys, the longest first: so they were chosen. A page shows them in register order.</param>
/// <param name="InRegisterOrder">The same keys in register order.</param>
/// <param name="Reasons">One for each chosen, in that order; a sentence where there is nobody.</param>
/// <param name="Settings">The settings used.</param>
public sealed record LookAtAnswer(IReadOnlyList<string> Chosen, IReadOnlyList<string> InRegisterOrder, IReadOnlyList<Reason> Reasons, IReadOnlyList<SettingUsed> Settings);

/// <summary>Nobody looked at a child for some evenings.</summary>
/// <param name="Name">Who.</param>
/// <param name="Evenings">So many evenings.</param>
/// <param name="LessonsToTest">Lessons left before the test.</param>
public sealed record NotLookedAt(string Name, int Evenings, int? LessonsToTest) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"Nobody has marked anything of {Name} for {Words.Count(Evenings, "evening")}" + (LessonsToTest is { } left ? $"; {Words.Count(left, "lesson")} left before the test." : ".");
}

/// <summary>Everybody was looked at of late.</summary>
/// <param name="MoreThan">The setting.</param>
public sealed record EverybodyLookedAt(int MoreThan) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"Everybody here was looked at within the last {Words.Count(MoreThan, "evening")} of their own.";
}
