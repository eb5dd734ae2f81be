using System.CommandLine;
using System.Globalization;
using Keikocho.Store.Keeping;

namespace Keikocho.App.Commands;

/// <summary><c>keikocho backup FILE TARGET</c>: a complete, checked copy, made while others go on working.</summary>
public static class BackupVerb
{
    /// <summary>The verb itself.</summary>
    public static Command Build()
    {
        var verb = new Command("backup", "Copy a club to a new file; Keikocho may stay open meanwhile");
        var place = new ClubPlace(verb, "The club's file", "TARGET", "The copy, a file that does not exist yet; best on another disk");
        verb.SetAction(async (parsed, stopping) =>
        {
            var (engine, target) = await place.OpenAsync(parsed, stopping);
            var path = ClubFile.Target(target!);
            await KnownClub.DemandAsync(engine, stopping);
            var copy = await ClubCopy.MakeAsync(engine, path, TimeProvider.System.GetUtcNow(), stopping);
            var output = parsed.InvocationConfiguration.Output;
            await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture,
                $"The copy is in {copy.File}: {copy.Bytes:N0} bytes, made at {copy.MadeAt.UtcDateTime:yyyy-MM-dd HH:mm:ss} UTC."));
            return ExitCode.Done;
        });
        return verb;
    }
}
