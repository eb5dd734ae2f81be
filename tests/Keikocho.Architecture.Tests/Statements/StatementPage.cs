using System.Text;

namespace Keikocho.Architecture.Tests.Statements;

/// <summary>Makes docs/statements.md.</summary>
internal static class StatementPage
{
    /// <summary>The page: one table a section, and at the top how many statements are covered.</summary>
    public static string Make(IReadOnlyList<Statement> statements, IReadOnlyList<CoveringTest> tests)
    {
        var byNumber = tests.Where(test => test.IsTest).ToLookup(test => test.Statement);
        var covered = statements.Count(statement => byNumber[statement.Number].Any());
        var safety = statements.Where(statement => statement.IsSafety).ToList();
        var page = new StringBuilder();
        Line("# Statements and the tests that hold them");
        Line("");
        Line("Made from `statements.txt` and from the tests that carry `[Statement(n)]`; a test compares. Remake it with");
        Line("`KEIKOCHO_UPDATE_GOLDEN=1 ./test architecture`. S: somebody's safety hangs on it.");
        Line("");
        Line($"Covered: {covered} of {statements.Count}; of those for safety {safety.Count(s => byNumber[s.Number].Any())} of {safety.Count}.");
        foreach (var section in statements.GroupBy(statement => statement.Section))
        {
            Line("");
            Line($"## {section.Key}");
            Line("");
            Line("| | | statement | tests |");
            Line("| ---: | --- | --- | --- |");
            foreach (var statement in section)
            {
                Line($"| {statement.Number} | {(statement.IsSafety ? "S" : "")} | {statement.Text} | {Tests(byNumber[statement.Number])} |");
            }
        }

        return page.ToString();

        void Line(string text) => page.Append(text).Append('\n');
    }

    /// <summary>A sentence for each mark that cannot be right: a number that is no statement, or a method that is no test.</summary>
    public static IReadOnlyList<string> Offenders(IReadOnlyList<Statement> statements, IReadOnlyList<CoveringTest> tests) =>
    [
        .. from test in tests
           let name = $"{test.Project}: {test.TypeName}.{test.Method}"
           let fault = test.Statement < 1 || test.Statement > statements.Count ? $"there is no statement {test.Statement}"
               : !test.IsTest ? $"statement {test.Statement} is on a method that is no test, or always skipped"
               : null
           where fault is not null
           select $"{name}: {fault}",
    ];

    private static string Tests(IEnumerable<CoveringTest> tests)
    {
        var names = tests
            .OrderBy(test => test.Project, StringComparer.Ordinal)
            .ThenBy(test => test.TypeName, StringComparer.Ordinal)
            .ThenBy(test => test.Method, StringComparer.Ordinal)
            .Select(test => $"{test.Project}: `{test.TypeName}.{test.Method}`")
            .ToList();
        return names.Count == 0 ? "not yet" : string.Join("<br>", names);
    }
}
