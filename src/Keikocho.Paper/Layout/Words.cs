namespace Keikocho.Paper.Layout;

/// <summary>A piece of text in one weight.</summary>
internal readonly record struct Words(string Text, bool Bold = false)
{
    /// <summary>Regular text.</summary>
    public static implicit operator Words(string text) => new(text);
}

/// <summary>One line of text, ready to draw.</summary>
/// <param name="Runs">Its runs in order; each starts where the one before it ends.</param>
/// <param name="Width">Its width at size 1.</param>
internal sealed record TextLine(IReadOnlyList<FontRun> Runs, double Width);
