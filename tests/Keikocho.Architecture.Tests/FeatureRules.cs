using Keikocho.Architecture.Tests.Rules;
using Keikocho.Testing;
using Xunit;

namespace Keikocho.Architecture.Tests;

/// <summary>No two features of App need each other, but for those of the list: it may grow shorter and never longer.</summary>
public class FeatureRules
{
    // The frame of the program: it names every feature, and features use its parts.
    private static readonly string[] Frame = ["Club", "Commands", "Hosting", "Import", "Shared", "Start"];

    // Pages that link to each other and use each other's parts. Wider circles exist for the same reason and are not looked for.
    private static readonly string[] Allowed =
    [
        "Papers and ParentsPages",
        "Papers and PromotionTests",
        "ParentsPages and PromotionTests",
    ];

    [Fact]
    public void Features_point_one_way_but_for_those_that_are_listed()
    {
        var found = Features.NeedingEachOther(Inner(SourceFile.Below(Repository.Root, "src/Keikocho.App", ".cs", ".razor")));
        Assert.Empty(found.Except(Allowed));
        // A pair that is parted does not come back.
        Assert.Empty(Allowed.Except(found));
    }

    [Fact]
    public void Two_that_need_each_other_are_named() =>
        Assert.Equal(
            ["Belts and Mats"],
            Features.NeedingEachOther(
            [
                new("src/Keikocho.App/Belts/Belt.cs", "using Keikocho.App.Mats;"),
                new("src/Keikocho.App/Mats/Mat.razor", "@using Keikocho.App.Belts"),
                new("src/Keikocho.App/Other/Other.cs", "using Keikocho.App.Belts;"),
            ]));

    private static IEnumerable<SourceFile> Inner(IEnumerable<SourceFile> sources) =>
        sources.Where(f => !Frame.Any(frame => f.Path.StartsWith($"src/Keikocho.App/{frame}/", StringComparison.Ordinal)));
}
