namespace Keikocho.Paper.Sheets;

/// <summary>A colour of cloth that papers can draw.</summary>
public enum BeltColour
{
    /// <summary>White.</summary>
    White,

    /// <summary>Yellow.</summary>
    Yellow,

    /// <summary>Orange.</summary>
    Orange,

    /// <summary>Green.</summary>
    Green,

    /// <summary>Blue.</summary>
    Blue,

    /// <summary>Brown.</summary>
    Brown,

    /// <summary>Black.</summary>
    Black,

    /// <summary>Red.</summary>
    Red,

    /// <summary>Purple.</summary>
    Purple,

    /// <summary>Grey.</summary>
    Grey,
}

/// <summary>A belt as it is drawn: decoration, its rank always stands beside it in words.</summary>
/// <param name="Cloth">The cloth.</param>
/// <param name="Second">The lower half of a belt of two colours; null for one.</param>
/// <param name="Tips">Tips, 0 to 4, on both ends in turn.</param>
/// <param name="Tip">Their colour.</param>
public sealed record BeltPicture(BeltColour Cloth, BeltColour? Second = null, int Tips = 0, BeltColour Tip = BeltColour.Red)
{
    private static readonly char[] Between = [' ', '-', '/', '–', ','];

    /// <summary>The belt of a cloth in words ("white", "white-yellow", "green and blue"); null where it cannot be drawn: a wrong picture is worse than none.</summary>
    /// <param name="cloth">The words; null for none.</param>
    /// <param name="tips">How many tips.</param>
    /// <param name="tip">Colour of the tips.</param>
    public static BeltPicture? Of(string? cloth, int tips, BeltColour tip = BeltColour.Red)
    {
        if (cloth is null || tips is < 0 or > 4)
            return null;
        var words = cloth.Split(Between, StringSplitOptions.RemoveEmptyEntries).Where(word => !word.Equals("and", StringComparison.OrdinalIgnoreCase)).ToList();
        var colours = words.Select(Colour).OfType<BeltColour>().ToList();
        if (colours.Count != words.Count || colours.Count is 0 or > 2)
            return null;
        return new BeltPicture(colours[0], colours.Count == 2 ? colours[1] : null, tips, tip);
    }

    private static BeltColour? Colour(string word)
    {
        foreach (var colour in Enum.GetValues<BeltColour>())
        {
            if (word.Equals(colour.ToString(), StringComparison.OrdinalIgnoreCase))
                return colour;
        }

        return word.Equals("gray", StringComparison.OrdinalIgnoreCase) ? BeltColour.Grey : null;
    }
}
