using System.Diagnostics;

namespace Keikocho.Paper.Tests;

/// <summary>The other PDF reader, where it is installed.</summary>
internal static class Poppler
{
    /// <summary>Path of a program, or null.</summary>
    public static string? Find(string program) => (Environment.GetEnvironmentVariable("PATH") ?? "")
        .Split(Path.PathSeparator)
        .Where(folder => folder.Length > 0)
        .SelectMany(folder => new[] { Path.Combine(folder, program), Path.Combine(folder, program + ".exe") })
        .FirstOrDefault(File.Exists);

    /// <summary>The text of a file in its drawing order.</summary>
    public static async Task<string> Text(string pdftotext, byte[] pdf, CancellationToken stop)
    {
        var file = Path.Combine(Path.GetTempPath(), $"keikocho-{Path.GetRandomFileName()}.pdf");
        await File.WriteAllBytesAsync(file, pdf, stop);
        try
        {
            var start = new ProcessStartInfo(pdftotext, ["-raw", "-enc", "UTF-8", file, "-"]) { RedirectStandardOutput = true, StandardOutputEncoding = System.Text.Encoding.UTF8 };
            using var process = Process.Start(start) ?? throw new InvalidOperationException("pdftotext did not start.");
            var text = await process.StandardOutput.ReadToEndAsync(stop);
            await process.WaitForExitAsync(stop);
            return process.ExitCode == 0 ? text : throw new InvalidOperationException($"pdftotext ended with {process.ExitCode}.");
        }
        finally
        {
            File.Delete(file);
        }
    }
}
