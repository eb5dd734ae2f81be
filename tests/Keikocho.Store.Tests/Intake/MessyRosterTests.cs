using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Intake;

public sealed class MessyRosterTests
{
    [Theory]
    [InlineData("messy-roster.xlsx")]
    [InlineData("messy-roster-comma-utf8.csv")]
    [Statement(98)]
    public void Sixty_children_with_mixed_dates_and_duplicates_are_not_settled_until_each_doubt_is(string file)
    {
        var sheet = IntakeFiles.Sheet(file);
        var reading = ReadRoster.Read(IntakeFiles.Roster(sheet));

        Assert.False(reading.IsSettled);
        var order = Assert.Single(reading.Doubts, doubt => doubt.Kind == DoubtKind.DateOrder);
        Assert.Contains("the day first", order.Sentence, StringComparison.Ordinal);
        Assert.Contains("the month first", order.Sentence, StringComparison.Ordinal);
        Assert.Empty(ReadingCheck.Faults(sheet, reading));

        // Settle one doubt after another; new ones may come up once dates are known. Saving is allowed only at the end.
        var answers = Answers.None.With(order.Key, "day-first");
        var rounds = 0;
        var met = new HashSet<DoubtKind>();
        while (ReadRoster.Read(IntakeFiles.Roster(sheet, answers)) is { IsSettled: false } open)
        {
            Assert.Empty(ReadingCheck.Faults(sheet, open));
            met.UnionWith(open.Doubts.Select(doubt => doubt.Kind));
            var doubt = open.Doubts.First(doubt => !doubt.IsSettled);
            answers = answers.With(doubt.Key, doubt.Proposed ?? doubt.Offers.Select(offer => offer.Code).First(code => code is "leave-out" or "keep" or "one"));
            Assert.True(++rounds < 100);
        }
        DoubtKind[] expected =
        [
            DoubtKind.DateOrder, DoubtKind.RankUnknown, DoubtKind.DateNotOne, DoubtKind.BirthMissing, DoubtKind.DateUnlikely, DoubtKind.PhoneNotOne,
            DoubtKind.ConsentUnknown, DoubtKind.NameMissing, DoubtKind.SameChildTwice, DoubtKind.Namesakes,
        ];
        Assert.Superset(expected.ToHashSet(), met);
        var settled = ReadRoster.Read(IntakeFiles.Roster(sheet, answers));
        Assert.Empty(ReadingCheck.Faults(sheet, settled));
        // 60 children and a namesake; three lines were the same child again.
        Assert.Equal(61, settled.New);
        Assert.Equal(3, settled.Lines.Count(line => line.Rows.Count == 2));
        Assert.Equal(new DateOnly(2016, 2, 29), settled.Lines.Single(line => line.Rows.Contains(8)).Child.BirthDate);
    }

    [Fact]
    public void The_order_of_day_and_month_changes_what_is_read()
    {
        var sheet = IntakeFiles.Sheet("messy-roster.xlsx");
        var key = ReadRoster.Read(IntakeFiles.Roster(sheet)).Doubts.Single(doubt => doubt.Kind == DoubtKind.DateOrder).Key;
        var day = ReadRoster.Read(IntakeFiles.Roster(sheet, Answers.None.With(key, "day-first")));
        var month = ReadRoster.Read(IntakeFiles.Roster(sheet, Answers.None.With(key, "month-first")));
        // Row 5 is text, 04/11/2019; row 4 a real date, which no answer changes.
        Assert.Equal(new DateOnly(2019, 11, 4), day.Lines.Single(line => line.Rows[0] == 5).Child.BirthDate);
        Assert.Equal(new DateOnly(2019, 4, 11), month.Lines.Single(line => line.Rows[0] == 5).Child.BirthDate);
        Assert.Equal(day.Lines[0].Child.BirthDate, month.Lines[0].Child.BirthDate);
    }

    [Fact]
    public void Medical_and_weight_columns_are_named_and_their_values_are_nowhere_in_the_reading()
    {
        var sheet = IntakeFiles.Sheet("messy-roster.xlsx");
        var reading = ReadRoster.Read(IntakeFiles.Roster(sheet));
        Assert.Equal([ColumnMeaning.Medical, ColumnMeaning.Size], reading.Columns.Columns.Where(column => column.IsSetAside).Select(column => column.Meaning));
        Assert.Contains(reading.Notes, note => note.Contains("'Medical'", StringComparison.Ordinal) && note.Contains("set aside", StringComparison.Ordinal));
        var all = System.Text.Json.JsonSerializer.Serialize(reading);
        Assert.DoesNotContain("asthma", all, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("messy-roster.xlsx")]
    [InlineData("messy-roster-comma-utf8.csv")]
    [Statement(99)]
    public void The_same_file_again_doubles_nobody_and_changes_nothing(string file)
    {
        var sheet = IntakeFiles.Sheet(file);
        var (settled, answers) = Settled(sheet);
        var known = settled.Lines.Where(line => line.Standing == LineStanding.New).Select((line, i) => new KnownPerson(new PersonId(new Guid(i + 1, 0, 0, new byte[8])), line.Child)).ToList();

        // With the answers of the first time, and without any.
        var withAnswers = ReadRoster.Read(IntakeFiles.Roster(sheet, answers, known));
        Assert.True(withAnswers.IsSettled);
        Assert.Equal((0, known.Count, 0), (withAnswers.New, withAnswers.Unchanged, withAnswers.Changed));
        Assert.Empty(ReadingCheck.Faults(sheet, withAnswers));

        var (again, _) = Settled(sheet, known);
        Assert.Equal(0, again.New);
        Assert.Empty(ReadingCheck.Faults(sheet, again));
    }

    [Fact]
    public void An_erased_child_is_not_brought_back()
    {
        var sheet = IntakeFiles.Sheet("messy-roster.xlsx");
        var (settled, answers) = Settled(sheet);
        var gone = settled.Lines.First(line => line.Child.BirthDate is not null).Child;
        string Digest(string text) => Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes("salt" + text)));
        var erased = new ErasedPersons(Digest, new HashSet<string> { Digest(ErasedPersons.Identity(gone.FullName, gone.BirthDate)) });
        var again = ReadRoster.Read(IntakeFiles.Roster(sheet, answers, erased: erased));
        Assert.Equal(settled.New - 1, again.New);
        Assert.DoesNotContain(gone.FullName, System.Text.Json.JsonSerializer.Serialize(again), StringComparison.Ordinal);
        Assert.Empty(ReadingCheck.Faults(sheet, again));
    }

    internal static (RosterReading Reading, Answers Answers) Settled(Sheet sheet, IReadOnlyList<KnownPerson>? known = null)
    {
        var answers = Answers.None;
        for (var round = 0; round < 200; round++)
        {
            var reading = ReadRoster.Read(IntakeFiles.Roster(sheet, answers, known));
            if (reading.IsSettled) return (reading, answers);
            foreach (var doubt in reading.Doubts.Where(doubt => !doubt.IsSettled))
                answers = answers.With(doubt.Key, doubt.Proposed ?? doubt.Offers[0].Code);
        }
        throw new InvalidOperationException("The doubts do not end.");
    }
}
