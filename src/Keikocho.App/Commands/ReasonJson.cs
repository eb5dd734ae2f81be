using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Keikocho.Core.Kernel;

namespace Keikocho.App.Commands;

/// <summary>A reason with its name, its sentence and the figures of its own record. Reasons are written, never read.</summary>
internal sealed class ReasonJson : JsonConverter<Reason>
{
    public override bool CanConvert(Type typeToConvert) => typeToConvert == typeof(Reason);

    public override Reason Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw SumJson.Say("a reason belongs to an answer, not to a question");

    public override void Write(Utf8JsonWriter writer, Reason value, JsonSerializerOptions options)
    {
        var own = JsonSerializer.SerializeToNode(value, value.GetType(), options)!.AsObject();
        own.Remove("sentence");
        var whole = new JsonObject { ["reason"] = value.GetType().Name, ["sentence"] = value.Sentence };
        foreach (var (name, figure) in own.ToList())
        {
            own.Remove(name);
            whole.Add(name, figure);
        }
        whole.WriteTo(writer, options);
    }
}
