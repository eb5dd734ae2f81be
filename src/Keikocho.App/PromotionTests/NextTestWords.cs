using System.Collections.Immutable;
using System.Globalization;
using Keikocho.App.Shared;
using Keikocho.Core.Attendance;
using Keikocho.Core.Kernel;
using Keikocho.Core.Readiness;
using Keikocho.Core.Syllabus;

namespace Keikocho.App.PromotionTests;

/// <summary>One verdict as an instructor would say it of one child.</summary>
/// <param name="Lead">In bold: "Put forward", "If", "Not this time".</param>
/// <param name="Sentence">What follows it; empty for nothing.</param>
/// <param name="Rest">What else stands against it or is to be done, in sentences.</param>
public sealed record NextTestWords(string Lead, string Sentence, ImmutableArray<string> Rest)
{
    private const int MostInASentence = 2;

    /// <summary>Puts an answer into words.</summary>
    public static NextTestWords Of(string name, ReadinessAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        if (answer.Overrule is { } overrule)
            return new NextTestWords(Begin(answer.Verdict), $"as {overrule.By} decided: {overrule.Why.Trim().TrimEnd('.')}.", [$"The sum says {VerdictWords.Of(answer.Reckoned)}.", .. answer.Conditions.Select(c => c.Sentence)]);
        return answer.Verdict switch
        {
            ReadyWord.PutForward => new NextTestWords("Put forward:", "nothing is missing.", []),
            ReadyWord.If => If(name, answer),
            _ => new NextTestWords("Not this time.", answer.NextTestOn is { } next ? $"The next test is on {next.Full()}." : "No later test is set.", [.. answer.Conditions.Select(c => c.Sentence)]),
        };
    }

    private static string Begin(ReadyWord word) => $"{TestView.Capital(VerdictWords.Of(word))},";

    private static NextTestWords If(string name, ReadinessAnswer answer)
    {
        var seen = answer.Conditions.OfType<ToBeSeen>().ToList();
        ImmutableArray<string> rest = [.. answer.Conditions.Where(c => c is not (ComeTo or ToBeSeen)).Select(c => c.Sentence)];
        if (seen.Count > MostInASentence)
        {
            var come = answer.Conditions.OfType<ComeTo>().Select(c => $"{name} comes to {OfLeft(c.Needed, c.Left)}");
            return new NextTestWords("If", "all of these are done before the test:", [.. come, .. seen.Select(OnItsOwn), .. rest]);
        }

        var said = new List<string>();
        foreach (var condition in answer.Conditions)
        {
            if (condition is ComeTo come) said.Add($"comes to {OfLeft(come.Needed, come.Left)}");
        }

        foreach (var kind in seen.GroupBy(s => Seen(s.Kind)))
            said.Add($"{kind.Key} {Counted.List([.. kind.Select(On)])}");
        if (said.Count == 0) return new NextTestWords("If", rest.Length == 1 ? "this is done before the test:" : "these are done before the test:", rest);
        return new NextTestWords("If", $"{name} {(said.Count == 1 ? said[0] : $"{string.Join(", ", said.Take(said.Count - 1))}, and {said[^1]}")}.", rest);
    }

    private static string Seen(ItemKind kind) => kind switch
    {
        ItemKind.Fall => "falls clean at",
        ItemKind.Word or ItemKind.Question => "answers right",
        _ => "is seen good at",
    };

    private static string On(ToBeSeen seen) => $"{seen.Name} {Evenings(seen)}";

    // Names of items hold commas themselves, so many of them are said one a line.
    private static string OnItsOwn(ToBeSeen seen)
    {
        var word = seen.Kind switch { ItemKind.Fall => "clean", ItemKind.Word or ItemKind.Question => "right", _ => "good" };
        return $"{seen.Name}: {word} {Evenings(seen)}";
    }

    private static string Evenings(ToBeSeen seen)
    {
        var evenings = seen.Missing == 1 ? seen.IsMore ? "once more" : "on one evening" : $"on {seen.Missing.ToString(CultureInfo.InvariantCulture)} {(seen.IsMore ? "more " : "")}evenings";
        return seen.OrAnother ? $"{evenings} (or another of its line)" : evenings;
    }

    private static string OfLeft(int needed, int left) => needed == left
        ? left switch { 1 => "the one lesson left", 2 => "both lessons left", _ => $"all {left.ToString(CultureInfo.InvariantCulture)} lessons left" }
        : $"{needed.ToString(CultureInfo.InvariantCulture)} of the {left.ToString(CultureInfo.InvariantCulture)} lessons left";

    /// <summary>The chance by each lesson left: "17 November: about 7 in 10".</summary>
    public static ImmutableArray<(DateOnly On, string Words)> ByLesson(Forecast forecast)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        return [.. forecast.Days.Select(d => (d.On, ChanceWords.Of(d.Chance)))];
    }

    /// <summary>By when enough lessons are likely, in a sentence.</summary>
    public static string Likely(Forecast forecast)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        return forecast.LikelyOn is { } on ? $"Enough lessons are likely by {on.Full()}." : "Enough lessons are not likely before the test.";
    }
}
