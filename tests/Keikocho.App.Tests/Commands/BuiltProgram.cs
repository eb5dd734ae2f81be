using System.Diagnostics;
using System.Globalization;
using System.Text;
using Keikocho.App.Commands;

namespace Keikocho.App.Tests.Commands;

/// <summary>How a command ended.</summary>
public sealed record Ended(int Code, string Answers, string Complaints);

/// <summary>The program with a working folder and a data folder of its own: as a process, or faster inside the test.</summary>
public static class BuiltProgram
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>Runs one command inside this process, as <c>Program.cs</c> does.</summary>
    public static async Task<Ended> HereAsync(params string[] args)
    {
        await using var answers = new StringWriter();
        await using var complaints = new StringWriter();
        var code = await CommandLine.RunAsync(args, answers, complaints);
        return new Ended(code, answers.ToString(), complaints.ToString());
    }

    /// <summary>Runs one command as a process to its end.</summary>
    /// <param name="folder">Working folder and data folder.</param>
    /// <param name="input">Bytes of the standard input; nothing when null.</param>
    /// <param name="args">What is typed.</param>
    /// <param name="settings">Variables of the environment.</param>
    public static async Task<Ended> RunAsync(string folder, byte[]? input, string[] args, params (string Name, string Value)[] settings)
    {
        using var process = Start(folder, args, settings);
        var answers = process.StandardOutput.ReadToEndAsync(Stop);
        var complaints = process.StandardError.ReadToEndAsync(Stop);
        try
        {
            if (input is not null)
                await process.StandardInput.BaseStream.WriteAsync(input, Stop);
            process.StandardInput.Close();
            await process.WaitForExitAsync(Stop).WaitAsync(TimeSpan.FromSeconds(60), Stop);
            return new Ended(process.ExitCode, await answers, await complaints);
        }
        finally
        {
            if (!process.HasExited)
                process.Kill();
        }
    }

    /// <summary>Starts a command as a process.</summary>
    public static Process Start(string folder, string[] args, params (string Name, string Value)[] settings)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = new UTF8Encoding(false, throwOnInvalidBytes: true),
            StandardErrorEncoding = new UTF8Encoding(false, throwOnInvalidBytes: true),
            WorkingDirectory = folder,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "keikocho.dll"));
        foreach (var arg in args)
            start.ArgumentList.Add(arg);
        start.Environment["KEIKOCHO_DATA"] = Path.Combine(folder, "data");
        foreach (var (name, value) in settings)
            start.Environment[name] = value;
        return Process.Start(start)!;
    }

    /// <summary>Asks a serving process to close, as Ctrl+C does, and gives its exit code. Where there is no such signal it is killed, and 0 given.</summary>
    public static async Task<int> CloseAsync(Process process)
    {
        ArgumentNullException.ThrowIfNull(process);
        if (process.HasExited)
            return process.ExitCode;
        if (OperatingSystem.IsWindows())
        {
            process.Kill();
            return 0;
        }
        using var ask = Process.Start("kill", ["-INT", process.Id.ToString(CultureInfo.InvariantCulture)]);
        await process.WaitForExitAsync(Stop).WaitAsync(TimeSpan.FromSeconds(30), Stop);
        return process.ExitCode;
    }
}
