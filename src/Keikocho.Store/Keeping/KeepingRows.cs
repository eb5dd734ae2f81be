using Keikocho.Store.Kernel;

namespace Keikocho.Store.Keeping;

/// <summary>
/// One line of the trail: who changed what, when. It holds ids, codes and digests only, and the hash of the line before, so that
/// a change to an old line shows, and an erasure does not break the chain.
/// </summary>
public sealed class TrailRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>From 1, without a gap.</summary>
    public long Number { get; set; }
    /// <summary>When.</summary>
    public DateTimeOffset At { get; set; }
    /// <summary>The acting adult; null before there is one.</summary>
    public Guid? ById { get; set; }
    /// <summary>The device.</summary>
    public Guid? DeviceId { get; set; }
    /// <summary>What was done.</summary>
    public TrailKind Kind { get; set; }
    /// <summary>To what.</summary>
    public Guid? SubjectId { get; set; }
    /// <summary>Salted digest of what was said; empty where ids say it all.</summary>
    public byte[] Digest { get; set; } = [];
    /// <summary>SHA-256 over the line before and this line.</summary>
    public byte[] Hash { get; set; } = [];
}

/// <summary>What a line of the trail says. Stored; the numbers never change their meaning.</summary>
public enum TrailKind
{
    /// <summary>The club was made.</summary>
    ClubMade = 1,
    /// <summary>The club's name, zone, paper, units or hall changed.</summary>
    ClubChanged = 2,
    /// <summary>Programmes, hours, terms, lessons or tests changed.</summary>
    CalendarChanged = 3,
    /// <summary>A closure was entered.</summary>
    ClosureMade = 4,
    /// <summary>A closure was taken back.</summary>
    ClosureRemoved = 5,
    /// <summary>A person was added.</summary>
    PersonAdded = 10,
    /// <summary>A person's details changed.</summary>
    PersonChanged = 11,
    /// <summary>A person's details were erased.</summary>
    PersonErased = 12,
    /// <summary>A duty was entered or changed.</summary>
    DutyChanged = 13,
    /// <summary>A rank was recorded.</summary>
    RankRecorded = 20,
    /// <summary>A child changed ends.</summary>
    Crossed = 21,
    /// <summary>A file was read in.</summary>
    FileRead = 30,
    /// <summary>A reading was taken back.</summary>
    ReadingUndone = 31,
    /// <summary>The rest were marked absent.</summary>
    RestAbsent = 40,
    /// <summary>An evening was closed.</summary>
    EveningClosed = 41,
    /// <summary>A mark was corrected.</summary>
    MarkCorrected = 42,
    /// <summary>A fall or a sighting was corrected, confirmed or taken back.</summary>
    SightingChanged = 43,
    /// <summary>A stand-down was entered.</summary>
    StandDownMade = 44,
    /// <summary>A stand-down was lifted, or its review day moved.</summary>
    StandDownChanged = 45,
    /// <summary>An agreed other way of showing was entered or ended.</summary>
    AdaptationChanged = 46,
    /// <summary>A tablet was let in.</summary>
    TabletJoined = 47,
    /// <summary>A tablet was put out.</summary>
    TabletPutOut = 48,
    /// <summary>A code of an adult was set or taken away.</summary>
    AdultCodeChanged = 49,
    /// <summary>A setting changed.</summary>
    SettingChanged = 50,
    /// <summary>A draft of an edition changed.</summary>
    EditionChanged = 51,
    /// <summary>An edition was published.</summary>
    EditionPublished = 52,
    /// <summary>A unit was tied to a term.</summary>
    UnitSet = 53,
    /// <summary>An age rule was entered or taken out.</summary>
    AgeRuleChanged = 54,
    /// <summary>A verdict was set against the sum, or taken back.</summary>
    VerdictOverruled = 55,
    /// <summary>An answer was kept as it was told.</summary>
    AnswerKept = 56,
    /// <summary>Items were chosen from a pool for a child.</summary>
    ItemsChosen = 57,
    /// <summary>Time was taken off for a child, or that was ended.</summary>
    TimeTakenOff = 58,
    /// <summary>A wish about two children was entered or ended.</summary>
    PairWishChanged = 70,
    /// <summary>An accident record was begun.</summary>
    KnockMade = 71,
    /// <summary>A line was added to an accident record.</summary>
    KnockLineAdded = 72,
    /// <summary>The club's lock was made or changed.</summary>
    LockChanged = 73,
    /// <summary>What a child weighs was entered.</summary>
    SizeEntered = 74,
    /// <summary>What stands at a mat was changed.</summary>
    ObstacleChanged = 75,
    /// <summary>What an end worked on was said or taken back.</summary>
    ShowingChanged = 76,
    /// <summary>Who works together was changed.</summary>
    TogetherChanged = 77,
    /// <summary>An evening was opened again.</summary>
    EveningOpened = 78,
    /// <summary>A care note was entered, changed or taken out, or the family was asked; without a word of it.</summary>
    CareNoteChanged = 90,
    /// <summary>A near miss was entered.</summary>
    NearMissEntered = 91,
    /// <summary>A note by a ready phrase was made.</summary>
    PhraseNoteMade = 79,
    /// <summary>A note by a ready phrase was taken back.</summary>
    PhraseNoteTakenBack = 80,
    /// <summary>Notes whose time was over were erased.</summary>
    PhraseNotesEnded = 81,
    /// <summary>A whole club came in from an archive or a copy.</summary>
    Restored = 60,
    /// <summary>A copy of the whole club was made.</summary>
    CopyMade = 61,
}

/// <summary>A photograph or a scan, at most 2 MB.</summary>
public sealed class AttachmentRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>SHA-256 of the content.</summary>
    public byte[] Hash { get; set; } = [];
    /// <summary>Media type.</summary>
    public string Type { get; set; } = "";
    /// <summary>The content.</summary>
    public Sealed<byte[]> Content { get; set; }
    /// <summary>The person, lesson or award that it belongs to.</summary>
    public Guid? SubjectId { get; set; }
    /// <summary>When it was added.</summary>
    public DateTimeOffset MadeAt { get; set; }
}
