using System.Text.RegularExpressions;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Keeping;

public sealed partial class ArchiveDocTests
{
    [Fact]
    public void The_page_about_the_archive_lists_exactly_the_tables_of_the_model()
    {
        using var db = new SqliteEngine("no-file-is-opened").OpenDb();
        var page = File.ReadAllText(Repository.PathOf("docs/formats/archive.md"));
        var listed = TableLine().Matches(page[page.IndexOf("| table | holds |", StringComparison.Ordinal)..]).Select(m => m.Groups[1].Value);
        Assert.Equal(Archive.Tables(db), listed);
    }

    [GeneratedRegex(@"^\| `(\w+)` \| .+ \|$", RegexOptions.Multiline)]
    private static partial Regex TableLine();
}
