using System.Globalization;
using Keikocho.Core.Evening;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;

namespace Keikocho.Store.Keeping.Checking;

/// <summary>
/// Folds every mark of one half of the lessons again, lesson by lesson, and compares with the stored states. Marks and states come side by
/// side in the same order: memory holds one person at one lesson, the lessons and the people.
/// </summary>
internal sealed class CheckStates : IDisposable
{
    private const string Marks =
        "SELECT \"LessonId\", \"PersonId\", \"Id\", \"DeviceId\", \"Sequence\", \"Kind\", \"At\", \"Code\", \"Replaces\", \"ItemId\" FROM \"Marks\"";

    private const string States =
        "SELECT \"LessonId\", \"PersonId\", \"ProgrammeId\", \"Date\", \"Word\", \"Arrived\", \"LeftAt\", \"Late\", \"Counts\", \"Ukemi\", \"LeftEarly\", \"Clash\" "
        + "FROM \"Attendances\"";

    private readonly Findings findings;
    private readonly Func<DateOnly, AttendanceRules> rulesOn;
    private readonly CheckReplaces replaces;
    private readonly int club;
    private readonly Dictionary<Guid, LessonRow> lessons;
    private readonly HashSet<Guid> people;
    private readonly HashSet<Guid> devices;
    private readonly LineReading marks;
    private readonly LineReading states;
    private readonly List<MarkLine> group = [];
    private readonly Dictionary<(MarkKind, short, int), StateLine?> folded = [];
    private MarkLine ahead;
    private Guid knownDevice;
    private bool hasAhead;
    private LessonRow? lesson;
    private AttendanceRules rules = new();

    /// <summary>How many lanes of a view it reads through.</summary>
    public const int Readers = 3;

    /// <summary>Reads the lessons and whom there is; compares nothing yet.</summary>
    /// <param name="view">The club at one moment.</param>
    /// <param name="firstLane">The first of its lanes that this one may use.</param>
    /// <param name="club">Number of the club.</param>
    /// <param name="findings">Hears what is wrong.</param>
    /// <param name="rulesOn">The rules of the fold on a day.</param>
    /// <param name="border">Where the lessons are cut in two.</param>
    /// <param name="isUpper">True for the lessons whose id is the border or comes after it, false for those before.</param>
    public CheckStates(
        ReadSnapshot view, int firstLane, int club, Findings findings, Func<DateOnly, AttendanceRules> rulesOn, Guid border, bool isUpper)
    {
        var half = $" WHERE \"Club\" = @club AND \"LessonId\" {(isUpper ? ">=" : "<")} {view.Literal(border)} ORDER BY \"LessonId\", \"PersonId\"";
        this.club = club;
        this.findings = findings;
        this.rulesOn = rulesOn;
        lessons = ReadForCheck.Lessons(view, firstLane, club);
        people = ReadForCheck.Ids(view, firstLane, club, "People");
        devices = ReadForCheck.Ids(view, firstLane, club, "Devices");
        marks = LineReading.Of(view, firstLane, Marks + half, club);
        states = LineReading.Of(view, firstLane + 1, States + half, club);
        replaces = new CheckReplaces(view, firstLane + 2, club, findings);
    }

    public long MarksRead { get; private set; }

    public long StatesRead { get; private set; }

    public void Run(IProgress<CheckProgress>? progress, CancellationToken cancel)
    {
        hasAhead = NextMark();
        var hasGroup = NextGroup();
        var hasState = NextState();
        for (long round = 0; hasGroup || hasState; round++)
        {
            if (round % 50_000 == 0)
            {
                cancel.ThrowIfCancellationRequested();
                progress?.Report(new CheckProgress(CheckPart.States, MarksRead));
            }

            var order = !hasGroup ? 1 : !hasState ? -1 : Compare();
            if (order <= 0)
            {
                CompareGroup(order == 0 ? ReadState() : null);
                hasGroup = NextGroup();
            }
            else
            {
                findings.Add(CheckPart.States, $"The state of person {states.Id(1)} at {NameOf(states.Id(0))} has no mark behind it.");
            }

            if (order >= 0) hasState = NextState();
        }

        replaces.Finish();
    }

    public void Dispose()
    {
        marks.Dispose();
        states.Dispose();
    }

    private int Compare()
    {
        var byLesson = group[0].LessonId.CompareTo(states.Id(0));
        return byLesson != 0 ? byLesson : group[0].PersonId.CompareTo(states.Id(1));
    }

    private void CompareGroup(StateLine? stored)
    {
        var first = group[0];
        if (lesson?.Id != first.LessonId)
        {
            folded.Clear();
            lesson = lessons.GetValueOrDefault(first.LessonId);
            if (lesson is null) findings.Add(CheckPart.Links, $"Mark {first.Id} is of a lesson {first.LessonId} that is not there.");
            else rules = rulesOn(lesson.Date);
        }

        if (lesson is null) return;
        StateLine? wanted;
        try
        {
            wanted = Fold(lesson);
        }
        catch (ArgumentException cause)
        {
            findings.Add(CheckPart.Marks, $"The marks of person {first.PersonId} at {NameOf(first.LessonId)} cannot be folded: {SentenceOf(cause)}");
            return;
        }

        if (stored is null && wanted is null) return;
        if (stored is null)
            findings.Add(CheckPart.States, $"Person {first.PersonId} has marks at {NameOf(first.LessonId)} and no state.");
        else if (wanted is null)
            findings.Add(CheckPart.States, $"Person {first.PersonId} has a state at {NameOf(first.LessonId)} and no mark that speaks of presence.");
        else if (stored != wanted)
            findings.Add(CheckPart.States, $"The state of person {first.PersonId} at {NameOf(first.LessonId)} is not what the marks say: {Difference(stored.Value, wanted.Value)}.");
    }

    /// <summary>Nearly everybody has one mark at a lesson, and few of them differ: one fold answers for all that are alike.</summary>
    private StateLine? Fold(LessonRow of)
    {
        if (group.Count > 1 || group[0].Replaces is not null) return FoldGroup(of);
        var key = (group[0].Kind, group[0].At, group[0].Code);
        if (!folded.TryGetValue(key, out var known)) folded.Add(key, known = FoldGroup(of));
        return known;
    }

    private StateLine? FoldGroup(LessonRow of) =>
        FoldMarks.Fold(of, group[0].PersonId, [.. group.Select(m => m.ToRow(club))], rules) is { } row ? StateLine.Of(row) : null;

    private bool NextGroup()
    {
        group.Clear();
        if (!hasAhead) return false;
        var lessonId = ahead.LessonId;
        var personId = ahead.PersonId;
        var isKnown = people.Contains(personId);
        while (hasAhead && ahead.PersonId == personId && ahead.LessonId == lessonId)
        {
            CheckLine(in ahead, isKnown);
            group.Add(ahead);
            hasAhead = NextMark();
        }

        return true;
    }

    private void CheckLine(in MarkLine mark, bool personIsKnown)
    {
        if (!personIsKnown) findings.Add(CheckPart.Links, $"Mark {mark.Id} is of a person {mark.PersonId} that is not there.");
        // A lesson's marks come mostly from one device.
        if (mark.DeviceId != knownDevice && devices.Contains(mark.DeviceId)) knownDevice = mark.DeviceId;
        if (mark.DeviceId != knownDevice) findings.Add(CheckPart.Links, $"Mark {mark.Id} is of a device {mark.DeviceId} that is not there.");
        if (mark.HasNoItem) findings.Add(CheckPart.Marks, $"Mark {mark.Id} of person {mark.PersonId} is of something seen and has no item.");
        if (mark.Replaces is not null) replaces.Add(in mark);
    }

    private bool NextMark()
    {
        if (!marks.Next()) return false;
        MarksRead++;
        ahead.LessonId = marks.Id(0);
        ahead.PersonId = marks.Id(1);
        ahead.Id = marks.Id(2);
        ahead.DeviceId = marks.Id(3);
        ahead.Sequence = marks.Whole(4);
        ahead.Kind = (MarkKind)marks.Whole(5);
        ahead.At = marks.Time(6);
        ahead.Code = marks.Whole(7);
        ahead.Replaces = marks.IsNull(8) ? null : marks.Id(8);
        ahead.HasNoItem = ahead.Kind is MarkKind.Fall or MarkKind.Sighting or MarkKind.Words && marks.IsNull(9);
        return true;
    }

    private bool NextState()
    {
        if (!states.Next()) return false;
        StatesRead++;
        return true;
    }

    private StateLine ReadState() => new(
        states.Id(2),
        states.Day(3),
        (AttendanceWord)states.Whole(4),
        states.Time(5),
        states.Time(6),
        states.Flag(7),
        states.Flag(8),
        states.Flag(9),
        states.Flag(10),
        (AttendanceClash)states.Whole(11));

    private string NameOf(Guid lessonId) => lessons.TryGetValue(lessonId, out var of)
        ? string.Create(CultureInfo.InvariantCulture, $"the lesson of {of.Date:yyyy-MM-dd} {of.Start:HH:mm}")
        : $"lesson {lessonId}";

    /// <summary>The sentence of a refused argument, without the parameter's name that the runtime puts behind it.</summary>
    public static string SentenceOf(ArgumentException cause)
    {
        var at = cause.Message.IndexOf(" (Parameter '", StringComparison.Ordinal);
        return at < 0 ? cause.Message : cause.Message[..at];
    }

    private static string Difference(StateLine stored, StateLine wanted)
    {
        var parts = new List<string>();
        void Add(string name, object is_, object should)
        {
            if (!is_.Equals(should)) parts.Add(string.Create(CultureInfo.InvariantCulture, $"{name} is {is_}, should be {should}"));
        }

        Add("programme", stored.ProgrammeId, wanted.ProgrammeId);
        Add("date", DayText(stored.Date), DayText(wanted.Date));
        Add("word", stored.Word, wanted.Word);
        Add("arrival", TimeText(stored.Arrived), TimeText(wanted.Arrived));
        Add("leaving", TimeText(stored.LeftAt), TimeText(wanted.LeftAt));
        Add("late", stored.Late, wanted.Late);
        Add("counts", stored.Counts, wanted.Counts);
        Add("ukemi", stored.Ukemi, wanted.Ukemi);
        Add("left early", stored.LeftEarly, wanted.LeftEarly);
        Add("clash", stored.Clash, wanted.Clash);
        return string.Join("; ", parts);
    }

    private static string DayText(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string TimeText(short minutes) => minutes == MarkLine.NoTime ? "none" : string.Create(CultureInfo.InvariantCulture, $"{minutes / 60:00}:{minutes % 60:00}");
}
