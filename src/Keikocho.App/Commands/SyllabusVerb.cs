using System.CommandLine;
using System.Globalization;
using Keikocho.Core.Kernel;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Starter;

namespace Keikocho.App.Commands;

/// <summary>
/// <c>keikocho syllabus check FILE</c> and <c>keikocho syllabus diff OLD NEW</c>: a syllabus file, read without a club. Nothing is written.
/// </summary>
public static class SyllabusVerb
{
    /// <summary>The verb itself.</summary>
    public static Command Build() => new("syllabus", "A syllabus file: whether it holds together, and what one changed against another")
    {
        Check(),
        Diff(),
    };

    private static Command Check()
    {
        var file = Name("FILE", "The syllabus, or - for the standard input; docs/formats/syllabus.md says how it is written");
        var json = Json();
        var verb = new Command("check", "Read a syllabus and say what is wrong, with the line") { file, json };
        verb.SetAction(async (parsed, stopping) =>
        {
            var from = parsed.GetValue(file)!;
            var reading = await ReadAsync(from, stopping);
            var output = parsed.InvocationConfiguration.Output;
            if (parsed.GetValue(json))
            {
                await output.WriteLineAsync(SumJson.Write(CheckAnswer.Of(reading)));
            }
            else if (reading is SyllabusReading.Read read)
            {
                foreach (var caution in read.Cautions)
                    await output.WriteLineAsync($"To look at: {caution.Sentence}");
                await output.WriteLineAsync(Summary(QuestionText.NameOf(from), read));
            }
            else if (reading is SyllabusReading.Faulty faulty)
            {
                foreach (var fault in faulty.Faults)
                    await output.WriteLineAsync(fault.ToString());
                await output.WriteLineAsync($"{Refusals.AtStart(QuestionText.NameOf(from))}: {Counted(faulty.Faults.Count, "fault", "faults")}; nothing was read.");
            }

            return reading is SyllabusReading.Read ? ExitCode.Done : ExitCode.Refused;
        });
        return verb;
    }

    private static Command Diff()
    {
        var older = Name("OLD", "The syllabus as it was");
        var newer = Name("NEW", "The syllabus as it is to be");
        var json = Json();
        var verb = new Command("diff", "Say what a syllabus changed against an older one") { older, newer, json };
        verb.SetAction(async (parsed, stopping) =>
        {
            var (before, after) = (parsed.GetValue(older)!, parsed.GetValue(newer)!);
            if (before == QuestionText.StandardInput && after == QuestionText.StandardInput)
                throw new WrongUsageException($"Only one of the two can come from the standard input. {CommandLine.SeeHelp(parsed)}");
            var changes = CompareEditions.Changes(await EditionAsync(before, stopping), await EditionAsync(after, stopping));
            var output = parsed.InvocationConfiguration.Output;
            if (parsed.GetValue(json))
            {
                await output.WriteLineAsync(SumJson.Write(new DiffAnswer(changes)));
                return ExitCode.Done;
            }

            foreach (var change in changes)
                await output.WriteLineAsync(change.Sentence);
            if (changes.Count == 0)
                await output.WriteLineAsync($"{Refusals.AtStart(QuestionText.NameOf(after))} asks the same as {QuestionText.NameOf(before)}.");
            return ExitCode.Done;
        });
        return verb;
    }

    private static Argument<string> Name(string name, string description) => new(name) { Description = description };

    private static Option<bool> Json() => new("--json") { Description = "Answer as JSON, for a script" };

    private static async Task<SyllabusReading> ReadAsync(string from, CancellationToken stopping) =>
        SyllabusText.Read(await QuestionText.ReadAsync(from, stopping, "syllabus"), from == QuestionText.StandardInput ? "standard input" : Path.GetFileName(from));

    private static async Task<Edition> EditionAsync(string from, CancellationToken stopping) => await ReadAsync(from, stopping) switch
    {
        SyllabusReading.Read read => read.Edition,
        SyllabusReading.Faulty { Faults: [var only] } => throw new RefusalException(only.ToString()),
        SyllabusReading.Faulty { Faults: var faults } => throw new RefusalException(
            $"{faults[0]} ({Counted(faults.Count, "fault", "faults")} in all: keikocho syllabus check {from})"),
        var other => throw new InvalidOperationException($"There is no word for {other}."),
    };

    private static string Summary(string name, SyllabusReading.Read read)
    {
        var edition = read.Edition;
        return $"{Refusals.AtStart(name)} holds together: {edition.Ladder}, {edition.Name}; {Counted(edition.Ranks.Count, "rank", "ranks")}, "
            + $"{Counted(edition.Units.Count, "unit", "units")}, {Counted(edition.Items.Count, "item", "items")}.";
    }

    private static string Counted(int count, string one, string many) =>
        string.Create(CultureInfo.InvariantCulture, $"{count:N0} {(count == 1 ? one : many)}");

    /// <summary>A fault as a script reads it.</summary>
    private sealed record FaultLine(string File, int Line, string Field, string Sentence);

    /// <summary>The check as a script reads it.</summary>
    private sealed record CheckAnswer(bool Sound, IReadOnlyList<FaultLine> Faults, IReadOnlyList<string> Cautions, Edition? Edition)
    {
        public static CheckAnswer Of(SyllabusReading reading) => reading switch
        {
            SyllabusReading.Read read => new(true, [], [.. read.Cautions.Select(caution => caution.Sentence)], read.Edition),
            SyllabusReading.Faulty faulty => new(false, [.. faulty.Faults.Select(fault => new FaultLine(fault.File, fault.Line, fault.Field, fault.Sentence))], [], null),
            _ => throw new InvalidOperationException($"There is no word for {reading}."),
        };
    }

    /// <summary>The difference as a script reads it.</summary>
    private sealed record DiffAnswer(IReadOnlyList<EditionChange> Changes);
}
