using Keikocho.App.PromotionTests;
using Keikocho.App.Shared;
using Keikocho.Core.Readiness;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.App.Mat;

/// <summary>
/// The words of a verdict that may stand on a tablet. They are chosen here, one by one: the answer's own sentences also hold whose word
/// lifts a stand-down, why time was taken off, and why an adult decided otherwise, and those stay on the laptop.
/// </summary>
internal static class LackWords
{
    /// <summary>One child of the list.</summary>
    public static MatChildLacks Of(TestChild child, bool hasTest)
    {
        var answer = child.Answer;
        var open = answer.Lines.Where(l => !l.Met && l.Said is not null).ToLookup(l => l.Line.Part == SheetPart.Falls, l => TestView.Capital(l.Said!));
        return new MatChildLacks(
            child.Person.Id,
            child.Target?.Name ?? "",
            hasTest && child.Target is not null ? TestView.Capital(VerdictWords.Of(answer.Verdict)) : "",
            [.. Says(child, hasTest)],
            [.. open[true]],
            [.. open[false]]);
    }

    /// <summary>A child who wears the highest rank.</summary>
    public static MatChildLacks AtTheTop(Guid child) => new(child, "", "", ["The highest rank is worn: there is nothing to be tested for."], [], []);

    /// <summary>A child of the register who is not at the next test.</summary>
    public static MatChildLacks NotAtIt(Guid child) => new(child, "", "", ["Not at the next test: started too late for it, or leaves before it."], [], []);

    private static IEnumerable<string> Says(TestChild child, bool hasTest)
    {
        var answer = child.Answer;
        if (child.Target is null) yield return "What the next rank asks is not known: no syllabus holds on the day.";
        else if (answer.Lines.Count == 0) yield return "Nothing has to be shown for it.";
        else yield return answer.LinesMet == answer.Lines.Count ? "Everything that is asked is good." : $"{answer.LinesMet} of {Counted.Of(answer.Lines.Count, "line")} good.";
        foreach (var scope in answer.Conditions.Concat(answer.Gates).OfType<StandDownStands>().Select(s => s.Scope).Distinct().Order()) yield return Standing(scope);
        if (hasTest)
        {
            foreach (var lessons in answer.Time.OfType<LessonsForTheTest>()) yield return lessons.Sentence;
            foreach (var months in answer.Time.OfType<MonthsAreFull>().Where(m => m.FullOn > m.TestOn)) yield return months.Sentence;
            // The day of a birthday stays on the laptop.
            if (answer.Time.OfType<AgeForTheTest>().Any(a => a.Age is null || a.Age < a.Asked)) yield return "The age that is asked: see the laptop.";
            if (answer.Time.OfType<RegistrationForTheTest>().Any(r => !r.Holds)) yield return "The papers: see the laptop.";
        }

        if (answer.Overrule is not null && answer.Verdict != answer.Reckoned) yield return "An adult decided otherwise than the sum; why stands on the laptop.";
    }

    private static string Standing(StandDownScope scope) => scope switch
    {
        StandDownScope.NoFalls => "No falls for now.",
        StandDownScope.NoContact => "No contact for now.",
        StandDownScope.OffTheMat => "Off the mat for now.",
        // Which work that is would be a medical word.
        _ => "Some work is left out for now.",
    };
}
