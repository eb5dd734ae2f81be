namespace Keikocho.Paper.Sheets;

/// <summary>Sizes of type on a sheet. They grow and shrink together so that a sheet fills one page where it can.</summary>
/// <param name="Scale">1 for the middle size.</param>
internal sealed record SheetSizes(double Scale)
{
    // Steps of the scale, smallest first. The first is that of the printed page of the screen: 10 points, and 8.3 for the small lines.
    private static readonly double[] Steps = [0.9, 0.93, 0.96, 1, 1.05, 1.1, 1.16, 1.22, 1.28, 1.36, 1.44, 1.52, 1.6];
    private const int Largest = 8;

    /// <summary>Place of the largest size of a sheet that runs on.</summary>
    public const int LargestRunningOn = 5;

    /// <summary>Sizes to try for a child's sheet, smallest first.</summary>
    public static IReadOnlyList<double> InTheHand { get; } = Steps[..(Largest + 1)];

    /// <summary>Sizes to try for the copy on the wall, which is read from farther away.</summary>
    public static IReadOnlyList<double> OnTheWall { get; } = Steps;

    /// <summary>An item's line.</summary>
    public double Item => 10.7 * Scale;

    /// <summary>A word and its meaning.</summary>
    public double Word => 10.1 * Scale;

    /// <summary>The lines under an item.</summary>
    public double Small => 9.2 * Scale;

    /// <summary>Heading of a section.</summary>
    public double Heading => 12.8 * Scale;

    /// <summary>Space between two items.</summary>
    public double Gap => 4.2 * Scale;
}
