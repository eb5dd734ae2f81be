using System.CommandLine;
using Keikocho.Core.Command;
using Keikocho.Store.Starter;

namespace Keikocho.App.Commands;

/// <summary>
/// A sum on the command line: a question as JSON from a file or the standard input, the answer as indented JSON on the standard
/// output. It opens no club and writes no file.
/// </summary>
public static class SumVerb
{
    /// <summary>The verbs of all sums, in the order of <see cref="AnswerQuestion.Names"/>.</summary>
    public static IEnumerable<Command> BuildAll() => AnswerQuestion.Names.Select(name => Build(name, Description(name)));

    private static Command Build(string name, string description)
    {
        var source = new Argument<string>("QUESTION")
        {
            Description = $"A file with the question as JSON, or - for the standard input; docs/formats/{name}.md shows one with its answer",
        };
        var verb = new Command(name, description) { source };
        verb.SetAction(async (parsed, stopping) =>
        {
            var from = parsed.GetValue(source)!;
            var question = await QuestionText.ReadAsync(from, stopping);
            switch (AnswerQuestion.Answer(name, question, () => StarterNames.WithWords))
            {
                case QuestionOutcome.Answered answered:
                    await parsed.InvocationConfiguration.Output.WriteLineAsync(answered.Json);
                    return ExitCode.Done;
                case QuestionOutcome.Refused refused:
                    throw new RefusalException($"In {QuestionText.NameOf(from)}: {refused.Sentence}");
                default:
                    throw new InvalidOperationException($"The sum {name} is listed, but nobody answers it.");
            }
        });
        return verb;
    }

    private static string Description(string name) => name switch
    {
        "clock" => "One child's clock: lessons attended, needed and left before the next test",
        "attendance" => "How often each child comes, the chance of enough lessons, and how many to expect tonight",
        "roll" => "Who is on the premises now",
        "adults" => "How many adults the children of an evening need, how many there are, and how many are short",
        "names" => "Which technique or word each spelling means: one, one of a few, or none",
        "gate" => "One child's fall gates tonight: which way it may be thrown, at what stage, and what would open the rest",
        "standdown" => "What one child may not do for now, and until whose word",
        "weight" => "Whether a weight that was typed may be a slip: pounds for kilograms, a digit too many or too few",
        "sheet" => "What must be shown for one rank at one test, by one child or on the copy on the wall",
        "readiness" => "Whether one child is put forward at a test, if something is done, or not this time, with every reason",
        "knock" => "The earliest dates after a knock to the head, what is shut today, and when to ask a doctor",
        "pair" => "Who works with whom tonight: pairs, one three or one child with an adult, and who cannot be placed",
        "falls" => "How many falls each child takes in the drills of tonight, and a lighter drill for who takes too many",
        "card" => "What one end of the mat does tonight, from who came: slots with minutes, roles, words, whom to look at",
        "mat" => "The mat to scale: where the line goes, who works where, how many pairs at once and who rests when",
        "merge" => "What the marks of several tablets say together, and where they differ",
        _ => throw new InvalidOperationException($"The sum {name} has no line for the help."),
    };
}
