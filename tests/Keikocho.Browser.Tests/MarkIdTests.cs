using Keikocho.App.Tests.Shell;

namespace Keikocho.Browser.Tests;

/// <summary>Ids that a script makes are those of RFC 9562, section 5.7: version 7, variant 10, the milliseconds first.</summary>
[Collection(BrowserTests.Name)]
public sealed class MarkIdTests(Browser browser)
{
    [Fact]
    public async Task The_example_of_the_standard_comes_out_of_its_own_time_and_chance()
    {
        await using var app = await RunningApp.StartAsync(isDemo: false);
        await using var window = await browser.OpenAsync(app.Address);
        await window.Page.GotoAsync("/start");
        // RFC 9562, appendix A.6 (from memory): 2022-02-22 14:22:22 -05:00, rand_a 0xCC3, rand_b 0x18C4DC0C0C07398F.
        var id = await window.Page.EvaluateAsync<string>(
            """
            async () => {
              const { markId } = await import("/js/mark-id.js");
              return markId(0x017F22E279B0, new Uint8Array([0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f]));
            }
            """);
        Assert.Equal("017f22e2-79b0-7cc3-98c4-dc0c0c07398f", id);
    }

    [Fact]
    public async Task A_made_id_has_its_time_and_is_version_7_to_the_program_too()
    {
        await using var app = await RunningApp.StartAsync(isDemo: false);
        await using var window = await browser.OpenAsync(app.Address);
        await window.Page.GotoAsync("/start");
        var ids = await window.Page.EvaluateAsync<string[]>(
            """
            async () => {
              const { markId } = await import("/js/mark-id.js");
              return Array.from({ length: 200 }, () => markId(1795000000123, crypto.getRandomValues(new Uint8Array(10))));
            }
            """);
        Assert.Equal(200, ids.Distinct().Count());
        Assert.All(ids, text =>
        {
            var id = Guid.Parse(text);
            Assert.Equal(7, id.Version);
            Assert.InRange(id.Variant, 8, 11);
            Assert.StartsWith("01a1ee56-5e7b", text, StringComparison.Ordinal);
        });
        Assert.Equal("01a1ee565e7b", 1795000000123L.ToString("x12", System.Globalization.CultureInfo.InvariantCulture));
    }
}
