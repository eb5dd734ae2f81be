using CsCheck;

namespace Keikocho.Core.Tests.Names;

/// <summary>Draws one of a few values.</summary>
internal static class Pick
{
    public static Gen<T> From<T>(params IReadOnlyList<T> values) => Gen.Int[0, values.Count - 1].Select(i => values[i]);
}
