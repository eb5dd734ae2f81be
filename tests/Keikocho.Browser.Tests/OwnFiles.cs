using System.Diagnostics;
using System.Globalization;
using System.Text;
using Keikocho.Testing;
using Microsoft.Playwright;
using UglyToad.PdfPig;

namespace Keikocho.Browser.Tests;

/// <summary>A club's own files into the browser, and its papers out of it.</summary>
internal static class OwnFiles
{
    private const string Folder = "tests/Keikocho.Store.Tests/Fixtures/intake";

    /// <summary>
    /// Uploads one of the club's own files, settles what is asked, saves; the words of the page afterwards. What <paramref name="answers"/>
    /// names by the key of the question is answered so; everything else as proposed, or by the first answer that is offered.
    /// </summary>
    public static async Task<string> ReadInAsync(Window window, string fixture, IReadOnlyDictionary<string, string>? answers = null)
    {
        var page = window.Page;
        var left = new Dictionary<string, string>(answers ?? new Dictionary<string, string>(), StringComparer.Ordinal);
        await page.GotoAsync("/club/import");
        Assert.Empty(await window.AxeAsync());
        await page.GetByLabel("Spreadsheet").SetInputFilesAsync(Repository.PathOf($"{Folder}/{fixture}"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Read the file" }).ClickAsync();
        var save = page.GetByRole(AriaRole.Button, new() { Name = "Save it all" });
        var proposed = page.GetByRole(AriaRole.Button, new() { Name = "Accept all proposed" });
        var keep = page.GetByRole(AriaRole.Button, new() { Name = "Keep these answers" });
        await Assertions.Expect(save.Or(keep).First).ToBeVisibleAsync();
        Assert.Empty(await window.AxeAsync());
        for (var round = 0; round < 16 && await save.CountAsync() == 0; round++)
        {
            var said = 0;
            foreach (var (key, answer) in left.ToList())
            {
                if (!await AnswerAsync(page, key, answer)) continue;
                left.Remove(key);
                said++;
            }

            if (said == 0 && await proposed.CountAsync() > 0)
            {
                await proposed.ClickAsync();
                continue;
            }

            if (said == 0) await AnswerTheFirstAsync(page);
            await keep.First.ClickAsync();
        }

        Assert.True(left.Count == 0, $"{fixture} did not ask: {string.Join(", ", left.Keys)}.");
        await save.ClickAsync();
        var undo = page.GetByRole(AriaRole.Button, new() { Name = "Take this file back" });
        await Assertions.Expect(undo).ToBeVisibleAsync(new() { Timeout = 20_000 });
        Assert.Empty(await window.AxeAsync());
        return await page.Locator("main").InnerTextAsync();
    }

    /// <summary>A paper as the browser receives it.</summary>
    public static async Task<byte[]> PaperAsync(IPage page, string address)
    {
        var answer = await page.APIRequest.GetAsync(address);
        Assert.True(answer.Ok, string.Create(CultureInfo.InvariantCulture, $"{address}: {answer.Status}"));
        return await answer.BodyAsync();
    }

    /// <summary>The text of a paper.</summary>
    public static string TextOf(byte[] pdf)
    {
        using var paper = PdfDocument.Open(pdf);
        return string.Join('\n', paper.GetPages().Select(p => p.Text));
    }

    /// <summary>The text of a paper by the other reader.</summary>
    public static async Task<string> PopplerAsync(string pdftotext, byte[] pdf)
    {
        var stop = TestContext.Current.CancellationToken;
        using var folder = new TempFolder();
        var file = Path.Combine(folder.Path, "paper.pdf");
        await File.WriteAllBytesAsync(file, pdf, stop);
        using var process = Process.Start(new ProcessStartInfo(pdftotext, ["-raw", "-enc", "UTF-8", file, "-"]) { RedirectStandardOutput = true, StandardOutputEncoding = Encoding.UTF8 })!;
        var text = await process.StandardOutput.ReadToEndAsync(stop);
        await process.WaitForExitAsync(stop);
        Assert.Equal(0, process.ExitCode);
        return text;
    }

    // Whether the question is on the page; a list that opens or buttons.
    private static async Task<bool> AnswerAsync(IPage page, string key, string answer)
    {
        var list = page.Locator($"main select[name=\"a:{key}\"]");
        if (await list.CountAsync() > 0 && await list.IsVisibleAsync())
        {
            await list.SelectOptionAsync(answer);
            return true;
        }

        var buttons = page.Locator($"main input[name=\"a:{key}\"]");
        if (await buttons.CountAsync() == 0 || !await buttons.First.IsVisibleAsync()) return false;
        await page.Locator($"main input[name=\"a:{key}\"][value=\"{answer}\"]").CheckAsync();
        return true;
    }

    // What has no proposal is answered by hand: the first answer that is offered.
    private static async Task AnswerTheFirstAsync(IPage page)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var radio in await page.Locator("#questions-part input[type=radio], main form input[type=radio][name^='a:']").AllAsync())
        {
            var name = (await radio.GetAttributeAsync("name"))!;
            if (await radio.IsVisibleAsync() && names.Add(name) && await page.Locator($"input[name=\"{name}\"]:checked").CountAsync() == 0) await radio.CheckAsync();
        }
    }
}
