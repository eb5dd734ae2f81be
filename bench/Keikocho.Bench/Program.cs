using Keikocho.Bench;

// dotnet run -c Release --project bench/Keikocho.Bench -- FOLDER [start|pages|taps|store|list|check|names|sheets|matching|faults|tablets|all]
// FOLDER keeps the large demo club between runs.
string[] verbs = ["start", "pages", "taps", "store", "list", "check", "names", "sheets", "matching", "faults", "tablets", "all"];
if (args.Length is < 1 or > 2 || (args.Length == 2 && !verbs.Contains(args[1])))
{
    Console.Error.WriteLine($"Say a folder for the large demo club, and what to measure: {string.Join(", ", verbs[..^1])} or all.");
    return 2;
}

var folder = Path.GetFullPath(args[0]);
var what = args.Length == 2 ? args[1] : "all";
Console.WriteLine($"cores {Environment.ProcessorCount}, load {(File.Exists("/proc/loadavg") ? File.ReadAllText("/proc/loadavg").Split(' ')[0] : "?")}");
if (what is "names" or "all") Names.Measure();
if (what is "sheets" or "all") Sheets.Measure();
if (what is "matching" or "all")
{
    Matching.Measure();
    Matching.MeasurePairs();
}
if (what is "faults") await Faults.MeasureAsync(folder, Environment.TickCount);
if (what is "tablets" or "all") await Faults.TabletsAsync(folder);
if (what is "names" or "sheets" or "matching" or "faults" or "tablets") return 0;
var file = await LargeClub.MakeAsync(folder);
Console.WriteLine($"file {new FileInfo(file).Length / 1048576} MiB");
if (what is "start" or "all") await Start.MeasureAsync(file, folder);
if (what is "pages" or "all") await Pages.MeasureAsync(file, folder);
if (what is "list" or "all") await Lists.MeasureAsync(file, folder);
if (what is "taps" or "all") await Taps.MeasureAsync(file, folder);
if (what is "store" or "all") await StoreTaps.MeasureAsync(file, folder);
if (what is "check" or "all") await Checks.MeasureAsync(file);
return 0;
