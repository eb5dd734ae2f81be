using System.CommandLine;
using System.Globalization;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Keeping.OpenArchive;

namespace Keikocho.App.Commands;

/// <summary><c>keikocho archive out FILE ARCHIVE</c> and <c>keikocho archive in ARCHIVE FILE</c>: a whole club as plain, open files.</summary>
public static class ArchiveVerb
{
    /// <summary>The verb itself.</summary>
    public static Command Build() => new("archive", "A whole club as plain, open files: to keep, to take elsewhere, to read with other programs")
    {
        Out(),
        In(),
    };

    private static Command Out()
    {
        var verb = new Command("out", "Write a club to an open archive; Keikocho may stay open meanwhile");
        var place = new ClubPlace(verb, "The club's file", "ARCHIVE", "A .zip file that does not exist yet; a name without .zip makes a folder");
        verb.SetAction(async (parsed, stopping) =>
        {
            var (engine, target) = await place.OpenAsync(parsed, stopping);
            var path = ClubFile.Target(target!);
            await KnownClub.DemandAsync(engine, stopping);
            var manifest = await Archive.WriteAsync(engine, path, TimeProvider.System.GetUtcNow(), stopping);
            var output = parsed.InvocationConfiguration.Output;
            await output.WriteLineAsync($"The archive is in {path}: {Rows(manifest)}.");
            await output.WriteLineAsync("Names, birth dates and telephone numbers stand open in it; keep it where only the club can read it.");
            return ExitCode.Done;
        });
        return verb;
    }

    private static Command In()
    {
        var verb = new Command("in", "Make a club from an open archive");
        var place = new ClubPlace(
            verb, $"The new file; its name ends in {ClubFile.Ending}", "ARCHIVE", "A .zip file or a folder that archive out made", fileComesSecond: true);
        verb.SetAction(async (parsed, stopping) =>
        {
            var (file, postgres, archive) = place.Read(parsed);
            var from = EngineChoice.File(archive!).File;
            string where;
            ArchiveManifest manifest;
            if (postgres is not null)
            {
                await using var database = postgres;
                await EngineChoice.DemandReachableAsync(database, stopping);
                manifest = await ReadAsync(database, from, stopping);
                where = database.Place;
            }
            else
            {
                where = ClubFile.Wanted(file!);
                manifest = await ClubFile.MakeAsync(where, engine => ReadAsync(engine, from, stopping));
            }

            await parsed.InvocationConfiguration.Output.WriteLineAsync($"The club of {from} is in {where}: {Rows(manifest)}.");
            return ExitCode.Done;
        });
        return verb;
    }

    private static async Task<ArchiveManifest> ReadAsync(Engine engine, string archive, CancellationToken stopping)
    {
        var now = TimeProvider.System.GetUtcNow();
        await engine.UpgradeAsync(now, stopping);
        return await Archive.ReadAsync(engine, archive, now, stopping);
    }

    private static string Rows(ArchiveManifest manifest) => string.Create(CultureInfo.InvariantCulture,
        $"{manifest.Tables.Sum(table => table.Rows):N0} rows in {manifest.Tables.Count} tables");
}
