using System.CommandLine;
using System.Globalization;
using Keikocho.App.Hosting;

namespace Keikocho.App.Commands;

/// <summary><c>keikocho serve [FILE] [--demo] [--address A] [--port N]</c>: opens a club's pages on this machine.</summary>
public static class ServeVerb
{
    /// <summary>The ending of a club's file.</summary>
    public const string FileEnding = ".keikocho";

    /// <summary>The port that is tried first.</summary>
    public const int UsualPort = 5110;

    /// <summary>The verb itself.</summary>
    public static Command Build()
    {
        var verb = new Command("serve", "Open a club's pages on this machine");
        Serve(verb);
        return verb;
    }

    /// <summary>Lets <c>keikocho</c> and <c>keikocho FILE</c> do the same as the verb.</summary>
    public static void ServeWithoutAVerb(RootCommand root) => Serve(root);

    private static void Serve(Command command)
    {
        var file = new Argument<string?>("FILE")
        {
            Arity = ArgumentArity.ZeroOrOne,
            Description = $"The club's file, ending in {FileEnding}; made on first use. Without one: the demo club",
        };
        var demo = new Option<bool>("--demo") { Description = "The demo club, which is invented" };
        var address = new Option<string>("--address")
        {
            Description = "This machine's own address: 127.0.0.1, ::1 or localhost",
            DefaultValueFactory = _ => "127.0.0.1",
        };
        var port = new Option<int?>("--port")
        {
            Description = $"The port; 0 takes any free one. Without it: {UsualPort}, or the next free one",
        };
        command.Arguments.Add(file);
        command.Options.Add(demo);
        command.Options.Add(address);
        command.Options.Add(port);
        command.SetAction(async (parsed, stopping) =>
        {
            var club = ClubToServe(parsed.GetValue(file), parsed.GetValue(demo));
            var own = LoopbackAddress.Read(parsed.GetValue(address)!);
            LoopbackAddress.RefuseOthersFromEnvironment(Environment.GetEnvironmentVariable);
            var free = FreePort.Find(own, parsed.GetValue(port), UsualPort);

            var output = parsed.InvocationConfiguration.Output;
            await using var app = KeikochoHost.Build(club, own, free);
            await KeikochoHost.StartAsync(app, stopping);
            await output.WriteLineAsync($"Keikocho is open at {KeikochoHost.AddressOf(app)}");
            await output.WriteLineAsync(club.IsDemo
                ? $"It shows the demo club, which is invented and kept in {club.FilePath}"
                : $"It keeps your club in {club.FilePath}");
            await output.WriteLineAsync("Ctrl+C closes it.");
            await output.FlushAsync(stopping);
            await app.WaitForShutdownAsync(stopping);
            return ExitCode.Done;
        });
    }

    private static ServedClub ClubToServe(string? file, bool demo)
    {
        if (file is not null && demo)
            throw new WrongUsageException("Give either a file or --demo, not both.");
        if (file is null)
        {
            var folder = DataFolder.Open();
            return new ServedClub(Path.Combine(folder, "demo" + FileEnding), folder, IsDemo: true);
        }
        // A mistyped verb must not become a new, empty club.
        if (!file.EndsWith(FileEnding, StringComparison.OrdinalIgnoreCase))
        {
            throw new WrongUsageException(string.Create(CultureInfo.InvariantCulture,
                $"'{file}' is neither a verb nor a club's file, whose name ends in {FileEnding}. See: keikocho --help"));
        }
        var path = Path.GetFullPath(file);
        if (Directory.Exists(path))
            throw new RefusalException($"{path} is a folder; name the club's file inside it.");
        if (!Directory.Exists(Path.GetDirectoryName(path)))
            throw new RefusalException($"The folder {Path.GetDirectoryName(path)} does not exist; make it first or name another file.");
        return new ServedClub(path, DataFolder.Open(), IsDemo: false);
    }
}
