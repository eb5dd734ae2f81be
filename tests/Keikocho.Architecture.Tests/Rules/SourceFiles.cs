using System.Text.RegularExpressions;

namespace Keikocho.Architecture.Tests.Rules;

/// <summary>A source file: its path from the root with forward slashes, and its text.</summary>
internal sealed record SourceFile(string Path, string Text)
{
    /// <summary>The lines of the file, without their ends.</summary>
    public string[] Lines { get; } = Text.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n');

    /// <summary>Files with one of the endings below a folder, without what a build makes, in the order of their paths.</summary>
    public static IReadOnlyList<SourceFile> Below(string root, string folder, params string[] endings) =>
    [
        .. Directory.EnumerateFiles(System.IO.Path.Combine(root, folder), "*", SearchOption.AllDirectories)
            .Select(path => (Full: path, Short: System.IO.Path.GetRelativePath(root, path).Replace('\\', '/')))
            .Where(path => !path.Short.Split('/').Any(part => part is "bin" or "obj" or "node_modules"))
            .Where(path => endings.Any(ending => path.Short.EndsWith(ending, StringComparison.Ordinal)))
            .OrderBy(path => path.Short, StringComparer.Ordinal)
            .Select(path => new SourceFile(path.Short, File.ReadAllText(path.Full))),
    ];
}

/// <summary>Rules on the text of source files. Each gives all offenders, one sentence each.</summary>
internal static partial class SourceFiles
{
    /// <summary>The most lines that a file of code may have.</summary>
    public const int MostLines = 500;

    // Names of XML vocabularies, never fetched.
    private static readonly string[] Vocabularies = ["www.w3.org", "schemas.openxmlformats.org", "schemas.microsoft.com", "purl.org", "ns.adobe.com"];

    /// <summary>Files that are too long to hold one idea. What the migrations script writes does not count.</summary>
    public static IReadOnlyList<string> TooLong(IEnumerable<SourceFile> files) =>
    [
        .. files.Where(file => !file.Path.Contains("/Migrations/", StringComparison.Ordinal) && file.Lines.Length > MostLines)
            .Select(file => $"{file.Path}: {file.Lines.Length} lines"),
    ];

    /// <summary>C# files under src or tests whose namespace is not their folder. A file without a namespace may hold no type, save Program.cs.</summary>
    public static IReadOnlyList<string> OutsideTheirNamespace(IEnumerable<SourceFile> files) =>
    [
        .. from file in files
           let folder = file.Path[(file.Path.IndexOf('/', StringComparison.Ordinal) + 1)..file.Path.LastIndexOf('/')].Replace('/', '.')
           let found = Namespace().Match(file.Text)
           where found.Success
               ? found.Groups[1].Value != folder
               : !file.Path.EndsWith("/Program.cs", StringComparison.Ordinal) && TypeDeclaration().IsMatch(file.Text)
           select $"{file.Path}: {(found.Success ? $"namespace {found.Groups[1].Value}" : "no namespace")}, expected {folder}",
    ];

    /// <summary>Addresses outside this machine in a text that runs or is sent: the product makes no external request. Comments may name a source.</summary>
    public static IReadOnlyList<string> ExternalAddresses(IEnumerable<SourceFile> files) =>
        Matches(files, withComments: false, line => Address().Matches(line)
            .Select(match => match.Groups["host"].Value)
            .Where(host => !Vocabularies.Contains(host)));

    /// <summary>Folders of one machine, work left undone: what has no place in a source text.</summary>
    public static IReadOnlyList<string> WordsWithoutAPlace(IEnumerable<SourceFile> files) =>
        Matches(files, withComments: true, line => Misplaced().Matches(line).Select(match => match.Value));

    private static IReadOnlyList<string> Matches(IEnumerable<SourceFile> files, bool withComments, Func<string, IEnumerable<string>> find) =>
    [
        .. from file in files
           from numbered in file.Lines.Select((line, index) => (Line: line, Number: index + 1))
           where withComments || !CommentLine().IsMatch(numbered.Line)
           from found in find(numbered.Line)
           select $"{file.Path}:{numbered.Number}: {found}",
    ];

    [GeneratedRegex(@"^\s*namespace\s+([\w.]+)", RegexOptions.Multiline)]
    private static partial Regex Namespace();

    [GeneratedRegex(@"^\s*(?:(?:public|internal|file|static|sealed|abstract|partial|readonly|ref)\s+)*(?:class|record|struct|interface|enum)\s+\w", RegexOptions.Multiline)]
    private static partial Regex TypeDeclaration();

    [GeneratedRegex(@"^\s*(?://|\*|/\*|@\*|<!--)")]
    private static partial Regex CommentLine();

    // https://host.name, and //host.name where a page would read it as an address.
    [GeneratedRegex("""(?:(?:https?|wss?|ftp):|["'(=]\s*)//(?:[^/@\s"']+@)?(?<host>[A-Za-z0-9](?:[A-Za-z0-9-]*\.)+[A-Za-z]{2,})""", RegexOptions.IgnoreCase)]
    private static partial Regex Address();

    [GeneratedRegex(@"(?<![\w.)}/])/(?:work|root|tmp|home|Users)/\w+|\b[A-Z]:\\Users\b|\b(?:TODO|FIXME|HACK|XXX)\b|\bNotImplementedException\b")]
    private static partial Regex Misplaced();
}
