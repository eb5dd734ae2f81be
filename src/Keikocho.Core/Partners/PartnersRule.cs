using Keikocho.Core.Kernel;

namespace Keikocho.Core.Partners;

/// <summary>The rule of pairs. A club's own.</summary>
/// <param name="AgeLimit">Years between two who throw each other. Proposed 2 (common practice, no source).</param>
/// <param name="AgeLimitWithoutSize">Years between two of whom one has no size, in any activity. Proposed 1.</param>
/// <param name="YearCost">What a year between two costs. Proposed 3.</param>
/// <param name="LastClassCost">What it costs to have worked together in the last class. Proposed 5.</param>
/// <param name="StepCost">What a step of the ladder between two costs where a size is missing. Proposed 1.</param>
/// <param name="SizeMonths">A size older than so many months is named, to be taken again. Proposed 4.</param>
public sealed record PartnersRule(
    int AgeLimit = 2, int AgeLimitWithoutSize = 1, int YearCost = 3, int LastClassCost = 5, int StepCost = 1, int SizeMonths = 4)
{
    private const string Practice = "common practice, no source";

    private static readonly WholeNumberSetting Ages = new("partners.ageLimit", "Years between two who throw each other at most", 2, "years", 0, 20, Practice);
    private static readonly WholeNumberSetting Unsized = new("partners.ageLimitWithoutSize", "Years between two where a size is missing at most", 1, "years", 0, 20, Setting.Ours);
    private static readonly WholeNumberSetting Year = new("partners.yearCost", "A year between two costs", 3, "", 0, 1_000, Setting.Ours);
    private static readonly WholeNumberSetting Last = new("partners.lastClassCost", "Together in the last class costs", 5, "", 0, 1_000, Setting.Ours);
    private static readonly WholeNumberSetting Step = new("partners.stepCost", "A step of the ladder between two costs where a size is missing", 1, "", 0, 1_000, Setting.Ours);
    private static readonly WholeNumberSetting Months = new("partners.sizeMonths", "A size is old after", 4, "months", 1, 24, Setting.Ours);

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Ages, Unsized, Year, Last, Step, Months];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() =>
        [Ages.Use(AgeLimit), Unsized.Use(AgeLimitWithoutSize), Year.Use(YearCost), Last.Use(LastClassCost), Step.Use(StepCost), Months.Use(SizeMonths)];

    internal void Guard()
    {
        Ages.Guard(AgeLimit, nameof(AgeLimit));
        Unsized.Guard(AgeLimitWithoutSize, nameof(AgeLimitWithoutSize));
        Year.Guard(YearCost, nameof(YearCost));
        Last.Guard(LastClassCost, nameof(LastClassCost));
        Step.Guard(StepCost, nameof(StepCost));
        Months.Guard(SizeMonths, nameof(SizeMonths));
    }
}
