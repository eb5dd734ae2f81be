using System.Globalization;
using System.Text.RegularExpressions;

namespace Keikocho.Architecture.Tests.Statements;

/// <summary>One numbered statement of docs/statements.txt.</summary>
internal sealed record Statement(int Number, bool IsSafety, string Text, string Section);

/// <summary>Reads docs/statements.txt.</summary>
internal static partial class StatementList
{
    /// <summary>All statements in their order; throws at the first line that is none, or at a number out of order.</summary>
    public static IReadOnlyList<Statement> Read(string text)
    {
        var statements = new List<Statement>();
        var section = string.Empty;
        foreach (var line in text.ReplaceLineEndings("\n").Split('\n'))
        {
            if (line.StartsWith("## ", StringComparison.Ordinal))
            {
                section = line[3..];
            }
            else if (line.Length > 0 && line[0] != '#')
            {
                var match = Line().Match(line);
                var number = match.Success ? int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture) : 0;
                if (number != statements.Count + 1)
                {
                    throw new FormatException($"docs/statements.txt: statement {statements.Count + 1} was expected at \"{line}\".");
                }

                statements.Add(new Statement(number, match.Groups[2].Value == "S", match.Groups[3].Value, section));
            }
        }

        return statements;
    }

    [GeneratedRegex(@"^(\d+) ([S-]) (\S.*)$")]
    private static partial Regex Line();
}
