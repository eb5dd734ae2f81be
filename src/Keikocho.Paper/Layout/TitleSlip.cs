namespace Keikocho.Paper.Layout;

/// <summary>The title slip of a notebook: a heavy frame with a fine one inside, its words from top to bottom. Decoration.</summary>
internal static class TitleSlip
{
    /// <summary>Its width.</summary>
    public const double Width = 25;

    /// <summary>Its least height.</summary>
    public const double Height = 58;

    /// <summary>Draws it.</summary>
    public static void Draw(Page page, Area area, string words)
    {
        page.Add(new BoxInk(area.Inset(0.7, 0.7), 1.4));
        page.Add(new BoxInk(area.Inset(2.8, 2.8), 0.35));
        const double size = 13;
        var pitch = Math.Min((area.Height - 10) / words.Length, size * 1.35);
        var top = area.Y + ((area.Height - (pitch * words.Length)) / 2);
        for (var i = 0; i < words.Length; i++)
        {
            page.Line([new Words(words[i].ToString(), true)], area.X + (area.Width / 2), top + (pitch * (i + 0.5)) + (size * 0.37), size, Align.Centre);
        }
    }
}
