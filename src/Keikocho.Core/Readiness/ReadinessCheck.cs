namespace Keikocho.Core.Readiness;

/// <summary>x</summary>
public static class ReadinessCheck
{
    /// <summary>x</summary>
    public static IReadOnlyList<string> Objections(ReadinessParts question, ReadinessAnswer answer) => [];
}
