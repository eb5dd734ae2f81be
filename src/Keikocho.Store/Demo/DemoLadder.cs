using Keikocho.Store.Syllabus;

namespace Keikocho.Store.Demo;

/// <summary>The demo club's own ladder, a sample: no body's list. The figures are ours.</summary>
internal static class DemoLadder
{
    private static readonly string[] Cloths = ["white", "yellow", "orange", "green"];
    private static readonly string[] Tips = ["", ", one red tip", ", two red tips"];

    /// <summary>Highest step that the demo gives: green.</summary>
    public const int Highest = 9;

    /// <summary>From white to green, lowest first.</summary>
    public static IReadOnlyList<RankRow> Ranks(DemoIds ids, Guid ladder, DateTimeOffset madeAt) =>
    [
        .. Enumerable.Range(0, Highest + 1).Select(step => new RankRow
        {
            Club = 1,
            Id = ids.Of(DemoPart.Rank, madeAt, step),
            LadderId = ladder,
            Name = char.ToUpperInvariant(Cloths[step / 3][0]) + Cloths[step / 3][1..] + Tips[step % 3],
            Cloth = Cloths[step / 3],
            Tips = step % 3,
            Position = step + 1,
        }),
    ];

    /// <summary>Lessons attended since the last rank before the step above <paramref name="step"/>; 14 in the first course.</summary>
    public static int LessonsNeeded(int step) => 14 + 4 * step;

    /// <summary>Full weeks since the last rank on the test day; 10 in the first course.</summary>
    public static int WeeksNeeded(int step) => 10 + 2 * step;
}
