using Xunit;

namespace Keikocho.Architecture.Tests.Rules;

/// <summary>How a rule fails: with all its offenders at once.</summary>
internal static class Offending
{
    /// <summary>Fails, naming each, when there is any offender.</summary>
    public static void None(IReadOnlyList<string> offenders) =>
        Assert.True(offenders.Count == 0, $"{offenders.Count} against the rule: {string.Join("; ", offenders)}");
}
