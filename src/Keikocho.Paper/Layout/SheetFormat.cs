namespace Keikocho.Paper.Layout;

/// <summary>A sheet's outer size and the margins that nothing is drawn outside of, in points.</summary>
internal sealed record SheetFormat(double Width, double Height, double MarginAcross, double MarginDown)
{
    /// <summary>Where anything may be drawn.</summary>
    public Area Inside => new(MarginAcross, MarginDown, Width - (2 * MarginAcross), Height - (2 * MarginDown));

    /// <summary>The sheet on its side.</summary>
    public SheetFormat Landscape() => new(Height, Width, MarginDown, MarginAcross);

    /// <summary>The upright sheet. Margins as on the printed pages of the screen: 14 mm; on Letter 13 mm above and below, 15 mm beside.</summary>
    public static SheetFormat Of(PaperSize size) => size switch
    {
        PaperSize.A4 => new(210.Mm(), 297.Mm(), 14.Mm(), 14.Mm()),
        PaperSize.Letter => new(612, 792, 15.Mm(), 13.Mm()),
        _ => throw new ArgumentOutOfRangeException(nameof(size), size, "A4 or Letter."),
    };
}
