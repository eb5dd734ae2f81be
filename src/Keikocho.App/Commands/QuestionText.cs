using System.Text;

namespace Keikocho.App.Commands;

/// <summary>The text of a question, from a file or the standard input.</summary>
internal static class QuestionText
{
    /// <summary>What is typed for the standard input.</summary>
    public const string StandardInput = "-";

    private const int MostBytes = 64 * 1024 * 1024;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>What to call the source in a sentence.</summary>
    public static string NameOf(string from) => from == StandardInput ? "the standard input" : from;

    /// <summary>Reads it all; UTF-8, with or without a byte order mark.</summary>
    /// <param name="from">The file, or - for the standard input.</param>
    /// <param name="stopping">Stops the reading.</param>
    /// <param name="what">What the file holds, for a sentence: "question".</param>
    /// <exception cref="RefusalException">It is not there, cannot be read, is too large, or is not UTF-8.</exception>
    public static async Task<string> ReadAsync(string from, CancellationToken stopping, string what = "question")
    {
        var bytes = await BytesAsync(from, what, stopping);
        var skip = bytes.AsSpan().StartsWith("\uFEFF"u8) ? 3 : 0;
        try
        {
            return Strict.GetString(bytes, skip, bytes.Length - skip);
        }
        catch (DecoderFallbackException)
        {
            throw new RefusalException($"The {what} in {NameOf(from)} is not UTF-8 text; save it as UTF-8.");
        }
    }

    private static async Task<byte[]> BytesAsync(string from, string what, CancellationToken stopping)
    {
        if (from != StandardInput && Directory.Exists(from))
            throw new RefusalException($"{from} is a folder; name the file with the {what}, or - for the standard input.");
        try
        {
            await using var stream = from == StandardInput ? Console.OpenStandardInput() : File.OpenRead(from);
            using var bytes = new MemoryStream();
            var part = new byte[81_920];
            for (int read; (read = await stream.ReadAsync(part, stopping)) > 0;)
            {
                if (bytes.Length + read > MostBytes)
                    throw new RefusalException($"The {what} in {NameOf(from)} is larger than 64 MB; ask for less at once.");
                bytes.Write(part, 0, read);
            }
            return bytes.ToArray();
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new RefusalException($"There is no file {from}; name the file with the {what}, or - for the standard input.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new RefusalException($"{NameOf(from)} cannot be read ({e.Message.TrimEnd('.')}); name another file.");
        }
    }
}
