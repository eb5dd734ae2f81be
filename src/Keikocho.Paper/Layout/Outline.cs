namespace Keikocho.Paper.Layout;

/// <summary>A red, green and blue, 0 to 255 each. Only cloth has a colour on our papers, and its words stand beside it.</summary>
internal readonly record struct Colour(byte Red, byte Green, byte Blue);

/// <summary>A curve from where the one before it ended; a straight line has its bends on its ends.</summary>
internal readonly record struct Curve(double X1, double Y1, double X2, double Y2, double X3, double Y3, double X4, double Y4);

/// <summary>An outline of straight lines and bows, built point by point; closed where it is filled.</summary>
internal sealed class Outline
{
    private readonly List<Curve> _curves = [];
    private readonly Func<double, double, (double X, double Y)> _place;
    private (double X, double Y) _at;

    /// <summary>An outline whose points are put in place by a function.</summary>
    /// <param name="x">Where it starts.</param>
    /// <param name="y">Where it starts.</param>
    /// <param name="place">From the drawing's own units to points on the page.</param>
    public Outline(double x, double y, Func<double, double, (double X, double Y)> place)
    {
        _place = place;
        _at = place(x, y);
    }

    private Outline(List<Curve> curves)
    {
        _curves = curves;
        _place = (x, y) => (x, y);
    }

    /// <summary>Its curves.</summary>
    public IReadOnlyList<Curve> Curves => _curves;

    /// <summary>A box that holds it.</summary>
    public Area Extent
    {
        get
        {
            var left = _curves.Min(curve => Math.Min(curve.X1, curve.X4));
            var top = _curves.Min(curve => Math.Min(curve.Y1, curve.Y4));
            var right = _curves.Max(curve => Math.Max(curve.X1, curve.X4));
            var bottom = _curves.Max(curve => Math.Max(curve.Y1, curve.Y4));
            return new Area(left, top, right - left, bottom - top);
        }
    }

    /// <summary>A straight line.</summary>
    public Outline Line(double x, double y)
    {
        var to = _place(x, y);
        _curves.Add(new Curve(_at.X, _at.Y, _at.X, _at.Y, to.X, to.Y, to.X, to.Y));
        _at = to;
        return this;
    }

    /// <summary>A bow with one bend, as the drawings of the screen have them.</summary>
    public Outline Bow(double bendX, double bendY, double x, double y)
    {
        var bend = _place(bendX, bendY);
        var to = _place(x, y);
        // A quadratic curve as a cubic one: both bends at two thirds of the way to the single bend.
        _curves.Add(new Curve(
            _at.X, _at.Y,
            _at.X + (2 * (bend.X - _at.X) / 3), _at.Y + (2 * (bend.Y - _at.Y) / 3),
            to.X + (2 * (bend.X - to.X) / 3), to.Y + (2 * (bend.Y - to.Y) / 3),
            to.X, to.Y));
        _at = to;
        return this;
    }

    /// <summary>The same at another place.</summary>
    public Outline Moved(double across, double down) => new([.. _curves.Select(curve => new Curve(
        curve.X1 + across, curve.Y1 + down, curve.X2 + across, curve.Y2 + down, curve.X3 + across, curve.Y3 + down, curve.X4 + across, curve.Y4 + down))]);
}

/// <summary>An outline, filled and drawn round, or only one of them.</summary>
/// <param name="Outline">The outline.</param>
/// <param name="Fill">Its colour; null for none.</param>
/// <param name="Weight">Weight of the stroke; 0 for none.</param>
/// <param name="Stroke">Colour of the stroke.</param>
internal sealed record ShapeInk(Outline Outline, Colour? Fill, double Weight, Colour Stroke = default) : Ink
{
    /// <inheritdoc/>
    public override Ink Moved(double across, double down) => this with { Outline = Outline.Moved(across, down) };
}
