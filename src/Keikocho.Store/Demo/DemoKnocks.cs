using Keikocho.Core.Safety;
using Keikocho.Store.Kernel;
using Keikocho.Store.Safety;

namespace Keikocho.Store.Demo;

/// <summary>A knock at a lesson, for its mark.</summary>
internal sealed record DemoKnock(Guid Id, DemoLesson Lesson, Stay Stay, int Minute, int Second, KnockActivity Activity);

/// <summary>
/// Two knocks of the small demo with their records: one of four weeks ago that was recovered from, on advice, and one of last week whose
/// child is still off the mat.
/// </summary>
internal sealed class DemoKnocks
{
    /// <summary>Both were hurt after half time, and went home so many minutes after it.</summary>
    public const int LeftAfterHalfTime = 22;

    /// <summary>Whose knock of four weeks ago is over.</summary>
    public const string Recovered = "Theo";

    /// <summary>Who is still off the mat.</summary>
    public const string StillOff = "Poppy";

    /// <summary>No club lets a child back to falls before the 21st day; this one came the day after.</summary>
    private const int LiftedAfter = 22;

    private readonly DemoMaking making;
    private readonly Guid head;

    public DemoKnocks(DemoMaking making, DemoCast cast)
    {
        this.making = making;
        head = cast.Head.Id;
        if (making.Size == DemoSize.Large) return;
        var over = Knock(cast, Recovered, making.Today.AddDays(-26), KnockActivity.Throwing);
        var day = over.Lesson.Row.Date;
        Said(over, "Fell backwards from a partner and the back of his head touched the mat. He sat up at once and knew where he was.",
            "Sat out with an adult beside him, then went home with his father.", "the father, at the door");
        Add(over, KnockLine.FreeFrom, day.AddDays(3), "the father, by phone", day.AddDays(4), 18 * 60);
        Add(over, KnockLine.Advice, day.AddDays(17), "the family’s own doctor, in writing", day.AddDays(18), 17 * 60);
        var lifted = day.AddDays(LiftedAfter);
        var stood = Off(over);
        (stood.LiftedOn, stood.LiftedById, stood.LiftEnteredOn) = (lifted, head, lifted);
        stood.LiftedWhy = Seal.Close("The advice is in writing and the days are over; falls are seen again from the ground up.");
        over.Stay.MayComeOn = lifted;

        var running = Knock(cast, StillOff, making.Today.AddDays(-6), KnockActivity.Game);
        day = running.Lesson.Row.Date;
        Said(running, "Ran into another child in a tag game, forehead to shoulder. Cried, then sat quietly.",
            "Cold cloth, an adult beside her until she was collected. Her mother was rung at once.", "the mother, at the door");
        Add(running, KnockLine.FreeFrom, day.AddDays(2), "the mother, by phone", day.AddDays(3), 18 * 60);
        Off(running);
        Near(making.Kept[0].Last(l => l.Row.Date <= making.Today.AddDays(-12) && l.Row.ClosureId is null));
    }

    public List<DemoKnock> Marks { get; } = [];
    public List<KnockRow> Knocks { get; } = [];
    public List<KnockLineRow> Lines { get; } = [];
    public List<NearMissRow> NearMisses { get; } = [];
    public List<StandDownRow> StandDowns { get; } = [];

    /// <summary>The knocks of a lesson.</summary>
    public IEnumerable<DemoKnock> At(DemoLesson lesson) => Marks.Where(k => k.Lesson.Number == lesson.Number);

    private DemoKnock Knock(DemoCast cast, string given, DateOnly latest, KnockActivity activity)
    {
        var lesson = making.Kept[0].Last(l => l.Row.Date <= latest && l.Row.ClosureId is null);
        var stay = cast.Stays.Last(s => s.To is null && s.Programme == 0 && Seal.Open(s.Person.Given) == given);
        stay.KnockOn = lesson.Row.Date;
        var (minute, second) = (lesson.Hour.HalfTime + 9, 30);
        var madeAt = LondonTime.At(lesson.Row.Date, minute, second);
        var knock = new DemoKnock(making.Ids.Of(DemoPart.Knock, madeAt, Knocks.Count), lesson, stay, minute, second, activity);
        Marks.Add(knock);
        Knocks.Add(new KnockRow
        {
            Club = 1,
            Id = knock.Id,
            PersonId = stay.Person.Id,
            LessonId = lesson.Row.Id,
            On = lesson.Row.Date,
            Activity = (int)activity,
            MadeAt = madeAt,
        });
        return knock;
    }

    private void Near(DemoLesson lesson)
    {
        var madeAt = LondonTime.At(lesson.Row.Date, lesson.Hour.End + 8);
        NearMisses.Add(new NearMissRow
        {
            Club = 1,
            Id = making.Ids.Of(DemoPart.NearMiss, madeAt, 0),
            On = lesson.Row.Date,
            At = DemoMaking.Time(lesson.Hour.HalfTime + 12),
            Activity = (int)KnockActivity.Throwing,
            Words = Seal.Close("Two pairs threw toward each other beside the pillar and stopped a hand’s breadth apart. The line was moved."),
            ById = head,
            MadeAt = madeAt,
        });
    }

    // What is written on the evening itself.
    private void Said(DemoKnock knock, string seen, string done, string handedTo)
    {
        var (day, end) = (knock.Lesson.Row.Date, knock.Lesson.Hour.End);
        Add(knock, KnockLine.Seen, null, seen, day, end + 2);
        Add(knock, KnockLine.Done, null, done, day, end + 3);
        Add(knock, KnockLine.HandedOver, null, handedTo, day, end + 5);
    }

    private void Add(DemoKnock knock, KnockLine kind, DateOnly? on, string words, DateOnly enteredOn, int minute)
    {
        // Whatever the calendar, nothing is entered today: the demo's last day is yesterday.
        if (enteredOn >= making.Today) return;
        var madeAt = LondonTime.At(enteredOn, minute);
        Lines.Add(new KnockLineRow
        {
            Club = 1,
            Id = making.Ids.Of(DemoPart.KnockLine, madeAt, Lines.Count),
            KnockId = knock.Id,
            Kind = kind,
            On = on,
            Words = Seal.Close(words),
            ById = head,
            DeviceId = making.Ids.Of(DemoPart.Device, making.MadeAt, 0),
            MadeAt = madeAt,
        });
    }

    private StandDownRow Off(DemoKnock knock)
    {
        var row = new StandDownRow
        {
            Club = 1,
            Id = KnockStandDowns.OffTheMat(knock.Id),
            PersonId = knock.Stay.Person.Id,
            Scope = (int)StandDownScope.OffTheMat,
            From = knock.Lesson.Row.Date,
            WhoseWord = Seal.Close(BeginKnock.WhoseWord),
            ById = head,
            MadeAt = LondonTime.At(knock.Lesson.Row.Date, knock.Minute, knock.Second),
        };
        StandDowns.Add(row);
        return row;
    }
}
