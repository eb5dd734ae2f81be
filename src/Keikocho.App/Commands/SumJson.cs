using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;
using System.Text.Unicode;

namespace Keikocho.App.Commands;

/// <summary>
/// JSON as the sums speak it, on the command line and over HTTP: camel case, dates "2026-03-03", times "17:30", ids as plain text,
/// choices by name; nothing unknown, nothing missing, nothing twice. Kana and accents are written as they are.
/// </summary>
public static partial class SumJson
{
    /// <summary>The options, read-only.</summary>
    public static JsonSerializerOptions Options { get; } = Make(indented: true);

    /// <summary>The same without line breaks, for HTTP.</summary>
    public static JsonSerializerOptions Compact { get; } = Make(indented: false);

    /// <summary>Writes an answer.</summary>
    public static string Write<T>(T answer)
        where T : notnull =>
        JsonSerializer.Serialize(answer, answer.GetType(), Options);

    /// <summary>Reads a question.</summary>
    /// <param name="utf8">The bytes, UTF-8, with or without a byte order mark.</param>
    /// <param name="where">What to call the place in a sentence.</param>
    /// <exception cref="RefusalException">It is not such a question; the sentence says what is wrong and on which line.</exception>
    public static T Read<T>(ReadOnlySpan<byte> utf8, string where)
        where T : class
    {
        if (utf8.StartsWith("\uFEFF"u8))
            utf8 = utf8[3..];
        try
        {
            return JsonSerializer.Deserialize<T>(utf8, Options)
                ?? throw new RefusalException($"{where} holds null where a question is asked for; see docs/formats for the shape of it.");
        }
        catch (JsonException e)
        {
            throw new RefusalException(Explain(e, where));
        }
    }

    // The library's own messages name .NET types; a person needs the member and the place.
    private static string Explain(JsonException e, string where)
    {
        var at = e.LineNumber is { } line
            ? string.Create(CultureInfo.InvariantCulture, $"{where}, line {line + 1}, column {(e.BytePositionInLine ?? 0) + 1}")
            : where;
        var path = string.IsNullOrEmpty(e.Path) ? "$" : e.Path;
        if (Unknown().Match(e.Message) is { Success: true } unknown)
            return $"{at}: '{unknown.Groups[1].Value}' is not known here ({path}); take it out or correct its spelling.";
        if (Missing().Match(e.Message) is { Success: true } missing)
            return $"{at}: {missing.Groups[1].Value.TrimEnd('.')} is missing in {path}; add it.";
        if (e.Message.StartsWith("Duplicate property", StringComparison.Ordinal))
            return $"{at}: a member stands twice in {path}; leave one.";
        if (e.Message.StartsWith("The JSON value could not be converted", StringComparison.Ordinal)
            || e.Message.Contains("doesn't allow null", StringComparison.Ordinal)
            || e.Message.Contains("disallows null", StringComparison.Ordinal))
        {
            return $"{at}: the value at {path} is of the wrong kind; see docs/formats for what stands there.";
        }
        if (e.Data[Told] is true)
            return $"{at}: {e.Message} ({path}).";
        return $"{at}: this is not JSON that can be read; look for a missing comma, quote or bracket just before.";
    }

    /// <summary>Marks an exception of one of our converters, whose message is already a sentence for a person.</summary>
    internal const string Told = "told";

    internal static JsonException Say(string sentence)
    {
        var e = new JsonException(sentence);
        e.Data[Told] = true;
        return e;
    }

    private static JsonSerializerOptions Make(bool indented)
    {
        var options = new JsonSerializerOptions(JsonSerializerOptions.Strict)
        {
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            DictionaryKeyPolicy = null,
            WriteIndented = indented,
            Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
            Converters =
            {
                new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false),
                new IdJson(),
                new ReasonJson(),
                new TimeJson(),
            },
        };
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }

    [GeneratedRegex("^The JSON property '(.+?)' could not be mapped")]
    private static partial Regex Unknown();

    [GeneratedRegex("was missing required properties including: (.+)$")]
    private static partial Regex Missing();
}
