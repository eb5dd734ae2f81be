using Keikocho.Core.Kernel;

namespace Keikocho.Core.Names;

/// <summary>How names are shown.</summary>
/// <param name="Macrons">True to mark long vowels: Ō-soto-gari. Proposed no; a club's own spelling is never touched.</param>
public sealed record NamesRule(bool Macrons = false)
{
    private static readonly YesNoSetting Marks = new("names.macrons", "Show long vowels with marks", false, Setting.Ours);

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Marks];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() => [Marks.Use(Macrons)];
}

/// <summary>A question to <see cref="ResolveNames"/>.</summary>
/// <param name="Written">The spellings, as somebody wrote them.</param>
/// <param name="Names">The names that are known. May be left out on the command line, where the starter library stands in.</param>
/// <param name="Rule">How names are shown.</param>
public sealed record NamesSnapshot(IReadOnlyList<string> Written, IReadOnlyList<KnownName>? Names = null, NamesRule? Rule = null);
