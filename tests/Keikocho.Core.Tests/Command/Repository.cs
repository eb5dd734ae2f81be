namespace Keikocho.Core.Tests.Command;

/// <summary>Finds the repository that the tests were built in, and the fenced blocks of its pages.</summary>
internal static class Repository
{
    public static string Root
    {
        get
        {
            var at = new DirectoryInfo(AppContext.BaseDirectory);
            while (at is not null && !File.Exists(Path.Combine(at.FullName, "Keikocho.slnx")))
                at = at.Parent;
            return at?.FullName ?? throw new InvalidOperationException("The tests run inside the repository.");
        }
    }

    public static IReadOnlyList<string> Blocks(string page, string fence)
    {
        var blocks = new List<string>();
        List<string>? open = null;
        foreach (var line in page.Split('\n'))
        {
            if (open is null && line.Trim() == "```" + fence)
                open = [];
            else if (open is not null && line.Trim() == "```")
            {
                blocks.Add(string.Join('\n', open));
                open = null;
            }
            else
                open?.Add(line);
        }

        return blocks;
    }
}
