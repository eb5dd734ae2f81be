using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.Starter;
using Keikocho.Store.Syllabus;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Tests.Intake;

/// <summary>What a club saw of its children, for the tests of sign-off grids.</summary>
internal static class ReadingClubSeen
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>Publishes the sample ladder Willow.</summary>
    public static async Task PublishWillowAsync(this ReadingClub club)
    {
        var willow = Assert.IsType<SyllabusReading.Read>(StarterKit.Ladder("ladder-willow.toml")).Edition;
        var store = new SyllabusStore(club.Writer);
        var begun = Assert.IsType<StartOutcome.Begun>(await store.StartAsync(club.Programme, willow, "Begun.", club.Head, club.Device, Cancel));
        Assert.IsType<PublishOutcome.Published>(await store.PublishAsync(begun.Draft, 1, "edition 1", new(2026, 9, 1), club.Today, club.Head, club.Device, Cancel));
    }

    public static Guid Person(this ReadingClub club, string given, string? family = null)
        => club.Ask(db => db.People.AsNoTracking().AsEnumerable().First(p => Seal.Open(p.Given) == given && (family is null || Seal.Open(p.Family) == family)).Id);

    /// <summary>A mark on a tablet.</summary>
    public static async Task SeeAsync(this ReadingClub club, string given, string item, DateOnly day, SeenWord word, Guid by)
    {
        var (lesson, id) = club.Ask(db => (db.Lessons.Single(l => l.Date == day).Id, db.Items.Single(i => i.Key == item).Id));
        var tap = SeenTap.OfItem(Guid.NewGuid(), lesson, club.Person(given), id, word);
        Assert.Equal(EvidenceOutcome.Stored, (await new SightingsStore(club.Writer).AddAsync([tap], club.Today, by, club.Device, Cancel)).Outcome);
    }

    /// <summary>What stands of one child, item and evening, in words; empty where nothing does.</summary>
    public static string Seen(this ReadingClub club, string given, string family, string item, DateOnly day) => club.Ask(db =>
    {
        var (person, id) = (club.Person(given, family), db.Items.Single(i => i.Key == item).Id);
        var state = db.ItemStates.AsNoTracking().FirstOrDefault(s => s.PersonId == person && s.ItemId == id);
        var evening = state is null ? null : SeenPack.Unpack(state.Evenings).FirstOrDefault(e => e.On == day);
        return evening is null ? "" : $"{evening.Word}{(evening.Settled ? " settled" : "")}{(evening.Confirmed ? "" : " suggested")}";
    });

    /// <summary>Every state of what was seen, in words, without the words of each device.</summary>
    public static string SeenStates(this ReadingClub club) => club.Ask(db => string.Join('\n', db.ItemStates.AsNoTracking().AsEnumerable()
        .SelectMany(s => SeenPack.Unpack(s.Evenings).Select(e => $"{s.PersonId} {s.ItemId} {e.On.Iso()} {e.Word} {e.Settled} {e.Confirmed}")).Order(StringComparer.Ordinal)));

    /// <summary>Every stored state of what was seen is what its marks say.</summary>
    public static void SeenIsWhatTheMarksSay(this ReadingClub club) => club.Ask(db =>
    {
        var days = db.Lessons.AsNoTracking().ToDictionary(l => l.Id, l => l.Date);
        var folded = db.Marks.AsNoTracking().Where(m => m.ItemId != null).AsEnumerable().GroupBy(m => (m.PersonId, m.ItemId!.Value))
            .Select(g => $"{g.Key} {FoldEvidence.Evenings([.. g.Select(m => new DatedMark(m, days[m.LessonId]))])}").Where(text => !text.EndsWith(' ')).Order(StringComparer.Ordinal);
        Assert.Equal(folded, db.ItemStates.AsNoTracking().AsEnumerable().Select(s => $"{(s.PersonId, s.ItemId)} {s.Evenings}").Order(StringComparer.Ordinal));
        return true;
    });
}
