using Keikocho.Core.Intake;
using static Keikocho.Core.Tests.Intake.Grids;

namespace Keikocho.Core.Tests.Intake;

public sealed class RosterTests
{
    [Theory]
    [InlineData("First name|Last name|DOB", "GivenName FamilyName BirthDate")]
    [InlineData("Vorname|Name|Geburtsdatum|Gürtel|Gewicht", "GivenName FamilyName BirthDate Rank Size")]
    [InlineData("Prénom|Nom|Date de naissance|Ceinture|Santé", "GivenName FamilyName BirthDate Rank Medical")]
    [InlineData("Voornaam|Achternaam|Geboortedatum|Telefoon ouders", "GivenName FamilyName BirthDate ContactPhone")]
    [InlineData("Nombre|Apellidos|Fecha de nacimiento|Correo electrónico", "GivenName FamilyName BirthDate ContactEmail")]
    [InlineData("Name|Date of birth (dd/mm/yyyy)|Mother's mobile|Parent 2 e-mail|Emergency tel", "FullName BirthDate ContactPhone ContactEmail ContactPhone")]
    [InlineData("Child|Born|Medical notes - private|Shoe|Photo OK", "FullName BirthDate Medical NotRead PhotoConsent")]
    public void Headers_are_recognised(string header, string meanings)
        => Assert.Equal(meanings, string.Join(' ', GuessColumns.Guess(Of($"Our club\n\n{header}\na|b|c|d|e")).Columns.Where(column => column.Header.Length > 0).Select(column => column.Meaning)));

    [Fact]
    public void Without_headers_the_values_tell_and_what_the_instructor_says_goes_before()
    {
        var sheet = Of("Ada|Brook|2015-01-02|ada@example.org\nBen|Quay|2016-03-04|ben@example.org");
        Assert.Equal("GivenName FamilyName BirthDate ContactEmail", string.Join(' ', GuessColumns.Guess(sheet).Columns.Select(column => column.Meaning)));
        var said = GuessColumns.Guess(sheet, new Dictionary<int, ColumnMeaning> { [1] = ColumnMeaning.FamilyName, [2] = ColumnMeaning.GivenName });
        Assert.Equal("FamilyName GivenName BirthDate ContactEmail", string.Join(' ', said.Columns.Select(column => column.Meaning)));
    }

    [Fact]
    public void A_column_that_proves_its_order_is_not_asked_about()
    {
        var reading = Roster(Of("Given name|Surname|Born\nAda|Brook|3/4/2015\nBen|Quay|13/4/2015"));
        Assert.True(reading.IsSettled);
        Assert.Equal(new DateOnly(2015, 4, 3), reading.Lines[0].Child.BirthDate);
    }

    [Fact]
    public void A_column_that_contradicts_itself_is_asked_about_and_says_where()
    {
        var sheet = Of("Given name|Surname|Born\nAda|Brook|3/4/2015\nBen|Quay|13/4/2015\nCy|Weir|4/13/2015");
        var doubt = Assert.Single(Roster(sheet).Doubts);
        Assert.Contains("row 3 can only have the day first, row 4 only the month", doubt.Sentence, StringComparison.Ordinal);
        var reading = Roster(sheet, Say((doubt.Key, "month-first")));
        Assert.Equal([new DateOnly(2015, 3, 4), new DateOnly(2015, 4, 13), new DateOnly(2015, 4, 13)], reading.Lines.Select(line => line.Child.BirthDate!.Value));
    }

    [Fact]
    public void An_answer_that_was_not_offered_leaves_the_doubt_open_and_says_so()
    {
        var sheet = Of("Given name|Surname|Born\nAda|Brook|3/4/2015");
        var doubt = Assert.Single(Roster(sheet, Say(("order:3", "sideways"))).Doubts);
        Assert.False(doubt.IsSettled);
        Assert.StartsWith("'sideways' is not an answer", doubt.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Dates_that_a_spreadsheet_turned_round_are_asked_about()
    {
        Cell[] Row(string given, Cell born) => [Cell.OfText(given), Cell.OfText("Brook"), born];
        var sheet = new Sheet("Juniors", [Row("Given name", Cell.OfText("Born")) is var head ? [head[0], Cell.OfText("Surname"), head[2]] : [],
            Row("Ada", Day(2015, 4, 3)), Row("Ben", Day(2014, 5, 1)), Row("Cy", Day(2016, 12, 2)), Row("Dee", Cell.OfText("13/4/2015")), Row("Eve", Cell.OfText("25/12/2013")), Row("Flo", Cell.OfText("30/1/2017"))]);
        var doubt = Assert.Single(Roster(sheet).Doubts, doubt => doubt.Kind == DoubtKind.DatesSwapped);
        Assert.Equal(new DateOnly(2015, 3, 4), Roster(sheet, Say((doubt.Key, "swap"))).Lines[0].Child.BirthDate);
        Assert.Equal(new DateOnly(2015, 4, 3), Roster(sheet, Say((doubt.Key, "as-they-are"))).Lines[0].Child.BirthDate);
    }

    [Fact]
    public void Whole_names_without_a_comma_are_asked_about_once()
    {
        var sheet = Of("Name|Born\nAda Brook|2015-01-02\nQuay, Ben|2015-01-03\nCy van der Weir|2015-01-04\nLOCK Dee|2015-01-05");
        var doubt = Assert.Single(Roster(sheet).Doubts);
        Assert.Equal(DoubtKind.NameOrder, doubt.Kind);
        Assert.Equal(["Ada/Brook", "Ben/Quay", "Cy/van der Weir", "Dee/LOCK"], Roster(sheet, Say((doubt.Key, "given-first"))).Lines.Select(line => $"{line.Child.GivenName}/{line.Child.FamilyName}"));
        Assert.Equal("Brook/Ada", Roster(sheet, Say((doubt.Key, "family-first"))).Lines.Select(line => $"{line.Child.GivenName}/{line.Child.FamilyName}").First());
    }

    [Fact]
    public void A_missing_birth_date_may_be_typed()
    {
        var sheet = Of("Given name|Surname|Born\nAda|Brook|\nBen|Quay|2015-01-02");
        var doubt = Assert.Single(Roster(sheet).Doubts);
        Assert.Equal(new DateOnly(2016, 2, 29), Roster(sheet, Say((doubt.Key, "=2016-02-29"))).Lines[0].Child.BirthDate);
        Assert.False(Roster(sheet, Say((doubt.Key, "=2015-02-29"))).IsSettled);
        Assert.True(Roster(sheet, Say((doubt.Key, "leave-out"))).IsSettled);
    }

    [Fact]
    public void The_same_child_twice_is_joined_kept_apart_or_set_aside_as_answered()
    {
        var sheet = Of("Given name|Surname|Born|Phone\nAda|Brook|2015-01-02|0777 1234567\nÀDA|brook|2015-01-02|0777 7654321");
        var doubt = Assert.Single(Roster(sheet).Doubts);
        Assert.Equal((DoubtKind.SameChildTwice, "one"), (doubt.Kind, doubt.Proposed));
        var one = Roster(sheet, Say((doubt.Key, "one")));
        Assert.Equal([2, 3], Assert.Single(one.Lines).Rows);
        Assert.Equal(["0777 1234567", "0777 7654321"], one.Lines[0].Child.Contacts.SelectMany(contact => contact.Phones));
        Assert.Equal("ÀDA", Roster(sheet, Say((doubt.Key, "one-later"))).Lines[0].Child.GivenName);
        Assert.Equal(2, Roster(sheet, Say((doubt.Key, "two"))).New);
        var aside = Roster(sheet, Say((doubt.Key, "set-aside")));
        Assert.Equal((1, 1), (aside.New, aside.SetAside));
        foreach (var answer in new[] { "one", "one-later", "two", "set-aside" }) Assert.Empty(ReadingCheck.Faults(sheet, Roster(sheet, Say((doubt.Key, answer)))));
    }

    [Fact]
    public void Two_children_of_one_name_are_said_and_two_spellings_of_one_birthday_asked()
    {
        var reading = Roster(Of("Given name|Surname|Born\nAda|Brook|2015-01-02\nAda|Brook|2017-05-06\nJon|Quay|2014-02-03\nJonas|Quay|2014-02-03\nTim|Weir|2014-02-03"));
        Assert.Equal([(DoubtKind.Namesakes, "two"), (DoubtKind.NearlySameChild, null)], reading.Doubts.Select(doubt => (doubt.Kind, doubt.Proposed)));
    }

    [Fact]
    public void A_known_child_is_recognised_by_name_and_birth_date_and_differences_are_each_asked()
    {
        var known = new[] { Known(1, "Ada", "Brook", new(2015, 1, 2), registration: "R1") };
        var sheet = Of("Given name|Surname|Born|Belt|Reg no\nADA|Brook|2015-01-02|yellow|R2");
        var reading = Roster(sheet, known: known);
        Assert.Equal(["given name", "rank", "registration number"], reading.Lines[0].Differences.Select(difference => difference.Field));
        Assert.Equal(["leave", "take", "leave"], reading.Doubts.Select(doubt => doubt.Proposed));
        var settled = Roster(sheet, Answers.None.WithProposed(reading.Doubts), known);
        Assert.True(settled.IsSettled);
        Assert.Equal((0, 1), (settled.New, settled.Changed));
        Assert.Equal([false, true, false], settled.Lines[0].Differences.Select(difference => difference.Take!.Value));
    }

    [Fact]
    public void A_name_that_is_known_with_another_birth_date_is_asked_about_and_another_child_is_proposed()
    {
        var known = new[] { Known(1, "Ada", "Brook", new(2015, 1, 2)) };
        var sheet = Of("Given name|Surname|Born\nAda|Brook|2016-07-08");
        var doubt = Assert.Single(Roster(sheet, known: known).Doubts);
        Assert.Equal((DoubtKind.PerhapsKnown, "new"), (doubt.Kind, doubt.Proposed));
        Assert.Equal(1, Roster(sheet, Say((doubt.Key, "new")), known).New);
        Assert.Equal("birth date", Assert.Single(Roster(sheet, Say((doubt.Key, doubt.Offers[0].Code)), known).Lines[0].Differences).Field);
    }

    [Fact]
    public void A_rank_the_ladder_lacks_is_asked_once_a_word()
    {
        var sheet = Of("Given name|Surname|Belt\nAda|Brook|Yellow Belt\nBen|Quay|yellow belt\nCy|Weir|white");
        var doubt = Assert.Single(Roster(sheet, ranks: ["white", "yellow"]).Doubts);
        Assert.Equal("rank:yellow", doubt.Proposed);
        Assert.Equal(["yellow", "yellow", "white"], Roster(sheet, Say((doubt.Key, "rank:yellow")), ranks: ["white", "yellow"]).Lines.Select(line => line.Child.Rank));
    }

    [Fact]
    public void Contacts_keep_together_what_is_one_persons()
    {
        var reading = Roster(Of("Given name|Surname|Mum|Mobile|Dad|Dad's tel|E-mail\nAda|Brook|Eva Brook|0777 1234567|Ole 0777 7654321 (evenings)||ole@example.org"));
        var contacts = reading.Lines[0].Child.Contacts;
        Assert.Equal(["mother", "father"], contacts.Select(contact => contact.Relation));
        Assert.Equal("Eva Brook", contacts[0].Name);
        Assert.Equal(["0777 1234567"], contacts[0].Phones);
        Assert.Equal(["0777 7654321"], contacts[1].Phones);
        Assert.Equal(["ole@example.org"], contacts[1].Emails);
    }

    [Fact]
    public void Totals_repeated_headers_and_lines_set_aside_are_accounted_for()
    {
        var sheet = Of("Juniors\nGiven name|Surname|Belt\nAda|Brook|white\nGiven name|Surname|Belt\nBen|Quay|white\n\nTotal|2");
        var reading = Roster(sheet, Say(("row:5", "set-aside")));
        Assert.Equal((1, 1), (reading.New, reading.SetAside));
        Assert.Empty(ReadingCheck.Faults(sheet, reading));
        Assert.Equal("a line of totals", reading.Cells.Single(cell => (cell.Row, cell.Column) == (7, 1)).Why);
        Assert.Equal("the headers again", reading.Cells.Single(cell => (cell.Row, cell.Column) == (4, 1)).Why);
    }

    [Fact]
    public void The_check_finds_a_cell_that_was_dropped_and_a_row_read_twice()
    {
        var sheet = Of("Given name|Surname\nAda|Brook\nBen|Quay");
        var good = Roster(sheet);
        Assert.Empty(ReadingCheck.Faults(sheet, good));
        Assert.NotEmpty(ReadingCheck.Faults(sheet, good with { Cells = [.. good.Cells.Skip(1)] }));
        Assert.NotEmpty(ReadingCheck.Faults(sheet, good with { Cells = [.. good.Cells, good.Cells[0]] }));
        Assert.NotEmpty(ReadingCheck.Faults(sheet, good with { Lines = [.. good.Lines, good.Lines[0]] }));
        Assert.NotEmpty(ReadingCheck.Faults(sheet, good with { Lines = [good.Lines[0]] }));
    }
}
