namespace Keikocho.App.Shared.Parts;

/// <summary>How the style sheet draws a belt.</summary>
public static class BeltDrawing
{
    /// <summary>The classes of a belt's drawing.</summary>
    /// <param name="cloth">The colour.</param>
    /// <param name="tips">Red tips, 0 to 2.</param>
    /// <param name="more">One more class; null for none.</param>
    /// <exception cref="ArgumentOutOfRangeException">More tips than can be drawn, or no such colour.</exception>
    public static string Classes(BeltCloth cloth, int tips, string? more = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(tips);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(tips, 2);
        var colour = cloth switch
        {
            BeltCloth.White => null,
            BeltCloth.Yellow => "belt-yellow",
            BeltCloth.Orange => "belt-orange",
            BeltCloth.Green => "belt-green",
            BeltCloth.Blue => "belt-blue",
            BeltCloth.Brown => "belt-brown",
            BeltCloth.Black => "belt-black",
            _ => throw new ArgumentOutOfRangeException(nameof(cloth), cloth, "There is no such cloth."),
        };
        var tip = tips switch { 0 => null, 1 => "tip-1", _ => "tip-2" };
        return string.Join(' ', new[] { "belt", more, colour, tip }.OfType<string>());
    }
}
