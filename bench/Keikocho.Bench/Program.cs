using Keikocho.Bench;

// dotnet run -c Release --project bench/Keikocho.Bench -- FOLDER [start|pages|taps|store|all]
// FOLDER keeps the large demo club between runs.
if (args.Length is < 1 or > 2)
{
    Console.Error.WriteLine("Say a folder for the large demo club, and what to measure: start, pages, taps, store or all.");
    return 2;
}

var folder = Path.GetFullPath(args[0]);
var what = args.Length == 2 ? args[1] : "all";
var file = await LargeClub.MakeAsync(folder);
Console.WriteLine($"cores {Environment.ProcessorCount}, load {(File.Exists("/proc/loadavg") ? File.ReadAllText("/proc/loadavg").Split(' ')[0] : "?")}, file {new FileInfo(file).Length / 1048576} MiB");
if (what is "start" or "all") await Start.MeasureAsync(file, folder);
if (what is "pages" or "all") await Pages.MeasureAsync(file, folder);
if (what is "taps" or "all") await Taps.MeasureAsync(file, folder);
if (what is "store" or "all") await StoreTaps.MeasureAsync(file, folder);
return 0;
