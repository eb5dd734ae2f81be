using CsCheck;
using Keikocho.Core.Intake;

namespace Keikocho.Core.Tests.Intake;

public sealed class AnyGridTests
{
    private static readonly string[] Words =
    [
        "", "", "", "Name", "First name", "Surname", "Born", "Belt", "Mum", "Mobile", "E-mail", "Photo", "Reg no", "Medical", "Ada", "Brook", "Ada Brook", "Quay, Ben", "Cy W.", "2015-01-02", "3/4/2015", "13/4/2015", "4/13/2015",
        "29/02/2015", "3/9", "17/9", "Thu 3", "Sept 2026", "✓", "x", "L", "17:50", "E", "?", "0", "1", "31", "42077", "Total", "2026/27", "0777 1234567", "a@b.org", "yes", "#REF!", "ø",
    ];

    private static readonly Gen<Cell> AnyCell = Gen.Frequency(
        (12, Gen.Int[0, Words.Length - 1].Select(i => Cell.OfText(Words[i]))),
        (1, Gen.String[0, 12].Select(Cell.OfText)),
        (2, Gen.Double[0, 60000].Select(Grids.Number)),
        (2, Gen.DateOnly[new(2010, 1, 1), new(2027, 12, 31)].Select(day => Grids.Day(day.Year, day.Month, day.Day))),
        (1, Gen.Bool.Select(truth => new Cell(CellKind.Boolean, truth ? "TRUE" : "FALSE", truth ? 1 : 0))),
        (1, Gen.Int[0, Words.Length - 1].Select(i => Cell.OfText(Words[i]) with { FromMerge = true })));

    private static readonly Gen<Sheet> AnySheet = AnyCell.Array[0, 8].Array[0, 14].Select(rows => new Sheet("Any", rows));

    [Fact]
    public void Any_grid_is_read_as_a_roster_with_every_cell_accounted_for_and_its_doubts_end()
        => AnySheet.Sample(sheet => Ends(sheet, answers => Grids.Roster(sheet, answers, Known, ["white", "yellow"]) is var reading ? (reading.Doubts, ReadingCheck.Faults(sheet, reading)) : default), iter: 3000);

    [Fact]
    public void Any_grid_is_read_as_a_register_with_every_cell_accounted_for_and_its_doubts_end()
        => AnySheet.Sample(sheet => Ends(sheet, answers => Grids.Register(sheet, answers, Known) is var reading ? (reading.Doubts, ReadingCheck.Faults(sheet, reading)) : default), iter: 3000);

    [Fact]
    public void Any_grid_is_read_as_sign_offs_with_every_cell_accounted_for_and_its_doubts_end()
        => AnySignOffs.Sample(sheet => Ends(sheet, answers => SignOffGrids.Question(sheet, answers, Seen) is var question && ReadSignOffs.Read(question) is var reading ? (reading.Doubts, ReadingCheck.Faults(question, reading)) : default), iter: 3000);

    [Fact]
    public void A_settled_grid_of_any_kind_read_again_over_what_it_left_brings_nothing_new() => AnySignOffs.Sample(sheet =>
    {
        var question = SignOffGrids.Question(sheet);
        var answers = Answers.None;
        for (var round = 0; round < 60; round++)
        {
            var reading = ReadSignOffs.Read(question with { Answers = answers });
            if (reading.IsSettled)
            {
                var again = ReadSignOffs.Read(question with { Answers = answers, Held = reading.Held() });
                return again.Marks.All(mark => mark.Standing == MarkStanding.Same);
            }
            if (reading.Doubts.Any(doubt => doubt.Kind == DoubtKind.NothingFound)) return true;
            foreach (var doubt in reading.Doubts.Where(doubt => !doubt.IsSettled)) answers = answers.With(doubt.Key, doubt.Proposed ?? doubt.Offers[0].Code);
        }
        return false;
    }, iter: 2000);

    [Fact]
    public void The_same_question_gives_the_same_reading() => AnySheet.Sample(sheet =>
        Said(Grids.Roster(sheet).Doubts) == Said(Grids.Roster(sheet).Doubts) && Said(Grids.Register(sheet).Doubts) == Said(Grids.Register(sheet).Doubts), iter: 300);

    private static readonly string[] OfSignOffs =
    [
        "Name", "O goshi", "ogoshi", "De ashi barai", "deashi harai", "Mate", "Yoko shiho gatame", "Yoko shiho escape", "Tai otoshi", "Falling backward", "Ukemi", "Handstand", "Ada Brook", "Quay, Ben", "Dot", "Nell Visitor",
        "MH", "✓ MH", "24/11", "10 Nov", "10/11/2026", "11/10/26 MH", "2026-11-15", "2027-01-01", "29/2", "prompted", "no",
    ];

    private static readonly Gen<Sheet> AnySignOffs = Gen.Frequency((2, Gen.Int[0, OfSignOffs.Length - 1].Select(i => Cell.OfText(OfSignOffs[i]))), (1, AnyCell)).Array[0, 7].Array[0, 10].Select(rows => new Sheet("Any", rows));

    private static readonly Dictionary<(Keikocho.Core.Kernel.PersonId, string, DateOnly), HeldSeen> Seen = new()
    {
        [(SignOffGrids.Who(1), "o-goshi", new(2026, 11, 10))] = new(Keikocho.Core.Evening.SeenWord.NotYet),
        [(SignOffGrids.Who(1), "mate", new(2026, 11, 24))] = new(Keikocho.Core.Evening.SeenWord.Good),
        [(SignOffGrids.Who(2), "mate", new(2026, 11, 24))] = new(null),
    };

    private static readonly KnownPerson[] Known = [Grids.Known(1, "Ada", "Brook", new(2015, 1, 2)), Grids.Known(2, "Ben", "Quay")];

    private static string Said(IEnumerable<Doubt> doubts) => string.Join('\n', doubts.Select(doubt => doubt.Key + doubt.Sentence));

    // Answering what is offered, round after round, comes to an end; at no time is the check unhappy. A sheet without a table cannot be settled.
    private static bool Ends(Sheet sheet, Func<Answers, (IReadOnlyList<Doubt> Doubts, IReadOnlyList<string> Faults)> read)
    {
        var answers = Answers.None;
        for (var round = 0; round < 60; round++)
        {
            var (doubts, faults) = read(answers);
            if (faults.Count > 0) throw new InvalidOperationException(faults[0]);
            var open = doubts.Where(doubt => !doubt.IsSettled).ToList();
            if (open.Count == 0 || open.Exists(doubt => doubt.Kind == DoubtKind.NothingFound)) return true;
            foreach (var doubt in open) answers = answers.With(doubt.Key, doubt.Proposed ?? doubt.Offers[round % doubt.Offers.Count].Code);
        }
        throw new InvalidOperationException("The doubts do not end.");
    }
}
