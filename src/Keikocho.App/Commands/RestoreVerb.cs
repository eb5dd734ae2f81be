using System.CommandLine;
using Keikocho.Store.Keeping;

namespace Keikocho.App.Commands;

/// <summary><c>keikocho restore COPY FILE</c>: makes a club's file from a copy and keeps what was there before.</summary>
public static class RestoreVerb
{
    /// <summary>The verb itself.</summary>
    public static Command Build()
    {
        var copy = new Argument<string>("COPY") { Description = "A copy that backup made; it stays as it is" };
        var file = new Argument<string>("FILE")
        {
            Description = $"The club's file from now on, ending in {ClubFile.Ending}; close Keikocho first. What is there already is kept beside it",
        };
        var verb = new Command("restore", "Make a club's file from a copy") { copy, file };
        verb.SetAction(async (parsed, stopping) =>
        {
            var from = EngineChoice.File(parsed.GetValue(copy)!).File;
            var to = ClubFile.Wanted(parsed.GetValue(file)!);
            var restored = await RestoreClub.RunAsync(from, to, TimeProvider.System.GetUtcNow(), stopping);
            var output = parsed.InvocationConfiguration.Output;
            await output.WriteLineAsync($"The club of {from} is now in {restored.File}.");
            if (restored.KeptFile is { } kept)
                await output.WriteLineAsync($"What was there before is kept in {kept}.");
            return ExitCode.Done;
        });
        return verb;
    }
}
