using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Keikocho.Core.Kernel;

/// <summary>How a question and an answer are written as JSON; one set of options for the command line, the pages and the documents.</summary>
/// <remarks>
/// Members in camel case; enums as words; days as 2026-03-03, times as 17:30; ids as GUID text; reasons as sentences. A member that
/// the format does not know and a required member that is missing are refused: a slip of the pen must not become a default.
/// </remarks>
public static class SumJson
{
    /// <summary>The options; read-only.</summary>
    public static JsonSerializerOptions Options { get; } = Make();

    /// <summary>The JSON text of an answer.</summary>
    public static string Write<T>(T answer) => JsonSerializer.Serialize(answer, Options);

    /// <summary>Reads a question.</summary>
    /// <exception cref="JsonException">The text is not such a question; <see cref="Sentence"/> says it plainly.</exception>
    public static T Read<T>(string json)
        where T : class =>
        JsonSerializer.Deserialize<T>(json, Options) ?? throw new JsonException("The question is empty.");

    /// <summary>One sentence that says what is wrong and where, for the person who wrote the question.</summary>
    public static string Sentence(JsonException fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        var missing = fault.Message.IndexOf("including: ", StringComparison.Ordinal);
        if (missing >= 0)
        {
            var names = fault.Message[(missing + "including: ".Length)..].Split('.')[0].Replace('\'', '"').TrimEnd('.');
            return $"The question lacks {names}{Where(fault)}; add it.";
        }

        if (fault.Message.Contains("could not be mapped", StringComparison.Ordinal))
            return $"The question has a member that the format does not know{Where(fault)}; take it out or mend its spelling.";
        if (fault.Message.StartsWith("Duplicate", StringComparison.Ordinal))
            return $"The question has one member twice{Where(fault)}; take one out.";

        if (fault is FaultyValue value)
            return $"The question has a value that the format does not allow{Where(fault)}; {value.Advice}.";

        // The reader's own complaint about the text lies inside; a converter's complaint about a value does not.
        return fault.InnerException is JsonException
            ? $"The question is not JSON{Where(fault)}; mend it."
            : $"The question has a value that the format does not allow{Where(fault)}; mend it.";
    }

    private static string Where(JsonException fault)
    {
        var line = fault.LineNumber is { } n ? $" in line {(n + 1).ToString(CultureInfo.InvariantCulture)}" : "";
        return string.IsNullOrEmpty(fault.Path) || fault.Path == "$" ? line : $"{line} at {fault.Path}";
    }

    private static JsonSerializerOptions Make()
    {
        var options = new JsonSerializerOptions
        {
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
            RespectNullableAnnotations = true,
            RespectRequiredConstructorParameters = true,
            AllowDuplicateProperties = false,
            WriteIndented = true,
            NewLine = "\n",
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
            Converters =
            {
                new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false),
                new TimeConverter(),
                new ReasonConverter(),
                new IdConverter<PersonId>(v => new PersonId(v), i => i.Value),
                new IdConverter<ProgrammeId>(v => new ProgrammeId(v), i => i.Value),
                new IdConverter<LessonId>(v => new LessonId(v), i => i.Value),
                new IdConverter<TermId>(v => new TermId(v), i => i.Value),
                new IdConverter<DeviceId>(v => new DeviceId(v), i => i.Value),
                new IdConverter<MarkId>(v => new MarkId(v), i => i.Value),
                new IdConverter<ItemId>(v => new ItemId(v), i => i.Value),
            },
        };
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }

    private sealed class TimeConverter : JsonConverter<TimeOnly>
    {
        private static readonly string[] Forms = ["HH:mm", "HH:mm:ss"];

        public override TimeOnly Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.String
            && TimeOnly.TryParseExact(reader.GetString(), Forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)
                ? time
                : throw new FaultyValue("write a time of day as \"18:05\"");

        public override void Write(Utf8JsonWriter writer, TimeOnly value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.ToString(value.Second == 0 ? Forms[0] : Forms[1], CultureInfo.InvariantCulture));
    }

    /// <summary>A reason is its sentence. It is never read back.</summary>
    private sealed class ReasonConverter : JsonConverter<Reason>
    {
        public override bool CanConvert(Type typeToConvert) => typeof(Reason).IsAssignableFrom(typeToConvert);

        public override Reason Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new FaultyValue("take it out, a reason belongs to an answer");

        public override void Write(Utf8JsonWriter writer, Reason value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.Sentence);
    }

    private sealed class IdConverter<TId>(Func<Guid, TId> make, Func<TId, Guid> value) : JsonConverter<TId>
    {
        public override TId Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.String && reader.TryGetGuid(out var id)
                ? make(id)
                : throw new FaultyValue("write an id as \"019cb2a0-0000-7000-8000-000000000001\"");

        public override void Write(Utf8JsonWriter writer, TId id, JsonSerializerOptions options) =>
            writer.WriteStringValue(value(id));
    }

    /// <summary>A value that cannot be read, with what to write instead; the reader adds the place.</summary>
    private sealed class FaultyValue(string advice) : JsonException(advice)
    {
        public string Advice { get; } = advice;
    }
}
