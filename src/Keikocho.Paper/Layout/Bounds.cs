namespace Keikocho.Paper.Layout;

/// <summary>Looks over a finished draft: whatever a name's length, nothing may be drawn where a printer cuts it off.</summary>
internal static class Bounds
{
    private const double Tolerance = 0.6;

    /// <summary>Throws when anything lies outside the margins.</summary>
    public static void Check(Draft draft)
    {
        for (var i = 0; i < draft.Pages.Count; i++)
        {
            foreach (var ink in draft.Pages[i].Ink)
            {
                if (Extent(ink) is { } extent && !Holds(draft.Pages[i].Inside, extent))
                    throw new ArgumentException($"The content does not fit its sheet: page {i + 1}, {(ink is TextInk text ? $"'{text.Run.Text}'" : "a rule")}. Shorten the longest texts.", nameof(draft));
            }
        }
    }

    private static bool Holds(Area outer, Area inner) =>
        inner.X >= outer.X - Tolerance && inner.Y >= outer.Y - Tolerance && inner.Right <= outer.Right + Tolerance && inner.Bottom <= outer.Bottom + Tolerance;

    private static Area? Extent(Ink ink) => ink switch
    {
        TextInk { Upward: true } text => new Area(text.X - (text.Size * FontSet.CapitalHeight), text.Baseline - (text.Run.Width * text.Size), text.Size * FontSet.CapitalHeight, text.Run.Width * text.Size),
        TextInk text => new Area(text.X, text.Baseline - (text.Size * FontSet.CapitalHeight), text.Run.Width * text.Size, text.Size * (FontSet.CapitalHeight + 0.2)),
        LineInk line => new Area(Math.Min(line.X1, line.X2), Math.Min(line.Y1, line.Y2), Math.Abs(line.X2 - line.X1), Math.Abs(line.Y2 - line.Y1)),
        BoxInk box => box.Area,
        HatchInk hatch => hatch.Area,
        ShapeInk shape => shape.Outline.Extent,
        CircleInk circle => new Area(circle.X - circle.Radius, circle.Y - circle.Radius, 2 * circle.Radius, 2 * circle.Radius),
        _ => null,
    };
}
