namespace Keikocho.Core.Kernel;

/// <summary>
/// Why an answer is what it is. Each rule has its own record that derives from this one and holds the figures and dates it
/// used; <see cref="Sentence"/> says it in plain English, so that the command line, a page and a paper say the same.
/// </summary>
public abstract record Reason
{
    /// <summary>One full sentence with its figures and dates, in plain words.</summary>
    public abstract string Sentence { get; }
}
