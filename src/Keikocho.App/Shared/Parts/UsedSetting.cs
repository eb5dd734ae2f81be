using System.Collections.Immutable;
using Keikocho.Core.Kernel;

namespace Keikocho.App.Shared.Parts;

/// <summary>A setting that an answer used, in words.</summary>
/// <param name="Meaning">What it is.</param>
/// <param name="Value">The value in use with its unit.</param>
/// <param name="Source">Where the proposed value comes from.</param>
public sealed record UsedSetting(string Meaning, string Value, string Source)
{
    /// <summary>Puts the settings of an answer into words.</summary>
    /// <param name="used">What was used.</param>
    /// <param name="known">The settings of the sum, for their meanings.</param>
    public static ImmutableArray<UsedSetting> Of(IReadOnlyList<SettingUsed> used, IReadOnlyList<Setting> known)
    {
        ArgumentNullException.ThrowIfNull(used);
        ArgumentNullException.ThrowIfNull(known);
        return [.. used.Select(u => new UsedSetting(known.First(k => k.Key == u.Key).Meaning, u.Unit.Length == 0 ? u.Value : $"{u.Value} {u.Unit}", u.Source))];
    }
}
