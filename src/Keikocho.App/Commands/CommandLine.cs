using System.CommandLine;
using System.CommandLine.Invocation;
using System.CommandLine.Parsing;

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
        ArgumentNullException.ThrowIfNull(args);
        ArgumentNullException.ThrowIfNull(complaints);
        var root = Root(verbs);
        var parsed = root.Parse(WithVerb(root, args));
        if (parsed.Action is ParseErrorAction)
        {
            await complaints.WriteLineAsync($"{WhatIsWrong(parsed)} {SeeHelp(parsed)}");
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
        catch (Exception e) when (Refusals.Of(e) is { } refusal)
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
        var root = new RootCommand(
            "The practice notebook of a judo club.\n\n"
            + "  keikocho            opens the demo club, which is invented: the same as keikocho serve\n"
            + "  keikocho FILE       opens your club, kept in FILE: the same as keikocho serve FILE\n"
            + "  keikocho VERB ...   does one of the things below; keikocho VERB --help says more");
        foreach (var verb in verbs)
            root.Subcommands.Add(verb);
        return root;
    }

    // Not an argument of the root: the help of every verb would show it.
    private static IReadOnlyList<string> WithVerb(RootCommand root, IReadOnlyList<string> args)
    {
        var known = root.Options.SelectMany(option => option.Aliases.Append(option.Name))
            .Concat(root.Subcommands.Select(verb => verb.Name));
        return args.Count > 0 && known.Contains(args[0], StringComparer.Ordinal) ? args : [ServeVerb.Name, .. args];
    }

    /// <summary>Where the help for what was typed is.</summary>
    internal static string SeeHelp(ParseResult parsed)
    {
        var words = new List<string> { "--help" };
        for (SymbolResult? at = parsed.CommandResult; at is CommandResult { Command: not RootCommand } verb; at = verb.Parent)
            words.Insert(0, verb.Command.Name);
        return $"See: keikocho {string.Join(' ', words)}";
    }

    private static string WhatIsWrong(ParseResult parsed)
    {
        var verb = parsed.CommandResult;
        if (verb.Command.Subcommands.Count > 0 && verb.Command is not RootCommand && verb.Command.Action is null)
            return $"Say which: {string.Join(" or ", verb.Command.Subcommands.Select(word => $"keikocho {verb.Command.Name} {word.Name}"))}.";
        var missing = verb.Command.Arguments.FirstOrDefault(argument =>
            argument.Arity.MinimumNumberOfValues > 0 && verb.GetResult(argument) is not { Tokens.Count: > 0 });
        if (missing is not null)
            return $"{missing.Name} is missing.";
        var first = parsed.Errors.Count > 0 ? parsed.Errors[0].Message : "That cannot be read.";
        // Typed in the wrong place, or without quotes, it must not be printed again: it may hold a password.
        return EngineChoice.LooksLikeConnectionText(first)
            ? $"The connection text of a database stands in the wrong place; write --database {EngineChoice.Example}, with the quotes."
            : Sentence(first);
    }

    private static string Sentence(string message)
    {
        var trimmed = string.Join(' ', message.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return trimmed.EndsWith('.') || trimmed.EndsWith('?') ? trimmed : trimmed + ".";
    }
}
