using System.Text.RegularExpressions;
using Keikocho.Testing;
using Xunit;

namespace Keikocho.Paper.Tests;

/// <summary>The fonts of the screen are made by the same script as those of papers; nothing else looks at them.</summary>
public sealed partial class ScreenFontTests
{
    private static readonly string Folder = Repository.PathOf("src/Keikocho.App/wwwroot/fonts");

    [Fact]
    public void The_style_sheet_names_every_font_file_and_no_other()
    {
        var css = File.ReadAllText(Path.Combine(Folder, "fonts.css"));
        var named = Url().Matches(css).Select(match => match.Groups[1].Value).Order(StringComparer.Ordinal).ToList();
        var there = Directory.GetFiles(Folder, "*.woff2").Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(18, named.Count);
        Assert.Equal(there, named);
        Assert.All(there, file => Assert.Equal("wOF2"u8.ToArray(), File.ReadAllBytes(Path.Combine(Folder, file))[..4]));
        Assert.Equal(named.Count, css.Split("font-display: swap").Length - 1);
        Assert.Equal(named.Count, css.Split("unicode-range: ").Length - 1);
        Assert.DoesNotContain("://", css, StringComparison.Ordinal);
    }

    // What a first page in English fetches: latin and quotes in two weights, with kana and the common kanji for the slips.
    [Fact]
    public void The_parts_stay_small()
    {
        long Size(string part) => new FileInfo(Path.Combine(Folder, part + "-regular.woff2")).Length;
        Assert.True(Size("latin") < 30_000);
        Assert.True(Size("kana") < 50_000);
        Assert.True(Size("kanji-common") < 600_000);
    }

    [Fact]
    public void The_licences_lie_beside_the_fonts()
    {
        foreach (var folder in new[] { Folder, Repository.PathOf("src/Keikocho.Paper/Fonts") })
        {
            Assert.Contains("Copyright 2022 The BIZ UDGothic Project Authors", File.ReadAllText(Path.Combine(folder, "OFL-BIZUDPGothic.txt")), StringComparison.Ordinal);
            Assert.Contains("Google LLC", File.ReadAllText(Path.Combine(folder, "OFL-NotoSans.txt")), StringComparison.Ordinal);
        }
    }

    [GeneratedRegex("""url\("([^"/]+)"\)""")]
    private static partial Regex Url();
}
