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

/// <summary>Keys, links and indexes, the same on both engines.</summary>
internal static class KeikochoModel
{
    public static void Describe(ModelBuilder model)
    {
        model.Entity<ClubRow>().HasKey(r => r.Club);
        model.Entity<ClubRow>().Property(r => r.Club).ValueGeneratedNever();

        ById<HallRow>(model);
        ById<DeviceRow>(model);
        ById<SettingRow>(model).HasIndex(r => new { r.Club, r.Key, r.From });
        model.Entity<ClubWordRow>().HasKey(r => new { r.Club, r.Key });

        ById<PersonRow>(model);
        ById<FamilyRow>(model);
        model.Entity<FamilyMemberRow>().HasKey(r => new { r.Club, r.FamilyId, r.PersonId });
        Link<FamilyMemberRow, FamilyRow>(model, r => new { r.Club, r.FamilyId });
        Link<FamilyMemberRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        ById<ContactRow>(model);
        Link<ContactRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        ById<RegistrationRow>(model);
        Link<RegistrationRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        ById<ConsentRow>(model);
        Link<ConsentRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        ById<DutyRow>(model);
        Link<DutyRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        ById<KeepApartRow>(model);
        Link<KeepApartRow, PersonRow>(model, r => new { r.Club, r.FirstId });
        Link<KeepApartRow, PersonRow>(model, r => new { r.Club, r.SecondId });
        ById<NoteRow>(model);
        Link<NoteRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        ById<AdaptationRow>(model);
        Link<AdaptationRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        Link<AdaptationRow, ItemRow>(model, r => new { r.Club, r.ItemId });
        ById<SizeRow>(model);
        Link<SizeRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        ById<CareNoteRow>(model).HasIndex(r => new { r.Club, r.PersonId, r.Heading }).IsUnique();
        Link<CareNoteRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        model.Entity<CareAskedRow>().HasKey(r => new { r.Club, r.PersonId });
        Link<CareAskedRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        model.Entity<ErasedRow>().HasKey(r => new { r.Club, r.Digest });

        ById<ProgrammeRow>(model);
        ById<WeeklyHourRow>(model);
        Link<WeeklyHourRow, ProgrammeRow>(model, r => new { r.Club, r.ProgrammeId });
        Link<WeeklyHourRow, HallRow>(model, r => new { r.Club, r.HallId });
        ById<TermRow>(model);
        ById<ClosureRow>(model);
        ById<EveningRow>(model).HasIndex(r => new { r.Club, r.Date, r.HallId }).IsUnique();
        Link<EveningRow, HallRow>(model, r => new { r.Club, r.HallId });
        ById<LessonRow>(model).HasIndex(r => new { r.Club, r.ProgrammeId, r.Date, r.Start }).IsUnique();
        model.Entity<LessonRow>().HasIndex(r => new { r.Club, r.Date });
        Link<LessonRow, ProgrammeRow>(model, r => new { r.Club, r.ProgrammeId });
        Link<LessonRow, EveningRow>(model, r => new { r.Club, r.EveningId });
        ById<PromotionTestRow>(model);
        Link<PromotionTestRow, ProgrammeRow>(model, r => new { r.Club, r.ProgrammeId });
        ById<EnrolmentRow>(model);
        Link<EnrolmentRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        Link<EnrolmentRow, ProgrammeRow>(model, r => new { r.Club, r.ProgrammeId });
        model.Entity<RegisterPlaceRow>().HasKey(r => new { r.Club, r.ProgrammeId, r.TermId, r.PersonId });
        ById<CrossingRow>(model);
        Link<CrossingRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        Link<CrossingRow, ProgrammeRow>(model, r => new { r.Club, r.ProgrammeId });
        model.Entity<TermUnitRow>().HasKey(r => new { r.Club, r.TermId, r.ProgrammeId });

        var marks = ById<MarkRow>(model);
        marks.HasIndex(r => new { r.Club, r.LessonId, r.PersonId });
        marks.HasIndex(r => new { r.Club, r.DeviceId, r.Sequence }).IsUnique();
        marks.HasIndex(r => new { r.Club, r.PersonId, r.ItemId }).HasFilter("\"ItemId\" IS NOT NULL");
        Link<MarkRow, LessonRow>(model, r => new { r.Club, r.LessonId });
        // Without an index of its own: nobody asks for all marks of one person, and there are millions.
        marks.HasOne<PersonRow>().WithMany().HasForeignKey(r => new { r.Club, r.PersonId }).OnDelete(DeleteBehavior.Restrict);
        marks.HasOne<DeviceRow>().WithMany().HasForeignKey(r => new { r.Club, r.DeviceId }).OnDelete(DeleteBehavior.Restrict);

        var attendances = model.Entity<AttendanceRow>();
        attendances.HasKey(r => new { r.Club, r.LessonId, r.PersonId });
        attendances.HasIndex(r => new { r.Club, r.PersonId, r.ProgrammeId, r.Date, r.Counts, r.Ukemi });
        model.Entity<ItemStateRow>().HasKey(r => new { r.Club, r.PersonId, r.ItemId });
        model.Entity<FallStateRow>().HasKey(r => new { r.Club, r.PersonId });

        ById<LadderRow>(model);
        ById<RankRow>(model);
        Link<RankRow, LadderRow>(model, r => new { r.Club, r.LadderId });
        ById<EditionRow>(model);
        Link<EditionRow, LadderRow>(model, r => new { r.Club, r.LadderId });
        model.Entity<EditionDraftRow>().HasKey(r => new { r.Club, r.EditionId, r.Step });
        Link<EditionDraftRow, EditionRow>(model, r => new { r.Club, r.EditionId });
        ById<ItemRow>(model).HasIndex(r => new { r.Club, r.Key }).IsUnique();
        model.Entity<ChosenItemRow>().HasKey(r => new { r.Club, r.PersonId, r.Requirement, r.ItemId });
        Link<ChosenItemRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        Link<ChosenItemRow, ItemRow>(model, r => new { r.Club, r.ItemId });
        ById<AgeRuleRow>(model);

        ById<AwardRow>(model);
        Link<AwardRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        Link<AwardRow, RankRow>(model, r => new { r.Club, r.RankId });
        ById<ResultRow>(model);
        Link<ResultRow, PromotionTestRow>(model, r => new { r.Club, r.TestId });
        Link<ResultRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        model.Entity<PartPassRow>().HasKey(r => new { r.Club, r.ResultId, r.ItemId });
        ById<OverruleRow>(model).HasIndex(r => new { r.Club, r.TestId, r.PersonId });
        Link<OverruleRow, PromotionTestRow>(model, r => new { r.Club, r.TestId });
        Link<OverruleRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        ById<TimeOffRow>(model).HasIndex(r => new { r.Club, r.PersonId });
        Link<TimeOffRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        Link<TimeOffRow, RankRow>(model, r => new { r.Club, r.RankId });
        ById<KeptAnswerRow>(model).HasIndex(r => new { r.Club, r.SubjectId });
        ById<StandDownRow>(model);
        Link<StandDownRow, PersonRow>(model, r => new { r.Club, r.PersonId });

        ById<JoinRow>(model).HasIndex(r => new { r.Club, r.DeviceId, r.JoinedAt });
        model.Entity<JoinRow>().HasIndex(r => new { r.Club, r.Date, r.HallId });
        Link<JoinRow, DeviceRow>(model, r => new { r.Club, r.DeviceId });
        Link<JoinRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        Link<JoinRow, HallRow>(model, r => new { r.Club, r.HallId });
        model.Entity<AdultCodeRow>().HasKey(r => new { r.Club, r.PersonId });
        Link<AdultCodeRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        ById<ShowingRow>(model);
        Link<ShowingRow, LessonRow>(model, r => new { r.Club, r.LessonId });
        Link<ShowingRow, ItemRow>(model, r => new { r.Club, r.ItemId });
        ById<PhraseNoteRow>(model);
        Link<PhraseNoteRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        Link<PhraseNoteRow, LessonRow>(model, r => new { r.Club, r.LessonId });
        ById<TogetherRow>(model);
        Link<TogetherRow, LessonRow>(model, r => new { r.Club, r.LessonId });
        Link<TogetherRow, PersonRow>(model, r => new { r.Club, r.OneId });
        Link<TogetherRow, PersonRow>(model, r => new { r.Club, r.OtherId });
        ById<KeepTogetherRow>(model);
        Link<KeepTogetherRow, PersonRow>(model, r => new { r.Club, r.FirstId });
        Link<KeepTogetherRow, PersonRow>(model, r => new { r.Club, r.SecondId });
        ById<ObstacleRow>(model);
        Link<ObstacleRow, HallRow>(model, r => new { r.Club, r.HallId });
        ById<KnockRow>(model);
        Link<KnockRow, PersonRow>(model, r => new { r.Club, r.PersonId });
        Link<KnockRow, LessonRow>(model, r => new { r.Club, r.LessonId });
        ById<KnockLineRow>(model);
        Link<KnockLineRow, KnockRow>(model, r => new { r.Club, r.KnockId });
        ById<NearMissRow>(model).HasIndex(r => new { r.Club, r.On });
        ById<LockRow>(model);

        model.Entity<TrailRow>().HasKey(r => new { r.Club, r.Number });
        ById<AttachmentRow>(model);
        ById<ReadingRow>(model);
        ById<ReadingTraceRow>(model);
        Link<ReadingTraceRow, ReadingRow>(model, r => new { r.Club, r.ReadingId });

        // Ids and numbers are ours; neither engine makes any.
        foreach (var key in model.Model.GetEntityTypes().SelectMany(t => t.FindPrimaryKey()!.Properties))
            key.ValueGenerated = Microsoft.EntityFrameworkCore.Metadata.ValueGenerated.Never;
    }

    private static Microsoft.EntityFrameworkCore.Metadata.Builders.EntityTypeBuilder<TRow> ById<TRow>(ModelBuilder model)
        where TRow : class, IIdRow
    {
        var entity = model.Entity<TRow>();
        entity.HasKey(r => new { r.Club, r.Id });
        return entity;
    }

    private static void Link<TRow, TTarget>(ModelBuilder model, Expression<Func<TRow, object?>> key)
        where TRow : class, IClubRow
        where TTarget : class, IClubRow =>
        model.Entity<TRow>().HasOne<TTarget>().WithMany().HasForeignKey(key).OnDelete(DeleteBehavior.Restrict);
}
