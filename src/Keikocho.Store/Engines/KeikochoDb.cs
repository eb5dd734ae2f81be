using System.Linq.Expressions;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Evening;
using Keikocho.Store.Hall;
using Keikocho.Store.Intake;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Promotion;
using Keikocho.Store.Safety;
using Keikocho.Store.Sealing;
using Keikocho.Store.Syllabus;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Engines;

/// <summary>
/// One club in one database. The model is the same on both engines; <see cref="SqliteKeikochoDb"/> and <see cref="PostgresKeikochoDb"/>
/// hold what differs. Every query is limited to <see cref="Club"/>.
/// </summary>
public abstract class KeikochoDb(DbContextOptions options, int club) : DbContext(options)
{
    /// <summary>Number of the club that this context sees.</summary>
    public int Club { get; } = club;

    /// <summary>The club.</summary>
    public DbSet<ClubRow> Clubs => Set<ClubRow>();
    /// <summary>Halls.</summary>
    public DbSet<HallRow> Halls => Set<HallRow>();
    /// <summary>Devices.</summary>
    public DbSet<DeviceRow> Devices => Set<DeviceRow>();
    /// <summary>Settings.</summary>
    public DbSet<SettingRow> Settings => Set<SettingRow>();
    /// <summary>The club's own words.</summary>
    public DbSet<ClubWordRow> ClubWords => Set<ClubWordRow>();
    /// <summary>People.</summary>
    public DbSet<PersonRow> People => Set<PersonRow>();
    /// <summary>Families.</summary>
    public DbSet<FamilyRow> Families => Set<FamilyRow>();
    /// <summary>Members of families.</summary>
    public DbSet<FamilyMemberRow> FamilyMembers => Set<FamilyMemberRow>();
    /// <summary>Contacts.</summary>
    public DbSet<ContactRow> Contacts => Set<ContactRow>();
    /// <summary>Registrations.</summary>
    public DbSet<RegistrationRow> Registrations => Set<RegistrationRow>();
    /// <summary>Consents.</summary>
    public DbSet<ConsentRow> Consents => Set<ConsentRow>();
    /// <summary>Duties.</summary>
    public DbSet<DutyRow> Duties => Set<DutyRow>();
    /// <summary>Keep-aparts.</summary>
    public DbSet<KeepApartRow> KeepAparts => Set<KeepApartRow>();
    /// <summary>Private notes.</summary>
    public DbSet<NoteRow> Notes => Set<NoteRow>();
    /// <summary>Adaptations.</summary>
    public DbSet<AdaptationRow> Adaptations => Set<AdaptationRow>();
    /// <summary>Sizes.</summary>
    public DbSet<SizeRow> Sizes => Set<SizeRow>();
    /// <summary>Care notes.</summary>
    public DbSet<CareNoteRow> CareNotes => Set<CareNoteRow>();
    /// <summary>When families were asked.</summary>
    public DbSet<CareAskedRow> CareAsked => Set<CareAskedRow>();
    /// <summary>Digests of the erased.</summary>
    public DbSet<ErasedRow> Erased => Set<ErasedRow>();
    /// <summary>Programmes.</summary>
    public DbSet<ProgrammeRow> Programmes => Set<ProgrammeRow>();
    /// <summary>Weekly hours.</summary>
    public DbSet<WeeklyHourRow> WeeklyHours => Set<WeeklyHourRow>();
    /// <summary>Terms.</summary>
    public DbSet<TermRow> Terms => Set<TermRow>();
    /// <summary>Closures.</summary>
    public DbSet<ClosureRow> Closures => Set<ClosureRow>();
    /// <summary>Evenings.</summary>
    public DbSet<EveningRow> Evenings => Set<EveningRow>();
    /// <summary>Lessons.</summary>
    public DbSet<LessonRow> Lessons => Set<LessonRow>();
    /// <summary>Promotion tests.</summary>
    public DbSet<PromotionTestRow> PromotionTests => Set<PromotionTestRow>();
    /// <summary>Enrolments.</summary>
    public DbSet<EnrolmentRow> Enrolments => Set<EnrolmentRow>();
    /// <summary>Places in a term's register.</summary>
    public DbSet<RegisterPlaceRow> RegisterPlaces => Set<RegisterPlaceRow>();
    /// <summary>Crossings.</summary>
    public DbSet<CrossingRow> Crossings => Set<CrossingRow>();
    /// <summary>Units of terms.</summary>
    public DbSet<TermUnitRow> TermUnits => Set<TermUnitRow>();
    /// <summary>Marks.</summary>
    public DbSet<MarkRow> Marks => Set<MarkRow>();
    /// <summary>States of person and lesson.</summary>
    public DbSet<AttendanceRow> Attendances => Set<AttendanceRow>();
    /// <summary>States of child and item.</summary>
    public DbSet<ItemStateRow> ItemStates => Set<ItemStateRow>();
    /// <summary>What was seen of each child's falls.</summary>
    public DbSet<FallStateRow> FallStates => Set<FallStateRow>();
    /// <summary>Steps of drafts of editions.</summary>
    public DbSet<EditionDraftRow> EditionDrafts => Set<EditionDraftRow>();
    /// <summary>Items chosen from pools.</summary>
    public DbSet<ChosenItemRow> ChosenItems => Set<ChosenItemRow>();
    /// <summary>Age rules that the club entered.</summary>
    public DbSet<AgeRuleRow> AgeRules => Set<AgeRuleRow>();
    /// <summary>Verdicts set against the sum.</summary>
    public DbSet<OverruleRow> Overrules => Set<OverruleRow>();
    /// <summary>Time taken off for a child.</summary>
    public DbSet<TimeOffRow> TimeOffs => Set<TimeOffRow>();
    /// <summary>Ladders.</summary>
    public DbSet<LadderRow> Ladders => Set<LadderRow>();
    /// <summary>Ranks.</summary>
    public DbSet<RankRow> Ranks => Set<RankRow>();
    /// <summary>Editions.</summary>
    public DbSet<EditionRow> Editions => Set<EditionRow>();
    /// <summary>Items.</summary>
    public DbSet<ItemRow> Items => Set<ItemRow>();
    /// <summary>Awards.</summary>
    public DbSet<AwardRow> Awards => Set<AwardRow>();
    /// <summary>Results.</summary>
    public DbSet<ResultRow> Results => Set<ResultRow>();
    /// <summary>Part-passes.</summary>
    public DbSet<PartPassRow> PartPasses => Set<PartPassRow>();
    /// <summary>Kept answers.</summary>
    public DbSet<KeptAnswerRow> KeptAnswers => Set<KeptAnswerRow>();
    /// <summary>Stand-downs.</summary>
    public DbSet<StandDownRow> StandDowns => Set<StandDownRow>();
    /// <summary>Tablets let in.</summary>
    public DbSet<JoinRow> Joins => Set<JoinRow>();
    /// <summary>Codes of adults.</summary>
    public DbSet<AdultCodeRow> AdultCodes => Set<AdultCodeRow>();
    /// <summary>What the ends worked on.</summary>
    public DbSet<ShowingRow> Showings => Set<ShowingRow>();
    /// <summary>Notes by ready phrases.</summary>
    public DbSet<PhraseNoteRow> PhraseNotes => Set<PhraseNoteRow>();
    /// <summary>Who worked together.</summary>
    public DbSet<TogetherRow> Togethers => Set<TogetherRow>();
    /// <summary>Who is asked to work together.</summary>
    public DbSet<KeepTogetherRow> KeepTogethers => Set<KeepTogetherRow>();
    /// <summary>What stands at a mat.</summary>
    public DbSet<ObstacleRow> Obstacles => Set<ObstacleRow>();
    /// <summary>Knocks.</summary>
    public DbSet<KnockRow> Knocks => Set<KnockRow>();
    /// <summary>Lines of accident records.</summary>
    public DbSet<KnockLineRow> KnockLines => Set<KnockLineRow>();
    /// <summary>Near misses.</summary>
    public DbSet<NearMissRow> NearMisses => Set<NearMissRow>();
    /// <summary>Locks of sealed values.</summary>
    public DbSet<LockRow> Locks => Set<LockRow>();
    /// <summary>The trail.</summary>
    public DbSet<TrailRow> Trail => Set<TrailRow>();
    /// <summary>Attachments.</summary>
    public DbSet<AttachmentRow> Attachments => Set<AttachmentRow>();
    /// <summary>Readings of files.</summary>
    public DbSet<ReadingRow> Readings => Set<ReadingRow>();
    /// <summary>What readings made or changed.</summary>
    public DbSet<ReadingTraceRow> ReadingTraces => Set<ReadingTraceRow>();

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        ArgumentNullException.ThrowIfNull(modelBuilder);
        KeikochoModel.Describe(modelBuilder);
        foreach (var type in modelBuilder.Model.GetEntityTypes().ToList())
            modelBuilder.Entity(type.ClrType).HasQueryFilter(OnlyThisClub(type.ClrType));
    }

    /// <inheritdoc/>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        ArgumentNullException.ThrowIfNull(configurationBuilder);
        Conversions.UseOnBothEngines(configurationBuilder);
    }

    private LambdaExpression OnlyThisClub(Type rowType)
    {
        var row = Expression.Parameter(rowType, "row");
        var own = Expression.Property(Expression.Constant(this, typeof(KeikochoDb)), nameof(Club));
        return Expression.Lambda(Expression.Equal(Expression.Property(row, nameof(IClubRow.Club)), own), row);
    }
}
