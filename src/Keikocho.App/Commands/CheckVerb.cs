using System.CommandLine;
using System.Globalization;
using Keikocho.App.Club;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Book;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;

namespace Keikocho.App.Commands;

/// <summary><c>keikocho check FILE [--thorough] [--json]</c>: reads a whole club and says what is not as it should be.</summary>
public static class CheckVerb
{
    /// <summary>The verb itself.</summary>
    public static Command Build()
    {
        var verb = new Command("check", "Read a whole club and say what is not as it should be; it changes nothing, and Keikocho may stay open meanwhile");
        var place = new ClubPlace(verb, "The club's file, or a copy of it");
        var thorough = new Option<bool>("--thorough") { Description = "Compare every index with its table too, which takes about ten times as long" };
        var json = new Option<bool>("--json") { Description = "Answer as JSON, for a script" };
        verb.Options.Add(thorough);
        verb.Options.Add(json);
        verb.SetAction(async (parsed, stopping) =>
        {
            var (engine, _) = await place.OpenAsync(parsed, stopping);
            await KnownClub.DemandAsync(engine, stopping);
            var book = new Lazy<ClubBook>(() => ReadBook(engine));
            var report = await CheckClub.RunAsync(engine, day => Rules(book, day), parsed.GetValue(thorough), cancel: stopping);
            var output = parsed.InvocationConfiguration.Output;
            if (parsed.GetValue(json))
            {
                await output.WriteLineAsync(SumJson.Write(new CheckAnswer(engine.Place, report)));
            }
            else
            {
                foreach (var problem in report.Problems)
                    await output.WriteLineAsync($"{problem.Part}: {problem.Sentence}");
                await output.WriteLineAsync(Summary(engine.Place, report));
            }

            return report.Sound ? ExitCode.Done : ExitCode.Refused;
        });
        return verb;
    }

    private static AttendanceRules Rules(Lazy<ClubBook> book, DateOnly day) => ClubRules.Attendance(book.Value, day);

    private static ClubBook ReadBook(Engine engine)
    {
        using var reading = engine.OpenReading();
        // Only the settings are asked for: no lesson is needed.
        return BookStore.Read(reading, DateOnly.MaxValue);
    }

    private static string Summary(string place, CheckReport report) => string.Create(CultureInfo.InvariantCulture,
        $"{Refusals.AtStart(place)}: {(report.Sound ? "all is well" : report.Problems.Count == 1 ? "1 problem" : $"{report.Problems.Count:N0} problems")}; looked at {report.Marks:N0} marks, {report.States:N0} states, {report.TrailLines:N0} lines of the trail, {report.SealedValues:N0} sealed values.");

    /// <summary>The report as a script reads it.</summary>
    private sealed record CheckAnswer(
        string Place, bool Sound, IReadOnlyList<CheckProblem> Problems, long Marks, long States, long TrailLines, long SealedValues, bool Thorough)
    {
        public CheckAnswer(string place, CheckReport report)
            : this(place, report.Sound, report.Problems, report.Marks, report.States, report.TrailLines, report.SealedValues, report.Thorough)
        {
        }
    }
}
