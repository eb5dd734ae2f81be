using System.Globalization;
using Keikocho.Core.Attendance;
using Keikocho.Core.Calendar;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;

namespace Keikocho.Core.Readiness;

/// <summary>The verdict from what was found, and its words.</summary>
internal static class ReadinessAnswers
{
    private const int MostPhrases = 3;

    private static readonly SettingUsed ProposedLikely = new PriorRule().Used()[^1];

    public static ReadinessAnswer Of(
        ReadinessFrame frame, TimeAndPapers time, FallGateAnswer? gates, List<StageGate> used, LineReach[] lines, StandDownStands[] standDowns)
    {
        var evenings = 0;
        var met = 0;
        foreach (var line in lines)
        {
            evenings = Math.Max(evenings, line.Standing.EveningsMissing);
            met += line.Standing.Met ? 1 : 0;
        }

        List<Reason> shut = [.. standDowns.Where(s => !s.InTime)];
        List<Reason> against = [.. shut, .. time.Against];
        foreach (var line in lines.Where(l => !l.CanBeMet))
        {
            foreach (var reason in OutOfReach(frame, line))
            {
                against.Add(reason);
                if (line.IsSafety)
                    shut.Add(reason);
            }
        }

        var comeTo = Math.Max(time.Needed, evenings);
        var allMet = met == lines.Length;
        var reckoned = against.Count > 0 ? ReadyWord.NotThisTime
            : allMet && time.Needed == 0 && time.Papers.Count == 0 && standDowns.Length == 0 && frame.Parts.AfterKnock is null ? ReadyWord.PutForward
            : ReadyWord.If;
        IReadOnlyList<Reason> conditions = reckoned switch
        {
            ReadyWord.PutForward => [],
            ReadyWord.If => Conditions(frame, time, lines, standDowns, comeTo),
            _ => [.. against, .. AfterKnock(frame)],
        };

        string? refused = null;
        if (frame.Parts.Overrule is { } asked)
            refused = OverruleRule.Refusal(asked, reckoned, [.. OpenSafety(lines, standDowns, false), .. AfterKnock(frame).Select(k => k.Said)], OpenSafety(lines, standDowns, true));
        var overrule = refused is null ? frame.Parts.Overrule : null;
        var verdict = overrule?.To ?? reckoned;
        var forecast = ForecastLessons.Of(frame, comeTo);
        return new ReadinessAnswer(
            verdict, reckoned, shut, [.. standDowns, .. time.Reasons], TimeSaid(frame, time, standDowns, comeTo, reckoned),
            ItemsSaid(frame, lines, met, reckoned), [.. lines.Select(l => l.Standing)], met, time.Needed, evenings, frame.LessonsLeft, conditions, forecast,
            frame.Parts.NextTestOn, overrule, refused,
            Reasons(frame, time, gates, used, lines, standDowns, reckoned, overrule, refused, forecast, comeTo), Settings(frame, time));
    }

    private static IEnumerable<Reason> OutOfReach(ReadinessFrame frame, LineReach line)
    {
        foreach (var i in line.Chosen)
        {
            var item = line.Standing.Line.Items[i].Item;
            var missing = line.Standing.Items[i].EveningsMissing;
            if (missing == 0 || StandLine.CanBeSeen(frame, item.Kind, missing, line.Standing.Line.Critical))
                continue;
            var left = frame.EveningsAfter(frame.Blocks.Of(item.Kind));
            yield return new OutOfReach(StandFall.NameOf(line.Standing.Items[i]), item.Kind, missing, left, missing <= left ? frame.FreshFrom : null);
        }
    }

    private static List<Reason> Conditions(ReadinessFrame frame, TimeAndPapers time, LineReach[] lines, StandDownStands[] standDowns, int comeTo)
    {
        List<Reason> conditions = [.. standDowns, .. AfterKnock(frame)];
        if (time.Needed > 0)
            conditions.Add(new ComeTo(comeTo, frame.Evenings, frame.LessonsLeft, frame.AsOf));
        foreach (var line in lines)
        {
            foreach (var i in line.Chosen.Order())
            {
                var standing = line.Standing.Items[i];
                if (standing.IsMet)
                    continue;
                var kind = line.Standing.Line.Items[i].Item.Kind;
                var until = frame.Blocks.Of(kind);
                var reason = new ToBeSeen(
                    StandFall.NameOf(standing), kind, standing.EveningsMissing, frame.EveningsAfter(until), until > frame.AsOf ? until : null,
                    standing.EveningsGood > 0 && standing.Word != ItemStandingWord.FallShut,
                    line.Chosen.Length < line.Standing.Items.Count && line.Standing.Items.Count(s => !s.IsMet) > line.Chosen.Count(c => !line.Standing.Items[c].IsMet),
                    frame.AsOf);

                // The same item on two lines is seen once.
                if (!conditions.Contains(reason))
                    conditions.Add(reason);
            }
        }

        conditions.AddRange(time.Papers);
        return conditions;
    }

    private static List<string> OpenSafety(LineReach[] lines, StandDownStands[] standDowns, bool outOfReach)
    {
        List<string> open = [.. standDowns.Where(s => !outOfReach || !s.InTime).Select(s => s.Said)];
        foreach (var line in lines)
        {
            if (line.IsSafety && !line.Standing.Met && (!outOfReach || !line.CanBeMet))
                open.Add(line.Standing.Said!);
        }

        return open;
    }

    private static WordsOnlyOrMoved[] AfterKnock(ReadinessFrame frame) => frame.Parts.AfterKnock is { } after ? [after] : [];

    private static string TimeSaid(ReadinessFrame frame, TimeAndPapers time, StandDownStands[] standDowns, int comeTo, ReadyWord reckoned)
    {
        var said = new List<string>();
        said.AddRange(standDowns.Select(s => s.Said));
        said.AddRange(AfterKnock(frame).Select(k => k.Said));
        var attended = frame.Parts.Clock.Attended;
        var ofAll = time.Minimum == 0
            ? Words.Count(attended, "lesson")
            : $"{attended.ToString(CultureInfo.InvariantCulture)} of {Words.Count(time.Minimum, "lesson")}";
        var left = frame.LessonsAfter(frame.Blocks.MatUntil);
        if (time.Needed > left)
            said.Add($"{ofAll}, {left.ToString(CultureInfo.InvariantCulture)} left: {(time.Needed - left).ToString(CultureInfo.InvariantCulture)} short");
        else if (time.Needed > 0)
            said.Add($"{ofAll}; if the child comes to {ReadinessPhrases.OfLeft(Math.Min(left, comeTo), left, "lesson")}");
        else if (standDowns.Length == 0)
            said.Add(ofAll);
        said.AddRange(time.Late);
        if (time.Registration is { } registration && (!registration.Holds || (said.Count == 1 && time.Needed == 0 && standDowns.Length == 0 && reckoned != ReadyWord.NotThisTime)))
            said.Add(registration.Said);
        if (time.Papers.OfType<AgeForTheTest>().Any())
            said.Add("no birth date is held");
        var phrase = string.Join("; ", said);
        return char.ToUpperInvariant(phrase[0]) + phrase[1..];
    }

    private static string ItemsSaid(ReadinessFrame frame, LineReach[] lines, int met, ReadyWord reckoned)
    {
        if (lines.Length == 0)
            return "nothing is asked";
        var said = $"{met.ToString(CultureInfo.InvariantCulture)} of {lines.Length.ToString(CultureInfo.InvariantCulture)} good";
        if (met == lines.Length)
            return lines.All(l => l.Standing.Items.All(i => i.Word == ItemStandingWord.Good && i.EveningsGood == 2))
                ? $"{said}, each on two evenings"
                : $"{said}, each on enough evenings";
        if (reckoned == ReadyWord.NotThisTime && met > 0)
            said += met == 1 ? ", and it stays" : ", and they stay";
        var open = lines.Where(l => !l.Standing.Met).ToArray();
        var phrases = open.Take(MostPhrases).Select(l => l.Standing.Said!);
        said = $"{said}; {string.Join("; ", phrases)}";
        return open.Length > MostPhrases ? $"{said}; and {Words.Count(open.Length - MostPhrases, "more line")}" : said;
    }

    private static List<Reason> Reasons(
        ReadinessFrame frame, TimeAndPapers time, FallGateAnswer? gates, List<StageGate> used, LineReach[] lines, StandDownStands[] standDowns,
        ReadyWord reckoned, Overrule? overrule, string? refused, Forecast forecast, int comeTo)
    {
        // What this sum says itself is not said twice by the clock: the clock may have been asked by another rule.
        var reasons = new List<Reason>(frame.Parts.Clock.Reasons.Where(r => r is not (NeededAndLeft or WeeksAreFull or NextTestIs or ExpectedOfLeft)));
        reasons.AddRange(time.Reasons);
        reasons.AddRange(standDowns);
        reasons.AddRange(AfterKnock(frame));
        reasons.AddRange(frame.Parts.Sheet.LeftOut);
        reasons.AddRange(SameReason.Together(used.Select(g => g.Because).Distinct()));
        if (gates is { Suggestions: > 0 })
            reasons.Add(new RuleOfTheRank($"{Words.Count(gates.Suggestions, "fall")} marked by a leader {(gates.Suggestions == 1 ? "waits" : "wait")} for an instructor and {(gates.Suggestions == 1 ? "counts" : "count")} nothing yet."));
        foreach (var line in lines)
            reasons.AddRange(line.Standing.Items.Select(i => i.Because));
        if (frame.Evenings.Length > 0)
            reasons.Add(new RuleOfTheRank(
                $"{Words.Count(frame.LessonsLeft, "lesson")} {Words.Is(frame.LessonsLeft)} left before the test: {ReadinessPhrases.Days(frame.Evenings, frame.AsOf)}. What is missing may be seen on the same evening."));
        if (overrule is not null)
            reasons.Add(new OverruledBy(overrule, reckoned));
        if (refused is not null)
            reasons.Add(new OverruleDoesNotHold(refused));
        if (forecast.Days.Count > 0)
            reasons.Add(new ChanceOfLessons(forecast.Words, comeTo, frame.LessonsAfter(frame.Blocks.MatUntil), frame.Parts.Clock.Attended, frame.Parts.Clock.Held));
        if ((overrule?.To ?? reckoned) == ReadyWord.NotThisTime)
            reasons.Add(new NextTestIs(frame.Parts.NextTestOn));
        return reasons;
    }

    private static SettingUsed[] Settings(ReadinessFrame frame, TimeAndPapers time)
    {
        var likely = ProposedLikely with { Value = frame.Parts.LikelyPercent.ToString(CultureInfo.InvariantCulture) };
        return
        [
            .. frame.Parts.Rule.Used(), .. frame.Parts.GateRule.Used(),
            .. frame.Parts.Clock.Settings.Where(s => time.Clock || s.Key == "clock.lessonsADay"), likely,
        ];
    }
}
