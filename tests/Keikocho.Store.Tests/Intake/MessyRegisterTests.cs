using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;

namespace Keikocho.Store.Tests.Intake;

public sealed class MessyRegisterTests
{
    private static readonly Dictionary<(PersonId, DateOnly), RegisterSays> Nothing = [];

    [Theory]
    [InlineData("messy-register.xlsx", RegisterLayout.ChildrenDown, 20)]
    [InlineData("messy-register-utf16.csv", RegisterLayout.ChildrenDown, 20)]
    [InlineData("row-register.xlsx", RegisterLayout.OneRowAMark, 6)]
    [InlineData("row-register-semicolon-1252.csv", RegisterLayout.OneRowAMark, 6)]
    public void A_messy_register_is_read_and_the_same_file_again_changes_nothing(string file, RegisterLayout layout, int days)
    {
        var roster = MessyRosterTests.Settled(IntakeFiles.Sheet("messy-roster.xlsx")).Reading;
        var known = roster.Lines.Where(line => line.Standing == LineStanding.New).Select((line, i) => new KnownPerson(new PersonId(new Guid(i + 1, 0, 0, new byte[8])), line.Child)).ToList();
        var sheet = IntakeFiles.Sheet(file);
        var (reading, _) = Settled(new(sheet, IntakeFiles.Today, known, Nothing, ErasedPersons.None, Answers.None));
        Assert.Equal(layout, reading.Layout);
        Assert.Equal(days, reading.Days.Count);
        Assert.Equal(reading.Marks.Count, reading.Count(MarkStanding.New));
        Assert.Contains(reading.Marks, mark => mark.Says == new RegisterSays(RegisterWord.Late, layout == RegisterLayout.OneRowAMark ? new TimeOnly(17, 55) : new TimeOnly(17, 50)));
        Assert.Contains(reading.Marks, mark => mark.Says.Word == RegisterWord.Excused);
        Assert.Equal(reading.Marks.Select(mark => mark.Day).Order(), reading.Marks.Select(mark => mark.Day));

        var held = reading.Marks.Where(mark => mark.Who.Person is not null).ToDictionary(mark => (mark.Who.Person!.Value, mark.Day), mark => mark.Says);
        var (again, _) = Settled(new(sheet, IntakeFiles.Today, known, held, ErasedPersons.None, Answers.None));
        Assert.Equal(held.Count, again.Count(MarkStanding.Same));
        Assert.Equal(0, again.Count(MarkStanding.Take) + again.Count(MarkStanding.Leave));
        Assert.Equal(reading.Marks.Count - held.Count, again.Count(MarkStanding.New));
    }

    [Fact]
    public void The_messy_grid_asks_about_the_empty_date_the_sign_nobody_knows_and_the_x()
    {
        var sheet = IntakeFiles.Sheet("messy-register.xlsx");
        var reading = ReadRegister.Read(new(sheet, IntakeFiles.Today, [], Nothing, ErasedPersons.None, Answers.None));
        Assert.Contains(reading.Doubts, doubt => doubt.Kind == DoubtKind.DateWithoutMarks && doubt.Sentence.Contains("Thursday 8 October 2026", StringComparison.Ordinal));
        Assert.Contains(reading.Doubts, doubt => doubt.Key == "sign:t" && doubt.Proposed is null);
        Assert.Contains(reading.Doubts, doubt => doubt.Key == "sign:x" && doubt.Proposed == "absent");
        Assert.DoesNotContain(reading.Doubts, doubt => doubt.Kind == DoubtKind.YearMissing);
        Assert.Contains(reading.Notes, note => note.Contains("'Total'", StringComparison.Ordinal));
        Assert.Empty(reading.Marks);
    }

    private static (RegisterReading Reading, Answers Answers) Settled(RegisterQuestion question)
    {
        var answers = question.Answers;
        for (var round = 0; round < 200; round++)
        {
            var reading = ReadRegister.Read(question with { Answers = answers });
            Assert.Empty(ReadingCheck.Faults(question.Sheet, reading));
            if (reading.IsSettled) return (reading, answers);
            foreach (var doubt in reading.Doubts.Where(doubt => !doubt.IsSettled))
                answers = answers.With(doubt.Key, doubt.Proposed ?? doubt.Offers[0].Code);
        }
        throw new InvalidOperationException("The doubts do not end.");
    }
}
