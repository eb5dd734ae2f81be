using System.Reflection;
using Keikocho.Architecture.Tests.Rules;
using Keikocho.Testing;
using Xunit;

namespace Keikocho.Architecture.Tests;

public class ProjectRules
{
    private static readonly Assembly Here = typeof(ProjectRules).Assembly;

    [Fact]
    public void Projects_know_each_other_only_along_the_arrows() => Assert.Empty(Projects.AgainstTheArrows(ProjectFiles()));

    [Fact]
    public void A_reference_against_the_arrows_is_named() =>
        Assert.Equal(
            ["Keikocho.Paper must not know Keikocho.Store", "Keikocho.Extra has no place in the arrows"],
            Projects.AgainstTheArrows(
            [
                ("Keikocho.Paper", """<Project><ItemGroup><ProjectReference Include="..\Keikocho.Core\Keikocho.Core.csproj" /><ProjectReference Include="../Keikocho.Store/Keikocho.Store.csproj" /></ItemGroup></Project>"""),
                ("Keikocho.Extra", "<Project />"),
            ]));

    [Theory]
    [InlineData("Keikocho.Core")]
    [InlineData("Keikocho.Store")]
    [InlineData("Keikocho.Paper")]
    [InlineData("keikocho")]
    public void A_built_project_uses_only_what_the_arrows_allow(string assembly) =>
        Assert.Empty(Projects.OursBeyond(Assembly.Load(assembly), Projects.Arrows[assembly == "keikocho" ? "Keikocho.App" : assembly]));

    [Fact]
    public void A_built_project_that_uses_more_is_named() => Assert.Equal(["Keikocho.Testing"], Projects.OursBeyond(Here, ["Keikocho.Core"]));

    [Fact]
    public void The_sums_use_no_package() => Assert.Empty(Projects.PackagesBeyond(CoreProject()));

    [Fact]
    public void A_package_of_the_sums_is_named() =>
        Assert.Equal(
            ["Npgsql"],
            Projects.PackagesBeyond("""<Project><ItemGroup><PackageReference Include="Npgsql" /><PackageReference Include="Fine" /></ItemGroup></Project>""", "Fine"));

    [Fact]
    public void The_sums_use_no_file_network_database_or_host() =>
        Assert.Empty(Projects.NotForSumsIn(Assembly.Load("Keikocho.Core").Location));

    [Fact]
    public void Files_and_hosts_in_a_sum_are_named()
    {
        var named = Projects.NotForSumsIn(Here.Location);

        Assert.Contains("System.IO.File", named);
        Assert.Contains("Microsoft.AspNetCore.Components.ComponentBase", named);
        Assert.DoesNotContain("System.Int32", named);
    }

    private static IEnumerable<(string Name, string Xml)> ProjectFiles() =>
        Directory.EnumerateFiles(Repository.PathOf("src"), "*.csproj", SearchOption.AllDirectories)
            .Order(StringComparer.Ordinal)
            .Select(path => (Path.GetFileNameWithoutExtension(path), File.ReadAllText(path)));

    private static string CoreProject() => File.ReadAllText(Repository.PathOf("src/Keikocho.Core/Keikocho.Core.csproj"));
}
