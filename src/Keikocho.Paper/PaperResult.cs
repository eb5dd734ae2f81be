namespace Keikocho.Paper;

/// <summary>A paper as it can be printed or kept.</summary>
/// <param name="Pdf">The PDF file. Its bytes differ from run to run (font tags, ids); its text and places do not.</param>
/// <param name="MissingGlyphs">The characters that no font of ours has, each once, by code point. On the paper each stands as 〓.</param>
public sealed record PaperResult(byte[] Pdf, IReadOnlyList<string> MissingGlyphs);
