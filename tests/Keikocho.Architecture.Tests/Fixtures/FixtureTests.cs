using Keikocho.Testing;
using Xunit;

namespace Keikocho.Architecture.Tests.Fixtures;

/// <summary>What all other tests stand on.</summary>
public class FixtureTests
{
    [Fact]
    public void A_folder_is_empty_at_first_and_gone_at_the_end()
    {
        string path;
        using (var folder = new TempFolder())
        {
            path = folder.Path;
            Assert.Empty(Directory.EnumerateFileSystemEntries(path));
            File.WriteAllText(Path.Combine(folder.Folder("inner"), "note.txt"), "x");
            Assert.StartsWith(path, folder.File("club.keikocho"), StringComparison.Ordinal);
        }

        Assert.False(Directory.Exists(path));
    }

    [Fact]
    public void Two_folders_differ()
    {
        using var one = new TempFolder();
        using var other = new TempFolder();

        Assert.NotEqual(one.Path, other.Path);
    }

    [Fact]
    public void A_fixed_time_stands_still_until_moved()
    {
        var time = FixedTime.At("2026-03-03T17:30");
        var start = time.GetTimestamp();
        Assert.Equal(new DateTimeOffset(2026, 3, 3, 17, 30, 0, TimeSpan.Zero), time.GetUtcNow());

        time.Step(TimeSpan.FromMinutes(75));
        Assert.Equal(TimeSpan.FromMinutes(75), time.GetElapsedTime(start));

        time.Set(new DateTimeOffset(2026, 3, 2, 18, 30, 0, TimeSpan.FromHours(1)));
        Assert.Equal(new DateTimeOffset(2026, 3, 2, 17, 30, 0, TimeSpan.Zero), time.GetUtcNow());
        Assert.Equal(TimeSpan.Zero, time.GetUtcNow().Offset);
    }

    [Fact]
    public void A_kept_text_that_differs_is_shown_at_its_first_line()
    {
        Assert.Null(Golden.FirstDifference("a\nb", "a\nb"));
        Assert.Equal("Line 2: kept \"b\", now \"c\".", Golden.FirstDifference("a\nb", "a\nc"));
        Assert.Equal("Line 2: kept \"(end of file)\", now \"b\".", Golden.FirstDifference("a", "a\nb"));
    }

    [Fact]
    public void A_tool_is_found_in_the_order_of_its_names()
    {
        using var folder = new TempFolder();
        var ending = OperatingSystem.IsWindows() ? ".exe" : "";
        File.WriteAllText(folder.File("second" + ending), "");
        File.WriteAllText(folder.File("third" + ending), "");

        Assert.Equal(folder.File("second" + ending), Tool.Find($"nowhere{Path.PathSeparator}{folder.Path}", ["first", "second", "third"]));
        Assert.Null(Tool.Find(folder.Path, ["first"]));
    }
}
