using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Marks;

/// <summary>One thing seen, as it was marked.</summary>
/// <param name="Id">Made where it was tapped; the same id again changes nothing.</param>
/// <param name="LessonId">Which lesson.</param>
/// <param name="PersonId">Which child.</param>
/// <param name="ItemId">The item; <see cref="MarkCode.Falls"/> for a fall.</param>
/// <param name="Kind">Sighting, words or fall.</param>
/// <param name="Code">What was seen, as <see cref="EvidenceCode"/> writes it.</param>
/// <param name="MadeAt">By the device's clock; null for now.</param>
/// <param name="Sequence">The device's own count; null lets the server count for it.</param>
public sealed record SeenTap(
    Guid Id, Guid LessonId, Guid PersonId, Guid ItemId, MarkKind Kind, int Code, DateTimeOffset? MadeAt = null, int? Sequence = null)
{
    /// <summary>An item was seen, or a word or question asked.</summary>
    public static SeenTap OfItem(Guid id, Guid lesson, Guid person, Guid item, SeenWord word, bool asked = false) =>
        new(id, lesson, person, item, asked ? MarkKind.Words : MarkKind.Sighting, EvidenceCode.OfWord(word));

    /// <summary>A fall was seen.</summary>
    public static SeenTap OfFall(Guid id, Guid lesson, Guid person, FallWay way, int stage, bool clean) =>
        new(id, lesson, person, MarkCode.Falls, MarkKind.Fall, EvidenceCode.OfFall(way, stage, clean));
}

/// <summary>One cell of the evening's grid as it is to stand.</summary>
/// <param name="PersonId">Which child.</param>
/// <param name="ItemId">The item; <see cref="MarkCode.Falls"/> for a fall.</param>
/// <param name="Kind">Sighting, words or fall.</param>
/// <param name="Code">What was seen; 0 for "nothing was to be marked".</param>
/// <param name="Place">For a fall, the way and stage that the cell is about, as the code of a clean fall; 0 otherwise.</param>
public sealed record SeenCell(Guid PersonId, Guid ItemId, MarkKind Kind, int Code, int Place = 0);

/// <summary>What came of it.</summary>
public enum EvidenceOutcome
{
    /// <summary>Stored, and on disk.</summary>
    Stored,
    /// <summary>It stands so already; nothing was changed.</summary>
    AlreadyStored,
    /// <summary>There is no such lesson, child, item or mark. Nothing at all was changed.</summary>
    Unknown,
    /// <summary>Whoever acts may not do that. Nothing at all was changed.</summary>
    NoRight,
}

/// <summary>What came of it, and how many marks were made.</summary>
/// <param name="Outcome">The outcome.</param>
/// <param name="Marks">Marks that were made.</param>
/// <param name="Suggestions">How many of them wait for somebody who may confirm them.</param>
public readonly record struct EvidenceAnswer(EvidenceOutcome Outcome, int Marks = 0, int Suggestions = 0);

/// <summary>
/// What was seen of children: sightings, words and falls. Marks are only ever added; the state of a child and an item, and of a child's
/// falls, is folded again from its own marks in the same transaction.
/// </summary>
public sealed partial class SightingsStore(WriterQueue writer)
{
    /// <summary>Adds marks, all of them or none; what an adult may not sign off by the duties of the lesson's day is a suggestion.</summary>
    public Task<EvidenceAnswer> AddAsync(IReadOnlyList<SeenTap> taps, DateOnly today, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var work = new Evening(session, today, by, device);
        foreach (var tap in taps)
        {
            if (!EvidenceRules.IsSound(tap.Kind, tap.ItemId, tap.Code) || !work.Knows(tap.LessonId, tap.PersonId, tap.ItemId)) return new EvidenceAnswer(EvidenceOutcome.Unknown);
        }

        foreach (var tap in taps) work.Add(tap.Id, tap.LessonId, tap.PersonId, tap.ItemId, tap.Kind, tap.Code, null, tap.MadeAt, tap.Sequence);
        return work.Done(note: false);
    }, cancel);

    /// <summary>
    /// Makes the cells of an evening stand as they are given: adds what is new, corrects what stands otherwise, takes back what was not
    /// to be marked. Whoever may not sign off changes only marks of their own and adds suggestions beside those of others. A fall never
    /// takes the place of another: a clean one beside a touched head leaves the evening as it is.
    /// </summary>
    /// <param name="command">Made with the form; the same form again changes nothing.</param>
    public Task<EvidenceAnswer> SetAsync(Guid command, Guid lesson, IReadOnlyList<SeenCell> cells, DateOnly today, Guid? by, Guid device, CancellationToken cancel) =>
        writer.RunAsync(session =>
        {
            var work = new Evening(session, today, by, device);
            foreach (var cell in cells)
            {
                var isSound = cell.Code == 0 ? cell.Kind is MarkKind.Sighting or MarkKind.Words || EvidenceRules.IsSound(MarkKind.Fall, cell.ItemId, cell.Place) : EvidenceRules.IsSound(cell.Kind, cell.ItemId, cell.Code);
                if (!isSound || !work.Knows(lesson, cell.PersonId, cell.ItemId)) return new EvidenceAnswer(EvidenceOutcome.Unknown);
            }

            var standing = work.StandingAt(lesson).ToLookup(m => (m.Mark.PersonId, m.Mark.ItemId!.Value));
            foreach (var cell in cells) work.Set(command, lesson, cell, [.. standing[(cell.PersonId, cell.ItemId)].Where(m => cell.ItemId != MarkCode.Falls || EvidenceRules.PlaceOf(m.Code) == cell.Place)]);
            return work.Done(note: true);
        }, cancel);

    /// <summary>
    /// Takes back what this device last entered at this lesson: the newest mark of something seen that still stands, and those made in
    /// the same moment. The same <paramref name="id"/> again takes back nothing more.
    /// </summary>
    /// <returns>The children whose marks were taken back; empty when there was nothing.</returns>
    public Task<IReadOnlyList<Guid>> UndoAsync(Guid id, Guid lesson, DateOnly today, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync<IReadOnlyList<Guid>>(session =>
    {
        var work = new Evening(session, today, by, device);
        if (work.Lesson(lesson) is null || EvidenceStatements.One(session, id) is not null) return [];
        MarkRow[] all = [.. EvidenceStatements.OfLesson(session, lesson).Select(m => m.Mark)];
        var own = StandingEvidence.LastGroup(all, device);
        var standing = StandingEvidence.Of(all).ToDictionary(m => m.Mark.Id);
        // What somebody stands behind is not taken back by whoever tapped it.
        if (own.Count == 0 || own.Any(m => !(standing.TryGetValue(m.Id, out var stands) ? work.MayChange(stands) : work.MayChange(m)))) return [];
        for (var i = 0; i < own.Count; i++) work.Add(i == 0 ? id : session.NewId(), lesson, own[i].PersonId, own[i].ItemId!.Value, MarkKind.Cleared, 0, own[i].Id);
        work.Done(note: true);
        return [.. own.Select(m => m.PersonId).Distinct()];
    }, cancel);

    /// <summary>Stands behind marks that wait as suggestions; all of them or none. Falls need the right to confirm falls.</summary>
    /// <param name="command">Made with the form; the same form again changes nothing.</param>
    public Task<EvidenceAnswer> ConfirmAsync(Guid command, IReadOnlyList<Guid> marks, DateOnly today, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var work = new Evening(session, today, by, device);
        var found = new List<StandingMark>();
        foreach (var id in marks)
        {
            if (work.Standing(id) is not { } mark) return new EvidenceAnswer(EvidenceOutcome.Unknown);
            if (!work.MayConfirm(mark.Mark.ItemId!.Value, today)) return new EvidenceAnswer(EvidenceOutcome.NoRight);
            if (!mark.Confirmed) found.Add(mark);
        }

        foreach (var mark in found)
            work.Add(AnotherId.Of(command, $"confirm {mark.Mark.Id:D}"), mark.Mark.LessonId, mark.Mark.PersonId, mark.Mark.ItemId!.Value, MarkKind.Confirmed, 0, mark.Mark.Id);
        return work.Done(note: true);
    }, cancel);

    /// <summary>
    /// Corrects one mark with trace: another word takes its place, or, with 0, nothing was to be marked. Whoever may sign off corrects any
    /// mark; others only their own that nobody has confirmed.
    /// </summary>
    public Task<EvidenceAnswer> CorrectAsync(Guid id, Guid mark, int code, DateOnly today, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (EvidenceStatements.One(session, id) is not null) return new EvidenceAnswer(EvidenceOutcome.AlreadyStored);
        var work = new Evening(session, today, by, device);
        if (work.Standing(mark) is not { } standing || (code != 0 && !EvidenceRules.IsSound(standing.Kind, standing.Mark.ItemId!.Value, code))) return new EvidenceAnswer(EvidenceOutcome.Unknown);
        if (!work.MayChange(standing)) return new EvidenceAnswer(EvidenceOutcome.NoRight);
        if (standing.Code == code) return new EvidenceAnswer(EvidenceOutcome.AlreadyStored);
        work.Replace(id, standing, code);
        return work.Done(note: true);
    }, cancel);
}
