using System.CommandLine;

namespace Keikocho.App.Commands;

/// <summary>
/// A sum on the command line: a question as JSON from a file or the standard input, the answer as indented JSON on the standard
/// output. Every sum of Core is reached this way, by one line in its folder's verb.
/// </summary>
public static class SumVerb
{
    /// <summary>Makes the verb of a sum.</summary>
    /// <typeparam name="TQuestion">The question; every member of it must be given, and no other.</typeparam>
    /// <typeparam name="TAnswer">The answer with its reasons.</typeparam>
    /// <param name="name">One word, as typed.</param>
    /// <param name="description">One line for the help.</param>
    /// <param name="sum">
    /// The sum. What it refuses by an <see cref="ArgumentException"/> is told as a refusal, since the question is all it was given.
    /// </param>
    public static Command Build<TQuestion, TAnswer>(string name, string description, Func<TQuestion, TAnswer> sum)
        where TQuestion : class
        where TAnswer : notnull
    {
        var source = new Argument<string>("QUESTION")
        {
            Description = "A file with the question as JSON, or - for the standard input",
        };
        var verb = new Command(name, description) { source };
        verb.SetAction(async (parsed, stopping) =>
        {
            var from = parsed.GetValue(source)!;
            var question = SumJson.Read<TQuestion>(await ReadBytesAsync(from, stopping), from == "-" ? "the standard input" : from);
            TAnswer answer;
            try
            {
                answer = sum(question);
            }
            catch (ArgumentException e)
            {
                throw new RefusalException($"The question in {from} cannot be answered: {e.Message.ReplaceLineEndings(" ")}");
            }
            await parsed.InvocationConfiguration.Output.WriteLineAsync(SumJson.Write(answer));
            return ExitCode.Done;
        });
        return verb;
    }

    private static async Task<byte[]> ReadBytesAsync(string from, CancellationToken stopping)
    {
        const int mostBytes = 64 * 1024 * 1024;
        try
        {
            await using var stream = from == "-" ? Console.OpenStandardInput() : File.OpenRead(from);
            using var bytes = new MemoryStream();
            var part = new byte[81_920];
            for (int read; (read = await stream.ReadAsync(part, stopping)) > 0;)
            {
                if (bytes.Length + read > mostBytes)
                    throw new RefusalException($"The question in {from} is larger than 64 MB; ask for less at once.");
                bytes.Write(part, 0, read);
            }
            return bytes.ToArray();
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new RefusalException($"There is no file {from}; name the file with the question, or - for the standard input.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new RefusalException($"{from} cannot be read ({e.Message.TrimEnd('.')}); name another file.");
        }
    }
}
