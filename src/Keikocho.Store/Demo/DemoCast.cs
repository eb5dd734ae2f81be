using Keikocho.Store.Calendar;
using Keikocho.Store.People;

namespace Keikocho.Store.Demo;

/// <summary>Everybody in a demo club.</summary>
internal sealed class DemoCast
{
    private readonly DemoMaking making;

    public DemoCast(DemoMaking making)
    {
        this.making = making;
        if (making.Size == DemoSize.Large) Large();
        else Small();
        ByProgramme = new List<Stay>[making.ProgrammeRows.Count];
        for (var p = 0; p < ByProgramme.Length; p++) ByProgramme[p] = [.. Stays.Where(s => s.Programme == p)];
    }

    /// <summary>Adults with duties; the first is the head instructor.</summary>
    public List<PersonRow> Adults { get; } = [];
    /// <summary>Junior leaders.</summary>
    public List<PersonRow> Leaders { get; } = [];
    /// <summary>Children.</summary>
    public List<PersonRow> Children { get; } = [];
    /// <summary>All stays, by number.</summary>
    public List<Stay> Stays { get; } = [];
    /// <summary>Stays by programme.</summary>
    public List<Stay>[] ByProgramme { get; }
    /// <summary>The newcomers who have not handed in any paper.</summary>
    public HashSet<Guid> WithoutPapers { get; } = [];

    public PersonRow Head => Adults[0];

    private void Small()
    {
        foreach (var (given, family) in DemoNames.Adults)
        {
            var number = Adults.Count;
            // The last one has not said a birth date: the head instructor has seen that she is an adult.
            var isSeen = number == DemoNames.Adults.Length - 1;
            var adult = making.Person(number, given, family, isSeen ? null : 27 + 8 * number, making.MadeAt);
            if (isSeen)
            {
                adult.AdultSeenById = Head.Id;
                adult.AdultSeenOn = making.Terms[0].From.AddDays(-14);
            }

            Adults.Add(adult);
        }

        foreach (var child in DemoNames.Juniors) Add(child, Children, 0, null);
        foreach (var child in DemoNames.Leaders) Add(child, Leaders, 1, null);
        for (var i = 0; i < DemoNames.YoungTeens.Length; i++)
        {
            var child = DemoNames.YoungTeens[i];
            if (i < DemoNames.YoungTeens.Length - 2)
            {
                Add(child, Children, 1, null);
                continue;
            }

            // Came up from the juniors at the end of the third term.
            var last = making.Terms[2].To;
            var before = Add(child, Children, 0, last);
            var joined = making.FirstHeld(1, last.AddDays(1));
            Stays.Add(NewStay(Stays.Count, before.Person, before.Key, 1, joined, null, before.ComesPerMille));
        }

        for (var i = 0; i < DemoNames.Gone.Length; i++)
        {
            // Most leave after a test, some in the middle of a term.
            var term = making.Terms[1 + i % 3];
            var child = DemoNames.Gone[i];
            Add(child, Children, 0, i % 2 == 0 ? term.Test : making.FirstHeld(0, term.From.AddDays(55)));
        }
    }

    private Stay Add(DemoChild child, List<PersonRow> into, int programme, DateOnly? to)
    {
        var number = Stays.Count;
        var draw = Draw.About(making.Seed, DemoPart.Joining, number);
        var age = draw.Between(child.AgeFrom, child.AgeTo);
        var start = 0;
        var first = making.Terms[0].From;
        DateOnly from;
        switch (child.Joined)
        {
            case Joined.BeforeTheRegister:
                // A step of the ladder took about four months; nobody was under six at the first lesson.
                start = child is { Given: "Adam" } ? 6 : draw.Between(1, Math.Clamp(age - 7, 1, 6));
                from = first.AddDays(-125 * start - draw.Between(100, 120));
                break;
            case Joined.FirstTerm:
                from = making.FirstHeld(programme, first.AddDays(draw.Between(0, 80)));
                break;
            case Joined.ThirdTerm:
                from = making.FirstHeld(programme, making.Terms[2].From.AddDays(draw.Between(0, 60)));
                break;
            case Joined.FourthTerm:
                from = making.FirstHeld(programme, making.Terms[3].From.AddDays(draw.Between(0, 60)));
                break;
            case Joined.ThisTerm:
                from = making.FirstHeld(programme, making.Terms[4].From.AddDays(draw.Between(0, 9)));
                break;
            case Joined.Lately:
                from = making.FirstHeld(programme, making.Today.AddDays(-draw.Between(11, 17)));
                break;
            case Joined.LastWeek:
                from = making.Today.AddDays(-7);
                break;
            default:
                from = making.Today.AddDays(-4);
                break;
        }

        var isTransfer = child.Given == "Arjun";
        if (isTransfer) start = 3;
        var hasNoBirthDate = child.Joined == Joined.LastLesson;
        var madeAt = from < first ? making.MadeAt : LondonTime.At(from, 17 * 60 + 10);
        var person = making.Person(100 + number, child.Given, child.Family, hasNoBirthDate ? null : age, madeAt, child.Called);
        into.Add(person);
        if (child.Joined >= Joined.LastWeek) WithoutPapers.Add(person.Id);
        var isReturning = child.Given == "Rosa";
        var stay = new Stay
        {
            Number = number,
            Person = person,
            Key = DemoNames.Key(child.Called ?? child.Given, child.Family, number),
            Programme = programme,
            From = from,
            To = to,
            ComesPerMille = draw.Between(600, 950),
            StartRank = start,
            Transferred = isTransfer,
            // Ten weeks lie between the last lesson before and the first lesson after.
            AwayFrom = isReturning ? making.Today.AddDays(-83) : null,
            BackOn = isReturning ? making.Today.AddDays(-14) : null,
            Enrolment = Enrolment(number, person, programme, from, to),
        };
        Stays.Add(stay);
        return stay;
    }

    private Stay NewStay(int number, PersonRow person, string key, int programme, DateOnly from, DateOnly? to, int comes, bool signsOut = false) => new()
    {
        Number = number,
        Person = person,
        Key = key,
        Programme = programme,
        From = from,
        To = to,
        ComesPerMille = comes,
        SignsOut = signsOut,
        Enrolment = Enrolment(number, person, programme, from, to),
    };

    private EnrolmentRow Enrolment(int number, PersonRow person, int programme, DateOnly from, DateOnly? to) => new()
    {
        Club = 1,
        Id = making.Ids.Of(DemoPart.Enrolment, person.MadeAt, number),
        PersonId = person.Id,
        ProgrammeId = making.ProgrammeRows[programme].Id,
        From = from,
        To = to,
        CountsFrom = from,
    };

    private int lastOnTheRegister;

    private void Large()
    {
        // Five adults a hall: enough for two on the mat at every lesson.
        var adults = making.HallRows.Count * 5;
        for (var number = 0; number < adults; number++)
        {
            var (given, family) = Name(number, -1);
            Adults.Add(making.Person(number, given, family, 20 + number % 45, making.MadeAt));
        }

        for (var programme = 0; programme < making.ProgrammeRows.Count; programme++)
            for (var place = 0; place < (programme == DemoMaking.LargeProgrammes - 1 ? 200 : 40); place++)
                Place(programme, place);
    }

    /// <summary>One of the places of a programme: the child who has it now, and those who had it before, back to the first term.</summary>
    private void Place(int programme, int place)
    {
        DateOnly? to = null;
        var first = making.FirstHeld(programme, making.Terms[0].From);
        while (true)
        {
            var number = Stays.Count;
            var draw = Draw.About(making.Seed, DemoPart.Joining, number);
            var isNow = to is null;
            var end = to ?? making.Today;
            // From a month to five years on the register: nine terms on average.
            var from = end.AddDays(-draw.Between(28, isNow ? 1400 : 1900));
            from = from <= first ? first : making.FirstHeld(programme, from);
            if (to is { } last && from > last) from = first;
            var years = (making.Today.DayNumber - from.DayNumber) / 365 + 1;
            // Six at the first lesson or older; those on the register now are at most 13.
            var age = isNow ? draw.Between(Math.Min(13, 6 + years), 13) : draw.Between(6, 9) + years;
            var (given, family) = Name(number + 1000, place % 6 == 5 && isNow ? lastOnTheRegister : number + 1000);
            if (isNow) lastOnTheRegister = number + 1000;
            var person = making.Person(1000 + number, given, family, age, LondonTime.At(from, 16 * 60));
            Children.Add(person);
            var key = DemoNames.Key(given, family, number);
            Stays.Add(NewStay(number, person, key, programme, from, to, draw.Between(650, 960), number % 4 == 0));
            if (from == first) return;
            to = from.AddDays(-1);
        }
    }

    private (string Given, string Family) Name(int number, int family)
    {
        var mine = Draw.About(making.Seed, DemoPart.Name, number);
        var shared = Draw.About(making.Seed, DemoPart.Name, family == -1 ? number : family, 1);
        var head = DemoNames.FamilyHeads[shared.Below(DemoNames.FamilyHeads.Length)];
        return (DemoNames.Given[mine.Below(DemoNames.Given.Length)], head + DemoNames.FamilyTails[shared.Below(DemoNames.FamilyTails.Length)]);
    }
}
