using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.People;

namespace Keikocho.Store.Safety;

/// <summary>A knock that is entered on the laptop.</summary>
/// <param name="Id">Made with the form; the same id again changes nothing.</param>
/// <param name="LessonId">Which lesson.</param>
/// <param name="PersonId">The child.</param>
/// <param name="Activity">What was going on.</param>
public sealed record NewKnock(Guid Id, Guid LessonId, Guid PersonId, KnockActivity Activity);

/// <summary>A line that is added to an accident record.</summary>
/// <param name="Id">Made with the form; the same id again changes nothing.</param>
/// <param name="KnockId">The knock.</param>
/// <param name="Kind">What it says.</param>
/// <param name="On">The day it speaks of.</param>
/// <param name="Words">The words.</param>
public sealed record NewKnockLine(Guid Id, Guid KnockId, KnockLine Kind, DateOnly? On, string? Words);

/// <summary>What came of it.</summary>
public enum KnockOutcome
{
    /// <summary>Stored.</summary>
    Stored,
    /// <summary>It is stored already; nothing was changed.</summary>
    AlreadyStored,
    /// <summary>There is no such knock, child or lesson, or nothing of it stands.</summary>
    Unknown,
    /// <summary>Only an adult of 18 or over with a duty in the club says this.</summary>
    NoAdult,
    /// <summary>The words or the day are missing, or the day is not between the knock and today.</summary>
    NotSaid,
    /// <summary>The earliest day has not come, or advice is missing.</summary>
    NotYet,
}

/// <summary>Knocks and their accident records. A record only grows; nothing of it is changed or taken away.</summary>
public sealed class KnockStore(WriterQueue writer)
{
    /// <summary>The longest line.</summary>
    public const int LongestLine = 2000;

    /// <summary>Enters a knock on the laptop: the same mark, record and stand-down as from a tablet.</summary>
    public Task<KnockOutcome> MarkAsync(NewKnock asked, DateOnly today, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (!Enum.IsDefined(asked.Activity)) return KnockOutcome.NotSaid;
        if (TapStatements.Lesson(session, asked.LessonId) is not { } lesson || !TapStatements.Knows(session, asked.PersonId)) return KnockOutcome.Unknown;
        if (lesson.Date > today) return KnockOutcome.NotSaid;
        if (session.Db.Marks.Any(m => m.Id == asked.Id)) return KnockOutcome.AlreadyStored;
        var mark = new MarkRow
        {
            Club = session.Club,
            Id = asked.Id,
            DeviceId = device,
            LessonId = lesson.Id,
            PersonId = asked.PersonId,
            ById = by,
            MadeAt = session.Now,
            ReceivedAt = session.Now,
            Kind = MarkKind.Knock,
            Code = (int)asked.Activity,
        };
        return BeginKnock.Take(session, mark, lesson, by, null) ? KnockOutcome.Stored : KnockOutcome.AlreadyStored;
    }, cancel);

    /// <summary>Adds a line. Symptoms that came back put the child off the mat again where that does not stand.</summary>
    /// <param name="asked">The line.</param>
    /// <param name="today">The day at the club.</param>
    /// <param name="by">Who writes it; an adult for advice, for the first day without symptoms, and for what the family was told.</param>
    /// <param name="device">Where.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    public Task<KnockOutcome> AddAsync(NewKnockLine asked, DateOnly today, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (session.Db.KnockLines.Any(l => l.Id == asked.Id)) return KnockOutcome.AlreadyStored;
        if (session.Db.Knocks.FirstOrDefault(k => k.Id == asked.KnockId) is not { } knock) return KnockOutcome.Unknown;
        if (!IsSound(asked, knock.On, today)) return KnockOutcome.NotSaid;
        if (asked.Kind == KnockLine.WrongChild && !IsInstructor(session, by, today)) return KnockOutcome.NoAdult;
        if (IsAdultsWord(asked.Kind) && !EvidenceStatements.IsAdultOnDuty(session, by, today)) return KnockOutcome.NoAdult;
        session.Db.KnockLines.Add(new KnockLineRow
        {
            Club = session.Club,
            Id = asked.Id,
            KnockId = knock.Id,
            Kind = asked.Kind,
            On = asked.On,
            Words = Seal.CloseIfAny(asked.Words),
            ById = by,
            DeviceId = device,
            MadeAt = session.Now,
        });
        session.Db.SaveChanges();
        if (asked.Kind == KnockLine.SymptomsAgain && !IsOffTheMat(session, knock.PersonId))
        {
            BeginKnock.OffTheMat(session, asked.Id, knock.PersonId, today, by);
            Revise.People(session);
        }
        else if (asked.Kind is KnockLine.FreeFrom or KnockLine.SymptomsAgain or KnockLine.Advice or KnockLine.WrongChild)
        {
            // What is said of a test to come counts these days.
            Revise.People(session);
        }

        session.Note(TrailKind.KnockLineAdded, knock.Id, by, device);
        return KnockOutcome.Stored;
    }, cancel);

    /// <summary>
    /// Puts "no contact" in the place of "off the mat" for a child whose earliest day of drills has come, on advice that counts. Falls and
    /// contact stay shut.
    /// </summary>
    /// <param name="knockId">A knock of the child.</param>
    /// <param name="today">The day at the club.</param>
    /// <param name="by">The adult whose word it is.</param>
    /// <param name="device">Where.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    public Task<KnockOutcome> EaseAsync(Guid knockId, DateOnly today, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (session.Db.Knocks.FirstOrDefault(k => k.Id == knockId) is not { } knock) return KnockOutcome.Unknown;
        if (!EvidenceStatements.IsAdultOnDuty(session, by, today)) return KnockOutcome.NoAdult;
        var knocks = KnockReader.OfPerson(session, knock.PersonId);
        var rows = session.Db.StandDowns.Where(s => s.PersonId == knock.PersonId).ToList();
        var own = KnockStandDowns.Of(knocks, rows.Select(KnockGate.Held)).Where(s => s.LiftedOn is null && s.Scope == StandDownScope.OffTheMat).Select(s => s.Id).ToHashSet();
        var standing = rows.Where(r => own.Contains(r.Id)).ToList();
        if (standing.Count == 0) return KnockOutcome.Unknown;
        if (KnockGate.Answer(session, knocks, rows, today) is not { Advice: { } advice, NoContactDrills: { } drills } || drills > today) return KnockOutcome.NotYet;
        foreach (var row in standing)
        {
            (row.LiftedOn, row.LiftedById, row.LiftEnteredOn) = (today, by, today);
            row.LiftedWhy = Seal.Close($"no contact in its place, on the written advice of {advice.Whose}");
            session.Db.StandDowns.Add(BeginKnock.New(session, KnockStandDowns.NoContact(row.Id), row.PersonId, StandDownScope.NoContact, today, by));
        }

        session.Db.SaveChanges();
        Revise.People(session);
        session.Note(TrailKind.StandDownChanged, knock.PersonId, by, device);
        return KnockOutcome.Stored;
    }, cancel);

    private static bool IsAdultsWord(KnockLine kind) => kind is KnockLine.Advice or KnockLine.FreeFrom or KnockLine.HandedOver or KnockLine.ToldByPhone or KnockLine.WrongChild;

    private static bool IsInstructor(WriteSession session, Guid by, DateOnly day) => session.Db.Duties.Any(d =>
        d.PersonId == by && d.From <= day && (d.To == null || d.To >= day) && (d.Kind == DutyKind.HeadInstructor || d.Kind == DutyKind.Instructor));

    private static bool IsSound(NewKnockLine asked, DateOnly knock, DateOnly today)
    {
        if (!Enum.IsDefined(asked.Kind) || asked.Words?.Length > LongestLine) return false;
        var speaksOfADay = asked.Kind is KnockLine.FreeFrom or KnockLine.SymptomsAgain or KnockLine.Advice;
        if (speaksOfADay ? asked.On is null : string.IsNullOrWhiteSpace(asked.Words)) return false;
        if (asked.Kind == KnockLine.Advice && string.IsNullOrWhiteSpace(asked.Words)) return false;
        return asked.On is not { } day || (day >= knock && day <= today);
    }

    private static bool IsOffTheMat(WriteSession session, Guid person)
    {
        var rows = session.Db.StandDowns.Where(s => s.PersonId == person && s.LiftedOn == null).ToList();
        return KnockStandDowns.Of(KnockReader.OfPerson(session, person), rows.Select(KnockGate.Held)).Any(s => s.Scope == StandDownScope.OffTheMat);
    }
}
