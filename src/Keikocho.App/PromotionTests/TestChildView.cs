using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Attendance;
using Keikocho.Core.Kernel;
using Keikocho.Core.Readiness;
using Keikocho.Core.Safety;
using Keikocho.Store.Calendar;

namespace Keikocho.App.PromotionTests;

/// <summary>One child at one test, with every reason.</summary>
/// <param name="Test">The test.</param>
/// <param name="Programme">Its programme.</param>
/// <param name="Child">Question and answer.</param>
/// <param name="Reasons">Every rule, figure and date of what is counted or missing; what is for the instructor alone is not in it for anybody else.</param>
/// <param name="Settings">The settings used.</param>
public sealed record TestChildView(
    PromotionTestRow Test, ProgrammeRow Programme, TestChild Child, ImmutableArray<string> Reasons, ImmutableArray<UsedSetting> Settings)
{
    /// <summary>What is good already and which falls are open: many lines that ask nothing of anybody.</summary>
    public ImmutableArray<string> Fulfilled => [.. Child.Answer.Reasons.Where(IsFulfilled).Select(r => r.Sentence)];

    private static bool IsFulfilled(Reason reason) => reason is StageIsOpen or ItemCounted { Missing: 0 } or FallCounted { Missing: 0 };

    /// <summary>What the settings of a verdict mean.</summary>
    public static IReadOnlyList<Setting> Known { get; } =
        [.. ReadinessRule.Settings, .. FallGateRule.Settings, .. Core.Calendar.ClockRule.Settings, .. PriorRule.Settings];

    /// <summary>Reads it; null when there is no such test to come, or the child is not on its list.</summary>
    public static TestChildView? Of(OpenClub club, TestReckoning tests, Guid test, Guid person)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(tests);
        if (club.Book.Tests.FirstOrDefault(t => t.Id == test && t.Date >= club.Today) is not { } row) return null;
        var list = tests.Of(club, row);
        if (list.Children.FirstOrDefault(c => c.Person.Id == person) is not { } child) return null;
        return new TestChildView(row, list.Programme, child, ReasonsOf(child.Answer, club.InstructorActs), UsedSetting.Of(child.Answer.Settings, Known));
    }

    /// <summary>Every reason; the chance only for an instructor.</summary>
    public static ImmutableArray<string> ReasonsOf(ReadinessAnswer answer, bool instructor)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return [.. answer.Reasons.Where(r => !IsFulfilled(r) && (instructor || r is not ChanceOfLessons)).Select(r => r.Sentence)];
    }
}
