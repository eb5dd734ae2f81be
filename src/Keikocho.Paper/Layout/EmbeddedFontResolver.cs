using PdfSharp.Fonts;

namespace Keikocho.Paper.Layout;

/// <summary>Gives the PDF library our own fonts and no others, whatever the machine has.</summary>
internal sealed class EmbeddedFontResolver : IFontResolver
{
    private static readonly Lock Gate = new();

    private EmbeddedFontResolver()
    {
    }

    /// <summary>Sets the resolver of the whole process, once. Refuses when somebody else has set another.</summary>
    public static void Use()
    {
        lock (Gate)
        {
            if (GlobalFontSettings.FontResolver is EmbeddedFontResolver)
                return;
            if (GlobalFontSettings.FontResolver is not null)
                throw new InvalidOperationException("Another font resolver is set; papers use embedded fonts only.");
            GlobalFontSettings.FontResolver = new EmbeddedFontResolver();
        }
    }

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic)
    {
        var face = FontSet.Faces.FirstOrDefault(face => face.Family == familyName && face.Bold == isBold) ?? FontSet.Faces[isBold ? 1 : 0];
        return new FontResolverInfo(FaceName(face), false, false);
    }

    /// <inheritdoc/>
    public byte[]? GetFont(string faceName) => FontSet.Faces.FirstOrDefault(face => FaceName(face) == faceName)?.File;

    private static string FaceName(FontFace face) => face.Bold ? face.Family + " bold" : face.Family + " regular";
}
