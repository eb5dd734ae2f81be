using Keikocho.Core.Kernel;

namespace Keikocho.Core.Syllabus;

/// <summary>One sheet while it is made: walks the requirements of the rank and of those below, and puts the lines in order.</summary>
internal sealed class SheetInTheMaking
{
    private readonly SheetSnapshot question;
    private readonly PreparedEdition edition;
    private readonly LadderRank rank;
    private readonly int place;
    private readonly int? unit;
    private readonly int? age;
    private readonly PlaceItems items;
    private readonly List<Reason> reasons = [];
    private readonly List<Reason> leftOut = [];
    private readonly List<(SheetLine Line, bool Again)> lines = [];
    private readonly LineOfAsk asks;

    public SheetInTheMaking(SheetSnapshot question, PreparedEdition edition)
    {
        this.question = question;
        this.edition = edition;
        place = edition.Rank(question.Rank);
        rank = edition.Edition.Ranks[place];
        unit = question.Unit is { } key ? edition.Unit(key) : null;
        if (question.Child is { Born: { } born })
        {
            if (born > question.TestOn)
                throw new ArgumentException($"The birth date {born.Full()} is after the test on {question.TestOn.Full()}; mend one of them.");
            age = Age.On(born, question.TestOn, LeapBirthday.FirstMarch);
        }

        items = new PlaceItems(question, edition, leftOut, reasons);
        asks = new LineOfAsk(question, edition, items, leftOut, reasons);
    }

    public RequirementSheet Finish()
    {
        var whole = edition.Edition;
        reasons.Add(new SheetOfEdition(whole.Name, whole.From, rank.Name, question.TestOn));
        if (question.Child is not null)
            reasons.Add(new AgeOnTheDay(age, question.TestOn));
        reasons.Add(new UnitOfTheTerm(unit is { } at ? whole.Units[at].Name : null, unit + 1));
        foreach (var requirement in rank.Requirements)
            AddOwn(requirement);
        AddFromBelow();
        items.SayWhatBars(lines.SelectMany(l => l.Line.Items));
        return new RequirementSheet(
            rank.Key, rank.Name, place == 0 ? null : whole.Ranks[place - 1].Name, whole.Name, whole.From,
            unit is { } u ? whole.Units[u].Name : null, unit + 1, question.TestOn,
            InOrder(), MinimaFor(), asks.Drew ? question.Child?.Draw : null, leftOut, reasons, []);
    }

    private void AddOwn(Requirement requirement)
    {
        if (!OfThisAge(requirement, say: true))
            return;
        if (requirement.Unit is { } its && edition.Unit(its) != unit)
        {
            leftOut.Add(new OfAnotherUnit(asks.PlainTitle(requirement, place), edition.Edition.Units[edition.Unit(its)].Name));
            // In another term the rest is not asked, but what this child was asked before stays.
            if (requirement.Carry == Carry.OnceAskedStays)
                Add(asks.Stays(requirement, place, again: false), again: true);
            return;
        }

        foreach (var line in asks.Lines(requirement, place, again: false))
            Add(line, again: false);
    }

    private void AddFromBelow()
    {
        int always = 0, stays = 0, wall = 0;
        for (var below = 0; below < place; below++)
        {
            foreach (var requirement in edition.Edition.Ranks[below].Requirements)
            {
                if (requirement.Carry is not (Carry.Always or Carry.OnceAskedStays) || !OfThisAge(requirement, say: false))
                    continue;
                if (requirement.Carry == Carry.OnceAskedStays)
                {
                    if (question.Child is null)
                        wall++;
                    else
                        stays += Add(asks.Stays(requirement, below, again: true), again: true);
                    continue;
                }

                if (requirement.Unit is { } its && edition.Unit(its) != unit)
                    continue;
                foreach (var line in asks.Lines(requirement, below, again: true))
                    always += Add(line, again: true);
            }
        }

        if (always + stays > 0)
            reasons.Add(new AskedAgain(always, stays));
        if (wall > 0)
            reasons.Add(new OnceAskedStaysOnTheWall(wall));
    }

    private bool OfThisAge(Requirement requirement, bool say)
    {
        if (question.Child is null || requirement.Ages is not { } band || band.Holds(age))
            return true;
        if (say)
            leftOut.Add(new OfOtherAges(asks.PlainTitle(requirement, place), LineTitles.Ages(band) ?? "all ages"));
        return false;
    }

    private int Add(SheetLine? line, bool again)
    {
        if (line is null)
            return 0;
        lines.Add((line, again));
        return 1;
    }

    // By part; then words that stop everything; then what is new; then as the edition has them, ladder order. The sort is stable.
    private List<SheetLine> InOrder() =>
    [
        .. lines.OrderBy(l => l.Line.Part)
            .ThenBy(l => l.Line.Part >= SheetPart.Words && l.Line.Items.Any(i => i.Item.Safety) ? 0 : 1)
            .ThenBy(l => l.Again)
            .Select(l => l.Line),
    ];

    private Minima MinimaFor()
    {
        if (question.Child is null || rank.Minima.ForAges is not { } others)
            return rank.Minima;
        var minima = rank.Minima with { ForAges = null };
        return others.FirstOrDefault(o => o.Ages.Holds(age)) is { } mine
            ? minima with { Lessons = mine.Lessons ?? minima.Lessons, Weeks = mine.Weeks ?? minima.Weeks, Months = mine.Months ?? minima.Months }
            : minima;
    }
}
