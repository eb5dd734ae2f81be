namespace Keikocho.App.Commands;

/// <summary>How the program ends; scripts rely on these numbers.</summary>
public static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>A clear refusal; nothing was changed. One sentence stands on the error output.</summary>
    public const int Refused = 1;

    /// <summary>Wrong usage: an unknown verb, option or value.</summary>
    public const int WrongUsage = 2;

    /// <summary>Something nobody expected; the details stand on the error output.</summary>
    public const int Unexpected = 3;
}
