using System.Text.Json;
using Keikocho.Core.Attendance;
using Keikocho.Core.Calendar;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Mat;
using Keikocho.Core.Names;
using Keikocho.Core.Partners;
using Keikocho.Core.Readiness;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Command;

/// <summary>What came of a question in JSON. A closed set.</summary>
public abstract record QuestionOutcome
{
    private QuestionOutcome()
    {
    }

    /// <summary>The sum was done.</summary>
    /// <param name="Json">The answer.</param>
    public sealed record Answered(string Json) : QuestionOutcome;

    /// <summary>The question cannot be answered as it stands.</summary>
    /// <param name="Sentence">What, where and what to do, in one sentence.</param>
    public sealed record Refused(string Sentence) : QuestionOutcome;

    /// <summary>There is no sum of that name.</summary>
    public sealed record NoSuchSum : QuestionOutcome;
}

/// <summary>The sums by the name of their command, JSON in and JSON out.</summary>
public static class AnswerQuestion
{
    /// <summary>The names, in the order to list them.</summary>
    public static IReadOnlyList<string> Names { get; } = ["clock", "attendance", "roll", "adults", "names", "gate", "standdown", "weight", "sheet", "readiness", "pair", "falls", "card", "mat", "merge", "knock"];

    /// <summary>Does the sum called <paramref name="name"/> on the question <paramref name="json"/>.</summary>
    /// <param name="name">The sum.</param>
    /// <param name="json">The question.</param>
    /// <param name="library">Names to look among where a question about names gives none; null where there is no library.</param>
    public static QuestionOutcome Answer(string name, string json, Func<IReadOnlyList<KnownName>>? library = null)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(json);
        return name switch
        {
            "clock" => Do<ClockSnapshot, ClockAnswer>(json, Clock.Reckon),
            "attendance" => Do<AttendanceSnapshot, AttendanceAnswer>(json, ReckonAttendance.Reckon),
            "roll" => Do<RollSnapshot, RollAnswer>(json, Roll.Take),
            "adults" => Do<AdultsSnapshot, AdultsAnswer>(json, EnoughAdults.Count),
            "names" => Do<NamesSnapshot, NamesAnswer>(json, q => ResolveNames.Resolve(q.Names is null && library is not null ? q with { Names = library() } : q)),
            "gate" => Do<FallGateSnapshot, FallGateAnswer>(json, FallGate.Reckon),
            "standdown" => Do<StandDownsSnapshot, StandDownsAnswer>(json, StandDowns.Read),
            "weight" => Do<WeightSnapshot, WeightAnswer>(json, WeightSlips.Judge),
            "sheet" => Do<SheetSnapshot, RequirementSheet>(json, MakeSheet.Make),
            "readiness" => Do<ReadinessSnapshot, ReadinessAnswer>(json, ReckonReadiness.Reckon),
            "knock" => Do<HeadKnockSnapshot, HeadKnockAnswer>(json, HeadKnock.Reckon),
            "pair" => Do<PartnersQuestion, PartnersAnswer>(json, PairsTonight.Make),
            "falls" => Do<FallsQuestion, FallsAnswer>(json, FallsTonight.Reckon),
            "card" => Do<CardSnapshot, EndCard>(json, MakeCard.Make),
            "mat" => Do<MatSnapshot, MatPlan>(json, PlanMat.Plan),
            "merge" => Do<MergeSnapshot, MergeResult>(json, MergeMarks.Merge),
            _ => new QuestionOutcome.NoSuchSum(),
        };
    }

    private static QuestionOutcome Do<TQuestion, TAnswer>(string json, Func<TQuestion, TAnswer> sum)
        where TQuestion : class
    {
        try
        {
            return new QuestionOutcome.Answered(SumJson.Write(sum(SumJson.Read<TQuestion>(json))));
        }
        catch (JsonException fault)
        {
            return new QuestionOutcome.Refused(SumJson.Sentence(fault));
        }
        catch (ArgumentException fault)
        {
            return new QuestionOutcome.Refused(Plain(fault.Message));
        }
        catch (OverflowException)
        {
            return new QuestionOutcome.Refused("A figure of the question is too large to reckon with; mend it.");
        }
    }

    /// <summary>The message without the names of parameters, which mean nothing to the person who wrote the question.</summary>
    private static string Plain(string message)
    {
        var end = message.IndexOf(" (Parameter", StringComparison.Ordinal);
        return end < 0 ? message : message[..end];
    }
}
