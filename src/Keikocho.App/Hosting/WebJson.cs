using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;
using Keikocho.Core.Kernel;

namespace Keikocho.App.Hosting;

/// <summary>
/// <see cref="SumJson"/> as it goes over HTTP: without line breaks, and with the few characters escaped that mean something in HTML.
/// </summary>
public static class WebJson
{
    /// <summary>The options, read-only.</summary>
    public static JsonSerializerOptions Options { get; } = Make();

    private static JsonSerializerOptions Make()
    {
        var options = new JsonSerializerOptions(SumJson.Options)
        {
            WriteIndented = false,
            Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        };
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }
}
