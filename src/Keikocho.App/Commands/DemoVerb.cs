using System.CommandLine;
using System.Globalization;
using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.Store.Demo;
using Keikocho.Store.Engines;

namespace Keikocho.App.Commands;

/// <summary><c>keikocho demo FILE [--size small|large] [--day YYYY-MM-DD] [--number N]</c>: writes the demo club to a new file.</summary>
public static class DemoVerb
{
    private const string DayForm = "yyyy-MM-dd";

    /// <summary>The verb itself.</summary>
    public static Command Build()
    {
        var verb = new Command("demo", "Write the demo club, which is invented, to a new file");
        var place = new ClubPlace(verb, $"The new file; its name ends in {ClubFile.Ending}");
        var size = new Option<string>("--size")
        {
            Description = "small: about 60 children and eighteen months; large: 2,000 children and ten years, takes a minute",
            DefaultValueFactory = _ => "small",
        };
        size.AcceptOnlyFromAmong("small", "large");
        var day = new Option<string?>("--day") { HelpName = "YYYY-MM-DD", Description = "The day on which one of its evenings is; without it, today" };
        var number = WholeNumberOption.Of("--number", "N", $"Another number makes another club; {DemoOfToday.Seed.ToString(CultureInfo.InvariantCulture)} without this");
        verb.Options.Add(size);
        verb.Options.Add(day);
        verb.Options.Add(number);
        verb.SetAction(async (parsed, stopping) =>
        {
            var on = Day(parsed.GetValue(day));
            var of = parsed.GetValue(size) == "large" ? DemoSize.Large : DemoSize.Small;
            var seed = parsed.GetValue(number) ?? DemoOfToday.Seed;
            var (file, postgres, _) = place.Read(parsed);
            var output = parsed.InvocationConfiguration.Output;
            if (postgres is not null)
            {
                await using var database = postgres;
                await EngineChoice.DemandReachableAsync(database, stopping);
                var written = await WriteAsync(database, on, seed, of, stopping);
                await output.WriteLineAsync(Sentence(written, on, database.Place));
                return ExitCode.Done;
            }

            var path = ClubFile.Wanted(file!);
            var made = await ClubFile.MakeAsync(path, engine => WriteAsync(engine, on, seed, of, stopping));
            await output.WriteLineAsync(Sentence(made, on, path));
            await output.WriteLineAsync($"Open it with: keikocho serve {file}");
            return ExitCode.Done;
        });
        return verb;
    }

    private static DateOnly Day(string? typed)
    {
        if (typed is null)
            return new ClubClock(TimeProvider.System, DemoOfToday.Zone).Today;
        return DateOnly.TryParseExact(typed, DayForm, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && day.Year is >= 1990 and <= 2100
            ? day
            : throw new WrongUsageException("--day takes a day from 1990 to 2100, written like 2026-03-03.");
    }

    private static Task<WrittenDemo> WriteAsync(Engine engine, DateOnly day, int seed, DemoSize size, CancellationToken stopping)
    {
        var rows = DemoClub.Make(day, seed, size);
        var now = TimeProvider.System.GetUtcNow();
        // A demo of a day to come holds events of that day: the line that says when it came in stands after them.
        return WriteDemo.WriteAsync(engine, rows, now < rows.Trail[^1].At ? rows.Trail[^1].At : now, stopping);
    }

    private static string Sentence(WrittenDemo written, DateOnly day, string place) => string.Create(CultureInfo.InvariantCulture,
        $"The demo club for {day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)} is in {place}: {written.People:N0} people, {written.Lessons:N0} lessons, {written.Marks:N0} marks.");
}
