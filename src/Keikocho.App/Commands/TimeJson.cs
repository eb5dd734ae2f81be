using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Keikocho.App.Commands;

/// <summary>A time of day as "17:30", the way the papers say it.</summary>
internal sealed class TimeJson : JsonConverter<TimeOnly>
{
    public override TimeOnly Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType == JsonTokenType.String
        && TimeOnly.TryParseExact(reader.GetString(), "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)
            ? time
            : throw SumJson.Say("a time of day is written like \"17:30\"");

    public override void Write(Utf8JsonWriter writer, TimeOnly value, JsonSerializerOptions options) =>
        writer.WriteStringValue(value.ToString("HH:mm", CultureInfo.InvariantCulture));
}
