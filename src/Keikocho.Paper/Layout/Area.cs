namespace Keikocho.Paper.Layout;

/// <summary>A rectangle in points; the origin is the top left corner of the sheet.</summary>
internal readonly record struct Area(double X, double Y, double Width, double Height)
{
    /// <summary>Right edge.</summary>
    public double Right => X + Width;

    /// <summary>Bottom edge.</summary>
    public double Bottom => Y + Height;

    /// <summary>The area at another place.</summary>
    public Area Moved(double across, double down) => this with { X = X + across, Y = Y + down };

    /// <summary>The area without a strip of the given widths.</summary>
    public Area Inset(double across, double down) => new(X + across, Y + down, Width - (2 * across), Height - (2 * down));
}
