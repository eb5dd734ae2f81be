using System.CommandLine;
using System.CommandLine.Invocation;

namespace Keikocho.App.Commands;

/// <summary>
/// The command line: without a verb it serves a club, with one it does that. Whatever goes wrong is one sentence on the error
/// output and a number of <see cref="ExitCode"/>.
/// </summary>
public static class CommandLine
{
    /// <summary>Runs one command to its end.</summary>
    /// <param name="args">What was typed after the program's name.</param>
    /// <param name="answers">Where answers go.</param>
    /// <param name="complaints">Where sentences about what is wrong go.</param>
    /// <returns>A number of <see cref="ExitCode"/>.</returns>
    public static Task<int> RunAsync(IReadOnlyList<string> args, TextWriter answers, TextWriter complaints) =>
        RunAsync(AllVerbs.Build(), args, answers, complaints);

    /// <summary>The same with a chosen set of verbs.</summary>
    public static async Task<int> RunAsync(
        IEnumerable<Command> verbs, IReadOnlyList<string> args, TextWriter answers, TextWriter complaints)
    {
        ArgumentNullException.ThrowIfNull(complaints);
        var parsed = Root(verbs).Parse(args);
        if (parsed.Action is ParseErrorAction)
        {
            var first = parsed.Errors.Count > 0 ? parsed.Errors[0].Message : "That cannot be read.";
            await complaints.WriteLineAsync($"{Sentence(first)} See: keikocho --help");
            return ExitCode.WrongUsage;
        }

        try
        {
            return await parsed.InvokeAsync(new InvocationConfiguration
            {
                Output = answers,
                Error = complaints,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = TimeSpan.FromSeconds(30),
            });
        }
        catch (RefusalException refusal)
        {
            await complaints.WriteLineAsync(refusal.Message);
            return ExitCode.Refused;
        }
        catch (WrongUsageException usage)
        {
            await complaints.WriteLineAsync(usage.Message);
            return ExitCode.WrongUsage;
        }
        catch (OperationCanceledException)
        {
            await complaints.WriteLineAsync("Stopped before the end, as asked.");
            return ExitCode.Refused;
        }
#pragma warning disable CA1031 // The last resort: whatever it was, a person reads a sentence and a script a number.
        catch (Exception e)
#pragma warning restore CA1031
        {
            await complaints.WriteLineAsync("Keikocho came upon something it did not expect and stopped; the details follow for whoever mends it.");
            await complaints.WriteLineAsync(e.ToString());
            return ExitCode.Unexpected;
        }
    }

    private static RootCommand Root(IEnumerable<Command> verbs)
    {
        var root = new RootCommand("The practice notebook of a judo club. Without a verb it opens the demo club, or the club whose file is named.");
        ServeVerb.ServeWithoutAVerb(root);
        foreach (var verb in verbs)
            root.Subcommands.Add(verb);
        return root;
    }

    private static string Sentence(string message)
    {
        var trimmed = message.Trim();
        return trimmed.EndsWith('.') || trimmed.EndsWith('?') ? trimmed : trimmed + ".";
    }
}
