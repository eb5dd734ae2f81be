using Keikocho.Core.Evening;
using Keikocho.Store.Marks;

namespace Keikocho.Store.Keeping.Checking;

/// <summary>What a check needs of one mark, without an object of its own: there are millions.</summary>
internal struct MarkLine
{
    public Guid LessonId, PersonId, Id, DeviceId;
    public Guid? Replaces;
    public int Sequence, Code;
    public short At;
    public MarkKind Kind;
    public bool HasNoItem;

    /// <summary>Where no time is noted.</summary>
    public const short NoTime = -1;

    public readonly MarkRow ToRow(int club) => new()
    {
        Club = club,
        Id = Id,
        DeviceId = DeviceId,
        Sequence = Sequence,
        LessonId = LessonId,
        PersonId = PersonId,
        Kind = Kind,
        At = At == NoTime ? null : new TimeOnly(At / 60, At % 60),
        Code = Code,
        Replaces = Replaces,
    };
}

/// <summary>The state of one person and lesson as it is stored or as it should be.</summary>
internal record struct StateLine(
    Guid ProgrammeId, DateOnly Date, AttendanceWord Word, short Arrived, short LeftAt, bool Late, bool Counts, bool Ukemi, bool LeftEarly, AttendanceClash Clash)
{
    public static StateLine Of(AttendanceRow row) => new(
        row.ProgrammeId, row.Date, row.Word, Minutes(row.Arrived), Minutes(row.LeftAt), row.Late, row.Counts, row.Ukemi, row.LeftEarly, row.Clash);

    private static short Minutes(TimeOnly? time) => time is { } some ? (short)(some.Hour * 60 + some.Minute) : MarkLine.NoTime;
}
