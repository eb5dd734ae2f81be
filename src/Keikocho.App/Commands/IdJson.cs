using System.Linq.Expressions;
using System.Text.Json;
using System.Text.Json.Serialization;
using Keikocho.Core.Kernel;

namespace Keikocho.App.Commands;

/// <summary>An id of <see cref="Core.Kernel"/> as the plain text of its GUID, not as an object around it.</summary>
internal sealed class IdJson : JsonConverterFactory
{
    public override bool CanConvert(Type typeToConvert) =>
        typeToConvert.IsValueType
        && typeToConvert.Namespace == typeof(PersonId).Namespace
        && typeToConvert.Name.EndsWith("Id", StringComparison.Ordinal)
        && typeToConvert.GetProperty("Value")?.PropertyType == typeof(Guid);

    public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
        (JsonConverter)Activator.CreateInstance(typeof(Of<>).MakeGenericType(typeToConvert))!;

    private sealed class Of<T> : JsonConverter<T>
        where T : struct
    {
        private static readonly Func<Guid, T> Make = Wrap();
        private static readonly Func<T, Guid> Value = Unwrap();

        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.String && Guid.TryParseExact(reader.GetString(), "D", out var value)
                ? Make(value)
                : throw SumJson.Say("an id is written like \"018f2c3e-0000-7000-8000-000000000001\"");

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) =>
            writer.WriteStringValue(Value(value));

        public override T ReadAsPropertyName(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            Guid.TryParseExact(reader.GetString(), "D", out var value)
                ? Make(value)
                : throw SumJson.Say("an id is written like \"018f2c3e-0000-7000-8000-000000000001\"");

        public override void WriteAsPropertyName(Utf8JsonWriter writer, T value, JsonSerializerOptions options) =>
            writer.WritePropertyName(Value(value).ToString());

        private static Func<Guid, T> Wrap()
        {
            var value = Expression.Parameter(typeof(Guid));
            return Expression.Lambda<Func<Guid, T>>(Expression.New(typeof(T).GetConstructor([typeof(Guid)])!, value), value).Compile();
        }

        private static Func<T, Guid> Unwrap()
        {
            var id = Expression.Parameter(typeof(T));
            return Expression.Lambda<Func<T, Guid>>(Expression.Property(id, "Value"), id).Compile();
        }
    }
}
