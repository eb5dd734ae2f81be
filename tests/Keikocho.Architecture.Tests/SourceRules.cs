using Keikocho.Architecture.Tests.Rules;
using Keikocho.Testing;
using Xunit;

namespace Keikocho.Architecture.Tests;

public class SourceRules
{
    private static readonly IReadOnlyList<SourceFile> Sources = SourceFile.Below(Repository.Root, "src", ".cs", ".razor", ".js");

    [Fact]
    public void The_rules_read_the_sources()
    {
        Assert.Contains(Sources, file => file.Path == "src/Keikocho.App/Program.cs");
        Assert.Contains(Sources, file => file.Path == "src/Keikocho.Core/Kernel/Ids.cs");
        Assert.DoesNotContain(Sources, file => file.Path.Contains("/obj/", StringComparison.Ordinal));
    }

    [Fact]
    public void No_file_is_too_long() => Assert.Empty(SourceFiles.TooLong(Sources));

    [Fact]
    public void Too_long_a_file_is_named()
    {
        var lines = string.Concat(Enumerable.Repeat("x\n", SourceFiles.MostLines));

        Assert.Equal(
            ["src/A/Long.cs: 501 lines"],
            SourceFiles.TooLong([new("src/A/Fits.cs", lines), new("src/A/Long.cs", lines + "x\n"), new("src/A/Migrations/Made.cs", lines + lines)]));
    }

    [Fact]
    public void Every_namespace_is_its_folder() =>
        Assert.Empty(SourceFiles.OutsideTheirNamespace(SourceFile.Below(Repository.Root, "src", ".cs")));

    [Fact]
    public void A_file_in_the_wrong_folder_is_named() =>
        Assert.Equal(
            [
                "src/Keikocho.Core/Kernel/Far.cs: namespace Keikocho.Core.Evening, expected Keikocho.Core.Kernel",
                "src/Keikocho.Core/Kernel/Nowhere.cs: no namespace, expected Keikocho.Core.Kernel",
            ],
            SourceFiles.OutsideTheirNamespace(
            [
                new("src/Keikocho.Core/Kernel/Near.cs", "using System;\n\nnamespace Keikocho.Core.Kernel;\n"),
                new("src/Keikocho.Core/Kernel/Far.cs", "namespace Keikocho.Core.Evening;\n"),
                new("src/Keikocho.Core/Kernel/Nowhere.cs", "internal sealed record Lost(int Value);\n"),
                new("src/Keikocho.Core/Kernel/GlobalUsings.cs", "global using System.Globalization;\n"),
                new("src/Keikocho.App/Program.cs", "return 0;\n"),
            ]));

    [Fact]
    public void The_product_asks_nothing_of_another_machine() =>
        Assert.Empty(SourceFiles.ExternalAddresses(SourceFile.Below(Repository.Root, "src", ".cs", ".razor", ".js", ".css", ".html", ".svg", ".webmanifest")));

    [Fact]
    public void An_address_of_another_machine_is_named() =>
        Assert.Equal(
            ["src/A/a.css:1: fonts.example.org", "src/A/a.razor:2: cdn.example.org", "src/A/a.js:1: live.example.org"],
            SourceFiles.ExternalAddresses(
            [
                new("src/A/a.css", "@import url(//fonts.example.org/face.css);"),
                new("src/A/a.razor", "<svg xmlns=\"http://www.w3.org/2000/svg\"></svg>\n<script src=\"https://cdn.example.org/a.js\"></script>"),
                new("src/A/a.js", "new WebSocket('wss://live.example.org');\n// read at https://example.org\nfetch('/tap');"),
                new("src/A/a.cs", "var here = $\"http://localhost:{port}\";\nvar there = \"http://127.0.0.1/\"; // under 0.5 kg"),
            ]));

    [Fact]
    public void No_source_knows_one_machine_or_leaves_work_undone() => Assert.Empty(SourceFiles.WordsWithoutAPlace(Sources));

    [Fact]
    public void A_folder_of_one_machine_and_work_left_undone_are_named() =>
        Assert.Equal(
            ["src/A/a.cs:1: /home/me", "src/A/a.cs:2: TODO", "src/A/a.cs:3: NotImplementedException"],
            SourceFiles.WordsWithoutAPlace([new("src/A/a.cs", "var path = \"/home/me/club\";\n// TODO later\nthrow new NotImplementedException();\nvar route = \"/students/home/late\";")]));
}
