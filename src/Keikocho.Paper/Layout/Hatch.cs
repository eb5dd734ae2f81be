namespace Keikocho.Paper.Layout;

/// <summary>Slanting lines that fill an area: "nothing goes here".</summary>
internal static class Hatch
{
    /// <summary>The lines, from lower left to upper right at 45 degrees, cut at the area's edges.</summary>
    public static IEnumerable<(double X1, double Y1, double X2, double Y2)> Lines(Area area, double pitch)
    {
        // A line holds every point with (x - left) + (y - top) = sum.
        for (var sum = pitch; sum < area.Width + area.Height; sum += pitch)
        {
            var x1 = Math.Max(0, sum - area.Height);
            var x2 = Math.Min(area.Width, sum);
            yield return (area.X + x1, area.Y + sum - x1, area.X + x2, area.Y + sum - x2);
        }
    }
}
