namespace Keikocho.Core.Attendance;

/// <summary>Lessons of one child in the last 12 months.</summary>
/// <param name="Held">Lessons held for this child.</param>
/// <param name="Attended">Lessons attended, at most <paramref name="Held"/>.</param>
public sealed record LessonCount(int Held, int Attended)
{
    internal void Guard()
    {
        if (Held < 0 || Attended < 0 || Attended > Held)
            throw new ArgumentOutOfRangeException(nameof(Attended), Attended, $"Attended is from 0 to the {Held} held.");
    }
}

/// <summary>What is believed of one child's rate: a beta distribution.</summary>
/// <param name="A">Lessons attended, the prior's included; above 0.</param>
/// <param name="B">Lessons missed, the prior's included; above 0.</param>
public sealed record ChildRate(double A, double B)
{
    /// <summary>The chance that the child comes to one lesson, 0 to 1.</summary>
    public double Mean => A / (A + B);
}
