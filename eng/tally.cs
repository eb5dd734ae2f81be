// Adds up the result files of a test run. ./test runs it: dotnet run eng/tally.cs -- project|total FOLDER [NAME]
//   NAME.xml    what the test runner wrote (xUnit's XML, one <test> element a test)
//   NAME.exit   the exit code of the test runner
//   checks.tsv  further checks, one a line: passed|failed, name, reason
// 'project' prints the line of one project; 'total' prints what was skipped and what failed, then the closing line.
// Exit code: 0 nothing failed, 1 something failed or nothing ran.
using System.Globalization;
using System.Xml.Linq;

if (args is ["project", var projectFolder, var project])
{
    var tests = ReadProject(projectFolder, project);
    Console.WriteLine($"{project,-28} {Counts(tests)}");
    return 0;
}

if (args is ["total", var folder])
{
    var tests = new List<Outcome>();
    foreach (var exit in Directory.EnumerateFiles(folder, "*.exit").Order(StringComparer.Ordinal))
    {
        tests.AddRange(ReadProject(folder, Path.GetFileNameWithoutExtension(exit)));
    }

    tests.AddRange(ReadChecks(Path.Combine(folder, "checks.tsv")));
    Show("Skipped", tests.Where(test => test.Result == "Skip"));
    Show("Failed", tests.Where(test => test.Result == "Fail"));
    Console.WriteLine(Counts(tests));
    return tests.Any(test => test.Result == "Fail") || tests.All(test => test.Result == "Skip") ? 1 : 0;
}

Console.Error.WriteLine("usage: dotnet run eng/tally.cs -- project FOLDER NAME | total FOLDER");
return 2;

static List<Outcome> ReadProject(string folder, string project)
{
    var exit = File.ReadAllText(Path.Combine(folder, project + ".exit")).Trim();
    var path = Path.Combine(folder, project + ".xml");
    var tests = new List<Outcome>();
    if (File.Exists(path) && new FileInfo(path).Length > 0)
    {
        var results = XDocument.Load(path);
        tests.AddRange(results.Descendants("test").Select(test => new Outcome(
            (string?)test.Attribute("result") ?? "Fail",
            (string?)test.Attribute("name") ?? "(a test without a name)",
            (string?)test.Element("reason") ?? (string?)test.Element("failure")?.Element("message") ?? string.Empty)));
        tests.AddRange(results.Descendants("error").Select(error => new Outcome(
            "Fail",
            $"{project}: {(string?)error.Attribute("type")} {(string?)error.Attribute("name")}",
            (string?)error.Element("failure")?.Element("message") ?? string.Empty)));

        // The runner's own count is the check on ours.
        var counted = results.Descendants("assembly").Sum(assembly => (int)assembly.Attribute("total")! - (int)assembly.Attribute("not-run")!);
        var listed = results.Descendants("test").Count(test => (string?)test.Attribute("result") != "NotRun");
        if (counted != listed)
        {
            tests.Add(new Outcome("Fail", $"{project} lists all its results", $"the runner counted {counted}, its file lists {listed}"));
        }
    }

    tests.RemoveAll(test => test.Result == "NotRun");
    if (exit != "0" && tests.All(test => test.Result != "Fail"))
    {
        var why = exit is "124" or "137" ? "stopped: it ran too long" : $"the test runner ended with exit code {exit}";
        tests.Add(new Outcome("Fail", $"{project} runs to its end", why));
    }
    else if (!File.Exists(path))
    {
        tests.Add(new Outcome("Fail", $"{project} writes its results", "no result file was written"));
    }

    return tests;
}

static IEnumerable<Outcome> ReadChecks(string path) =>
    from line in File.Exists(path) ? File.ReadAllLines(path) : []
    let parts = line.Split('\t')
    select new Outcome(parts[0] == "passed" ? "Pass" : "Fail", parts[1], parts.Length > 2 ? parts[2] : string.Empty);

static string Counts(IReadOnlyCollection<Outcome> tests)
{
    var failed = tests.Count(test => test.Result is not ("Pass" or "Skip"));
    return string.Create(
        CultureInfo.InvariantCulture,
        $"{tests.Count(test => test.Result == "Pass")} passed, {failed} failed, {tests.Count(test => test.Result == "Skip")} skipped");
}

static void Show(string heading, IEnumerable<Outcome> tests)
{
    var lines = tests
        .Select(test => $"  {test.Name}: {test.Reason.Trim().Split('\n')[0].Trim()}")
        .Order(StringComparer.Ordinal)
        .ToList();
    if (lines.Count > 0)
    {
        Console.WriteLine($"{heading}:");
        lines.ForEach(Console.WriteLine);
    }
}

internal sealed record Outcome(string Result, string Name, string Reason);
