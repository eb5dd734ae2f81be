namespace Keikocho.App.Commands;

/// <summary>
/// A clear no: what is wrong, where, and what to do about it, in one sentence. On the command line it is printed without a
/// stack and the program ends with <see cref="ExitCode.Refused"/>; on a page it is shown and nothing has been changed.
/// </summary>
/// <param name="sentence">One full sentence for a person, without a child's data.</param>
public sealed class RefusalException(string sentence) : Exception(sentence);
