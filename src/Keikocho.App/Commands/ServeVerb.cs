using System.CommandLine;
using System.Globalization;
using Keikocho.App.Hosting;

namespace Keikocho.App.Commands;

/// <summary><c>keikocho serve [FILE] [--demo] [--database TEXT [--club N]] [--address A] [--port N]</c>: opens a club's pages on this machine.</summary>
public static class ServeVerb
{
    /// <summary>The verb's name; what is typed without a verb means this one.</summary>
    public const string Name = "serve";

    /// <summary>The port that is tried first.</summary>
    public const int UsualPort = 5110;

    /// <summary>The verb itself.</summary>
    public static Command Build()
    {
        var command = new Command(Name, "Open a club's pages on this machine");
        var file = new Argument<string?>("FILE")
        {
            Arity = ArgumentArity.ZeroOrOne,
            Description = $"The club's file, ending in {ClubFile.Ending}; made on first use. Without one: the demo club",
        };
        var demo = new Option<bool>("--demo") { Description = "The demo club, which is invented" };
        var address = new Option<string>("--address")
        {
            HelpName = "ADDRESS",
            Description = "This machine's own address: 127.0.0.1, ::1 or localhost",
            DefaultValueFactory = _ => "127.0.0.1",
        };
        var port = WholeNumberOption.Of("--port", "N", $"The port; 0 takes any free one. Without it: {UsualPort.ToString(CultureInfo.InvariantCulture)}, or the next free one");
        var database = ClubPlace.DatabaseOption();
        var number = ClubPlace.ClubOption();
        command.Arguments.Add(file);
        command.Options.Add(demo);
        command.Options.Add(database);
        command.Options.Add(number);
        command.Options.Add(address);
        command.Options.Add(port);
        command.SetAction(async (parsed, stopping) =>
        {
            var club = ClubToServe(parsed.GetValue(file), parsed.GetValue(demo), parsed.GetValue(database), parsed.GetValue(number));
            var own = LoopbackAddress.Read(parsed.GetValue(address)!);
            LoopbackAddress.RefuseOthersFromEnvironment(Environment.GetEnvironmentVariable);
            var free = FreePort.Find(own, parsed.GetValue(port), UsualPort);

            var output = parsed.InvocationConfiguration.Output;
            await using var app = KeikochoHost.Build(club, own, free);
            await KeikochoHost.StartAsync(app, stopping);
            await output.WriteLineAsync($"Keikocho is open at {KeikochoHost.AddressOf(app)}");
            await output.WriteLineAsync(club.IsDemo
                ? $"It shows the demo club, which is invented and kept in {club.Place}"
                : $"It keeps your club in {club.Place}");
            await output.WriteLineAsync("Ctrl+C closes it.");
            await output.FlushAsync(stopping);
            await app.WaitForShutdownAsync(stopping);
            return ExitCode.Done;
        });
        return command;
    }

    private static ServedClub ClubToServe(string? file, bool demo, string? database, int? number)
    {
        if (database is not null && (file is not null || demo))
            throw new WrongUsageException("Give either --database or a file or --demo, not two of them.");
        if (database is not null)
            return new ServedClub(EngineChoice.Database(database, number ?? 1), DataFolder.Open(), IsDemo: false);
        if (number is not null)
            throw new WrongUsageException("--club belongs to --database; a file holds one club.");
        if (file is not null && demo)
            throw new WrongUsageException("Give either a file or --demo, not both.");
        if (file is null)
        {
            var folder = DataFolder.Open();
            return new ServedClub(Path.Combine(folder, "demo" + ClubFile.Ending), folder, IsDemo: true);
        }
        // A mistyped verb must not become a new, empty club.
        if (!file.EndsWith(ClubFile.Ending, StringComparison.OrdinalIgnoreCase) && !EngineChoice.LooksLikeConnectionText(file))
            throw new WrongUsageException($"'{file}' is neither a verb nor a club's file, whose name ends in {ClubFile.Ending}. See: keikocho --help");
        return new ServedClub(ClubFile.Wanted(file), DataFolder.Open(), IsDemo: false);
    }
}
