using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Sightings;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Calendar;
using Keikocho.Store.Hall;
using Keikocho.Store.Marks;

namespace Keikocho.App.Closing;

/// <summary>What the devices of one evening say differently, by the rules that merge them; both words are shown.</summary>
public static class EveningClashes
{
    private static readonly PersonId AFile = new(Guid.Empty);

    /// <summary>A sentence each, in register order.</summary>
    public static ImmutableArray<string> Of(OpenClub club, IReadOnlyList<LessonRow> lessons, IReadOnlyList<MarkRow> marks, IReadOnlyList<JoinRow> tablets, ItemsOfLadders items, EveningNames names)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lessons);
        ArgumentNullException.ThrowIfNull(marks);
        ArgumentNullException.ThrowIfNull(tablets);
        ArgumentNullException.ThrowIfNull(items);
        ArgumentNullException.ThrowIfNull(names);
        // In register order; who is on no register any more comes last.
        var people = names.Children.Concat(marks.SelectMany(m => new[] { m.PersonId, m.ById ?? Guid.Empty }).Order()).Append(Guid.Empty).Distinct()
            .Select(id => new MergePerson(new PersonId(id), id == Guid.Empty ? "a file" : names.Of(id)));
        var devices = marks.Select(m => m.DeviceId).Distinct()
            .Select(id => new MergeDevice(new DeviceId(id), tablets.FirstOrDefault(t => t.DeviceId == id) is { } tablet ? $"tablet {tablet.Number}" : "laptop"));
        var merged = MergeMarks.Merge(new MergeSnapshot(
            [.. lessons.Select(l => new MergeLesson(new LessonId(l.Id), l.Date, new LessonTimes(l.Start, l.End, l.UkemiFrom, l.UkemiTo, l.HalfTime)))],
            [.. people],
            [.. marks.Where(IsKnown).Select(Mark)],
            club.AttendanceRules,
            [.. devices]));
        return
        [
            .. merged.Clashes.Select(c =>
                $"{names.Of(c.Person.Value)}{(c.Item is { } item ? $", {items.Name(item.Value)}" : "")}: {string.Join("; ", c.Both)}. {c.Because.Sentence}"),
        ];
    }

    // Words of a later kind that this page does not know are no clash.
    private static bool IsKnown(MarkRow mark) => EvidenceCode.IsEvidence(mark)
        ? mark.Kind is MarkKind.Sighting or MarkKind.Words or MarkKind.Fall or MarkKind.Confirmed or MarkKind.Cleared or MarkKind.Corrected
        : FoldMarks.SpeaksOfPresence(mark.Kind);

    private static TabletMark Mark(MarkRow mark)
    {
        var own = new TabletMark(
            new MarkId(mark.Id), new DeviceId(mark.DeviceId), mark.Sequence, new LessonId(mark.LessonId), new PersonId(mark.PersonId),
            mark.ById is { } by ? new PersonId(by) : AFile, mark.Kind, mark.MadeAt, mark.ReceivedAt, mark.At,
            Replaces: mark.Replaces is { } replaced ? new MarkId(replaced) : null, Confirms: EvidenceCode.SignsOff(mark));
        if (!EvidenceCode.IsEvidence(mark))
        {
            return mark.Kind == MarkKind.Corrected ? own with { CorrectedTo = (MarkKind)(mark.Code & MarkCode.CorrectedToMask) }
                : own with { LateWithoutTime = mark.Kind == MarkKind.Present && (mark.Code & MarkCode.LateWithoutTime) != 0 };
        }

        var code = EvidenceCode.Says(mark)?.Code ?? 0;
        if (mark.ItemId != MarkCode.Falls) return own with { Item = new ItemId(mark.ItemId!.Value), Word = EvidenceCode.WordOf(code) };
        if (code == 0) return own;
        var (way, stage, clean) = EvidenceCode.FallOf(code);
        return own with { Fall = new FallShown(way.Direction, way.Side, stage, clean) };
    }
}
