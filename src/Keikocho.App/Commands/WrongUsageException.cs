namespace Keikocho.App.Commands;

/// <summary>The command line was given something it cannot read; the program ends with <see cref="ExitCode.WrongUsage"/>.</summary>
/// <param name="sentence">One full sentence: what was wrong and what to type instead.</param>
public sealed class WrongUsageException(string sentence) : Exception(sentence);
