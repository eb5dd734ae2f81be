using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Engines;
using Keikocho.Store.Marks;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Intake;

/// <summary>What a sign-off grid is held against.</summary>
/// <param name="Syllabus">The items of the edition that holds, and the names of techniques.</param>
/// <param name="ItemIds">Id of each item, by its key.</param>
/// <param name="Days">Days on which a lesson was held, in order.</param>
/// <param name="Held">What was seen and stands, by person, item and evening, without suggestions that nobody has confirmed.</param>
public sealed record SignOffFacts(
    SyllabusNames Syllabus,
    IReadOnlyDictionary<string, Guid> ItemIds,
    IReadOnlyList<DateOnly> Days,
    IReadOnlyDictionary<(PersonId Person, string Item, DateOnly Day), HeldSeen> Held)
{
    internal static SignOffFacts Load(KeikochoDb db, ProgrammeRow programme, IReadOnlyDictionary<DateOnly, LessonRow> lessons, DateOnly today)
    {
        var syllabus = SyllabusNames.On(db, programme.LadderId, today);
        var keys = syllabus.Items.Select(item => item.Key).ToHashSet(StringComparer.Ordinal);
        var ids = db.Items.AsNoTracking().Select(i => new { i.Key, i.Id }).AsEnumerable().Where(i => keys.Contains(i.Key)).ToDictionary(i => i.Key, i => i.Id, StringComparer.Ordinal);
        var keyOf = ids.ToDictionary(pair => pair.Value, pair => pair.Key);
        var held = new Dictionary<(PersonId, string, DateOnly), HeldSeen>();
        foreach (var state in db.ItemStates.AsNoTracking().Select(s => new { s.PersonId, s.ItemId, s.Evenings }))
        {
            if (!keyOf.TryGetValue(state.ItemId, out var key)) continue;
            foreach (var evening in SeenPack.Unpack(state.Evenings).Where(e => e.Confirmed))
                held[(new PersonId(state.PersonId), key, evening.On)] = new HeldSeen(evening.Word, evening.Settled);
        }

        return new SignOffFacts(
            syllabus with { Items = [.. syllabus.Items.Where(item => ids.ContainsKey(item.Key))] },
            ids,
            [.. lessons.Values.Where(l => l.ClosureId is null && l.Date <= today).Select(l => l.Date).Order()],
            held);
    }
}
