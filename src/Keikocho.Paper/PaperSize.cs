namespace Keikocho.Paper;

/// <summary>The sheets that printers of our clubs hold.</summary>
public enum PaperSize
{
    /// <summary>ISO 216 A4, 210 x 297 mm.</summary>
    A4 = 0,

    /// <summary>US Letter, 8.5 x 11 inches.</summary>
    Letter = 1,
}
