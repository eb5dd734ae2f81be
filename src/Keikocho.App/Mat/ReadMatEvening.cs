using System.Collections.Immutable;
using Keikocho.App.Cards;
using Keikocho.App.Club;
using Keikocho.App.Pairs;
using Keikocho.App.Register;
using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.App.Sightings;
using Keikocho.App.Syllabus;
using Keikocho.App.Tonight;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Calendar;
using Keikocho.Store.Hall;
using Keikocho.Store.Marks;
using Keikocho.Store.Starter;

namespace Keikocho.App.Mat;

/// <summary>Reads what a tablet may know of its evening.</summary>
public sealed class ReadMatEvening(Reckonings reckonings, EditionsInHand editions, ReadCards cards, PairsInHand pairs)
{
    /// <summary>Reads it for a tablet.</summary>
    /// <param name="club">The club as the request sees it.</param>
    /// <param name="seen">What the tablet is.</param>
    /// <param name="token">The token that it sends back.</param>
    public MatEvening Of(OpenClub club, SeenAs seen, string token)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(seen);
        var join = seen.Join ?? throw new ArgumentException("Only a tablet that has joined has an evening.", nameof(seen));
        var book = club.Book;
        var acting = club.Acting?.Id ?? join.PersonId;
        var lessons = MatLessons.Of(club, join);
        var registers = lessons.Select(l => RegisterView.Of(club, l, afterwards: false)).ToList();
        var tonight = lessons.Select(l => TonightView.Of(club, l, reckonings)).ToList();
        var adults = registers.SelectMany(r => r.Adults).GroupBy(a => a.PersonId)
            .Select(same => same.FirstOrDefault(a => a.Mark.Length > 0) ?? same.First())
            .Select(a => new MatPerson(a.PersonId, a.Name, a.Where, a.Mark, a.Words, StampSign.Of(a.Stamp))).ToImmutableArray();
        return new MatEvening(
            token,
            new MatJoin(
                join.Id, join.Number, join.DeviceId, acting, book.Person(acting)?.CallName ?? "", seen.Teaches, join.Date.WithWeekday(),
                JoinReader.LastSequence(club.Reading, join.DeviceId), join.Date, join.EndsAt.ToUnixTimeMilliseconds()),
            new MatClock(club.Clock.Now.ToUnixTimeMilliseconds(), Minute(club.Clock.LocalTime)),
            [.. lessons.Select((lesson, i) => Lesson(club, lesson, registers[i], tonight[i], seen))],
            adults,
            TopOf(tonight),
            [.. KnockActivities.All.Select(a => new MatWord((int)a.Activity, a.Words))],
            seen.Teaches ? LacksInHand.At(club, lessons) : "");
    }

    private MatLesson Lesson(OpenClub club, LessonRow lesson, RegisterView register, TonightView tonight, SeenAs seen)
    {
        var book = club.Book;
        var programme = book.Programme(lesson.ProgrammeId)!;
        var evidence = EvidenceReader.Of(club.Reading, [.. register.Children.Select(c => c.PersonId)], null, lesson.Date);
        var signs = PlainSigns.Of(club, seen, evidence, lesson.Date);
        var children = register.Children.Select(tile =>
        {
            var gates = ChildGates.Of(book, evidence[tile.PersonId], lesson.Date);
            var rank = book.RankOf(tile.PersonId, programme.LadderId);
            return new MatChild(
                tile.PersonId, tile.Name, tile.FullName, tile.AskOnce, (int)book.EndOf(tile.PersonId, programme, lesson, lesson.Date),
                rank?.Name ?? "", DrawingOf(rank?.Cloth, rank?.Tips ?? 0), tile.Mark, tile.Words, StampSign.Of(tile.Stamp), gates.Role,
                signs.AskAdult.Contains(tile.PersonId), signs.CheckFirst.Contains(tile.PersonId));
        }).ToImmutableArray();
        var (now, planB) = seen.Teaches ? cards.WithPlanB(club, lesson) : (cards.Of(club, lesson), null);
        return new MatLesson(
            lesson.Id, programme.Name, Minute(lesson.Start), Minute(lesson.UkemiFrom), Minute(lesson.UkemiTo), Minute(lesson.HalfTime), Minute(lesson.End),
            lesson.Date <= club.Today, children,
            [.. tonight.Care.Where(c => c.Names.Length > 0).Select(c => new MatCare(string.Join(", ", c.Names), c.Do))],
            Items(club, lesson, evidence, seen),
            MatCards.Of(now, seen),
            lesson.Date <= club.Today ? pairs.Of(club, lesson, evidence) : [],
            planB is null ? [] : MatCards.WithoutLead(planB, seen));
    }

    // What the ends are going for tonight, the falls of the starter table first.
    private ImmutableArray<MatItem> Items(OpenClub club, LessonRow lesson, IReadOnlyDictionary<Guid, ChildEvidence> evidence, SeenAs seen)
    {
        var book = club.Book;
        var programme = book.Programme(lesson.ProgrammeId)!;
        var falls = StarterFalls.Table.Falls.Select(f => new MatItem(
            Guid.Empty, $"{FallWords.Of(f.Way)}, {FallWords.Stage(f.Stage)}", "fall", EvidenceCode.OfFall(f.Way, f.Stage, clean: true), 3, Critical: true));
        if ((book.EditionOn(programme.LadderId, lesson.Date) ?? book.NewestEdition(programme.LadderId)) is not { } published) return [.. falls];
        var all = ItemChoice.ItemsOf(book, published.Edition).ToDictionary(i => i.Item.Key, StringComparer.Ordinal);
        var found = new Dictionary<string, MatItem>(StringComparer.Ordinal);
        foreach (var end in Enum.GetValues<MatEnd>())
        {
            var children = EveningChildren.Of(club, lesson, end);
            if (children.Children.Length == 0) continue;
            foreach (var key in GoingFor.Keys(book, editions, published, lesson, children, evidence))
            {
                if (!all.TryGetValue(key, out var item)) continue;
                var bit = end == MatEnd.Beginners ? 1 : 2;
                found[key] = found.TryGetValue(key, out var known)
                    ? known with { Ends = known.Ends | bit }
                    : new MatItem(item.Id, item.Item.Name, SeenWords.IsAsked(item.Item.Kind) ? "word" : "item", 0, bit, item.Critical);
            }
        }

        return [.. falls, .. found.Values];
    }

    private static MatTop TopOf(List<TonightView> tonight)
    {
        if (tonight.Count == 0) return new MatTop("no lesson", 0, "", false);
        // Two lessons of one evening: the one that is short says so.
        var worst = tonight.MaxBy(t => t.Adults.Hall.ShortBy)!;
        return new MatTop(worst.AdultsLine, worst.Adults.Hall.ShortBy, worst.FirstAider, tonight.Any(t => t.NoFirstAider));
    }

    private static string? DrawingOf(string? cloth, int tips) =>
        cloth is not null && Enum.TryParse<BeltCloth>(cloth, ignoreCase: true, out var known) ? BeltDrawing.Classes(known, tips, "belt-small") : null;

    private static int Minute(TimeOnly time) => time.Hour * 60 + time.Minute;
}
