using Keikocho.Core.Intake;

namespace Keikocho.Core.Tests.Intake;

public sealed class ImportPageTests
{
    public static TheoryData<string> Tables => ["headers", "whose", "totals", "dates", "months", "weekdays", "marks", "asked", "consent", "signs", "falls"];

    [Theory]
    [MemberData(nameof(Tables))]
    public void Each_table_of_the_page_is_the_codes_own(string name)
    {
        var page = File.ReadAllText(Path.Combine(Root(), "docs", "formats", "import.md")).ReplaceLineEndings("\n");
        var from = page.IndexOf($"<!-- {name} -->\n", StringComparison.Ordinal);
        var to = page.IndexOf($"<!-- end of {name} -->", StringComparison.Ordinal);
        Assert.True(from >= 0 && to > from, $"docs/formats/import.md has no table '{name}'.");
        Assert.Equal(Table(name), page[(from + $"<!-- {name} -->\n".Length)..to]);
    }

    internal static string Table(string name) => name switch
    {
        "headers" => Rows("column | headers", HeaderWords.Table.Select(line => (line.Meaning.ToString(), Words(line.Headers)))),
        "whose" => Rows("word | the contact is", HeaderWords.Whose.Select(line => ($"`{line.Word}`", line.Relation.Length > 0 ? line.Relation : "not said"))),
        "totals" => Rows("what | words", [("a line or column of totals", Words(HeaderWords.Totals))]),
        "dates" => Rows("form | example", DateForms.Table.Select(line => (line.Form, line.Example))),
        "months" => Rows("month | words", MonthWords.Months.Select((words, i) => ($"{i + 1}", Words(words)))),
        "weekdays" => Rows("day of the week | words", MonthWords.Weekdays.Select((words, i) => ($"{i + 1}", Words(words)))),
        "marks" => Rows("meaning | signs", Signs.Table.Select(line => (line.Meaning.ToString(), Words(line.Signs)))),
        "asked" => Rows("sign | proposal", Signs.Asked.Select(line => ($"`{line.Sign}`", line.Proposed.ToString()))),
        "signs" => Rows("meaning | signs", SignOffSigns.Table.Select(line => (line.Word.ToString(), Words(line.Signs)))),
        "falls" => Rows("what | words", [("a heading of falls", Words(FallWords.Table))]),
        "consent" => Rows("meaning | words", [("yes", Words(ConsentWords.Yes)), ("no", Words(ConsentWords.No))]),
        _ => throw new ArgumentOutOfRangeException(nameof(name)),
    };

    private static string Words(IEnumerable<string> words) => string.Join(", ", words.Select(word => $"`{word}`"));

    private static string Rows(string head, IEnumerable<(string, string)> rows)
        => $"| {head} |\n| --- | --- |\n" + string.Concat(rows.Select(row => $"| {row.Item1} | {row.Item2} |\n"));

    private static string Root()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Keikocho.slnx")))
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The tests do not lie inside the source tree.");
        return folder;
    }

    [Fact]
    public void No_header_sign_or_word_means_two_things_and_each_is_written_as_it_is_compared()
    {
        var headers = HeaderWords.Table.SelectMany(line => line.Headers).ToList();
        Assert.Equal(headers.Distinct(), headers);
        Assert.All(headers.Concat(HeaderWords.Totals).Concat(HeaderWords.Whose.Select(line => line.Word)), word => Assert.Equal(NameFold.Fold(word), word));
        var signs = Signs.Table.SelectMany(line => line.Signs).Concat(Signs.Asked.Select(line => line.Sign)).ToList();
        Assert.Equal(signs.Distinct(), signs);
        Assert.All(signs, sign => Assert.Equal(sign, Signs.Normal(sign)));
        var signOffs = SignOffSigns.Table.SelectMany(line => line.Signs).ToList();
        Assert.Equal(signOffs.Distinct(), signOffs);
        Assert.All(signOffs, sign => Assert.Equal(sign, Signs.Normal(sign)));
        Assert.All(FallWords.Table, word => Assert.Equal(NameFold.Fold(word), word));
        foreach (var table in new[] { MonthWords.Months, MonthWords.Weekdays }) Assert.Equal(table.SelectMany(words => words).Distinct(), table.SelectMany(words => words));
    }
}
