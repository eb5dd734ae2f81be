using Keikocho.Testing;
using Xunit;

namespace Keikocho.Architecture.Tests.Statements;

public class StatementPageTests
{
    private const string MarkedName = $"{nameof(StatementPageTests)}.{nameof(Marked)}";

    private static readonly IReadOnlyList<Statement> Statements = StatementList.Read(File.ReadAllText(Repository.PathOf("docs/statements.txt")));

    [Fact]
    public void There_are_one_hundred_statements_and_forty_three_of_safety()
    {
        Assert.Equal(100, Statements.Count);
        Assert.Equal(43, Statements.Count(statement => statement.IsSafety));
    }

    [Fact]
    public void The_page_of_statements_is_up_to_date() => Golden.Check("docs/statements.md", StatementPage.Make(Statements, AllTests()));

    [Fact]
    public void Every_number_on_a_test_is_a_statement_and_every_method_with_a_number_is_a_test() =>
        Assert.Empty(StatementPage.Offenders(Statements, AllTests()));

    [Fact]
    public void Wrong_marks_are_named()
    {
        CoveringTest[] tests = [new(7, "Core", "A", "Good", true), new(101, "Core", "A", "Beyond", true), new(8, "Core", "A", "Skipped", false)];

        Assert.Equal(
            ["Core: A.Beyond: there is no statement 101", "Core: A.Skipped: statement 8 is on a method that is no test, or always skipped"],
            StatementPage.Offenders(Statements, tests));
        Assert.Contains("| 7 |  | A wrong \"here\" that was put right: the head instructor still sees the first mark, by whom and when | Core: `A.Good` |", StatementPage.Make(Statements, tests), StringComparison.Ordinal);
        Assert.Contains("Covered: 1 of 100; of those for safety 0 of", StatementPage.Make(Statements, tests), StringComparison.Ordinal);
    }

    [Fact]
    public void A_statement_out_of_order_is_refused() =>
        Assert.Contains("statement 2 was expected", Assert.Throws<FormatException>(() => StatementList.Read("1 - One\n3 S Three")).Message, StringComparison.Ordinal);

    [Fact]
    public void A_project_that_is_not_built_is_named() =>
        Assert.Contains(
            "The tests of Keikocho.Nowhere.Tests are not built",
            Assert.Throws<FileNotFoundException>(() => BuiltTests.PathOf("Keikocho.Nowhere.Tests", AppContext.BaseDirectory)).Message,
            StringComparison.Ordinal);

    [Fact]
    public void The_reader_sees_numbers_facts_and_skips()
    {
        var seen = StatementReader.Read(typeof(Marked).Assembly.Location).Where(test => test.TypeName == MarkedName).ToList();

        Assert.Equal(
            [
                new(1, "Architecture", MarkedName, nameof(Marked.Skipped), false), new(2, "Architecture", MarkedName, nameof(Marked.No_test), false),
                new(3, "Architecture", MarkedName, nameof(Marked.Test), true), new(4, "Architecture", MarkedName, nameof(Marked.Test), true),
            ],
            seen);
    }

    // The class of offenders just above is known here and nowhere else.
    private static List<CoveringTest> AllTests() =>
    [
        .. BuiltTests.Projects(Repository.PathOf("tests"))
            .SelectMany(project => StatementReader.Read(BuiltTests.PathOf(project, AppContext.BaseDirectory)))
            .Where(test => test is not { Project: "Architecture", TypeName: MarkedName }),
    ];

    /// <summary>Ends as the attributes of tests do, and runs nothing.</summary>
    [AttributeUsage(AttributeTargets.Method)]
    internal sealed class LikeFactAttribute : Attribute
    {
        public string? Skip { get; set; }
    }

    /// <summary>Offenders for the reader, and one that is none.</summary>
    internal sealed class Marked
    {
        [LikeFact(Skip = "always")]
        [Statement(1)]
        public static void Skipped() => throw new InvalidOperationException("never run");

        [Statement(2)]
        public static void No_test() => throw new InvalidOperationException("never run");

        [LikeFact]
        [Statement(3)]
        [Statement(4)]
        public static void Test() => throw new InvalidOperationException("never run");
    }
}
