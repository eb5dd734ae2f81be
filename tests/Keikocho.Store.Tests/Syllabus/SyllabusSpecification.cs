using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.People;
using Keikocho.Store.Promotion;
using Keikocho.Store.Syllabus;
using Keikocho.Testing;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Tests.Syllabus;

/// <summary>Drafts, their publication, units of terms and age rules, the same on both engines.</summary>
public abstract class SyllabusSpecification(StoreHost host) : StoreSpecification(host)
{
    private static readonly DateOnly Spring = new(2026, 1, 6);
    private static readonly DateOnly Summer = new(2026, 4, 14);
    private static readonly DateOnly Today = new(2026, 3, 3);

    [Fact]
    public async Task A_draft_grows_by_steps_and_undo_takes_the_last_one_back()
    {
        await using var club = await MadeAsync();
        var draft = await club.BegunAsync(SmallLadder.Edition);
        var more = SmallLadder.Edition with { Name = "edition 7" };
        Assert.Equal(StepOutcome.Stored, await club.Store.StepAsync(draft, 1, more, "The name was changed.", club.Head, club.Device, Cancel));
        Assert.Equal(StepOutcome.TheSame, await club.Store.StepAsync(draft, 2, more, "Again.", club.Head, club.Device, Cancel));
        Assert.Equal(StepOutcome.Stale, await club.Store.StepAsync(draft, 1, SmallLadder.Edition, "Late.", club.Head, club.Device, Cancel));
        var read = club.Draft()!;
        Assert.Equal((2, "edition 7", "The name was changed."), (read.Step, read.Edition.Name, read.Steps[^1].Said));
        Assert.Equal(club.Head, read.Steps[^1].ById);
        Assert.Equal(StepOutcome.Stale, await club.Store.UndoAsync(draft, 1, club.Head, club.Device, Cancel));
        Assert.Equal(StepOutcome.Stored, await club.Store.UndoAsync(draft, 2, club.Head, club.Device, Cancel));
        Assert.Equal(EditionDocument.Write(SmallLadder.Edition), EditionDocument.Write(club.Draft()!.Edition));
        Assert.Equal(StepOutcome.FirstStep, await club.Store.UndoAsync(draft, 1, club.Head, club.Device, Cancel));
        using var db = club.Engine.OpenDb();
        Assert.Equal(3, db.Trail.Count(t => t.Kind == TrailKind.EditionChanged && t.SubjectId == draft && t.ById == club.Head));
    }

    [Fact]
    public async Task A_ladder_has_one_draft_at_a_time()
    {
        await using var club = await MadeAsync();
        var draft = await club.BegunAsync(SmallLadder.Edition);
        Assert.Equal(new StartOutcome.AlreadyThere(draft), await club.Store.StartAsync(club.Programme, SmallLadder.Edition, "Again.", club.Head, club.Device, Cancel));
        Assert.IsType<StartOutcome.NoProgramme>(await club.Store.StartAsync(club.Device, SmallLadder.Edition, "Nobody's.", club.Head, club.Device, Cancel));
    }

    [Fact]
    public async Task A_draft_that_is_thrown_away_leaves_nothing_behind()
    {
        await using var club = await MadeAsync();
        var draft = await club.BegunAsync(SmallLadder.Edition);
        Assert.Equal(StepOutcome.Stored, await club.Store.ThrowAwayAsync(draft, club.Head, club.Device, Cancel));
        Assert.Equal(StepOutcome.Gone, await club.Store.ThrowAwayAsync(draft, club.Head, club.Device, Cancel));
        using var db = club.Engine.OpenDb();
        Assert.Equal((0, 0, 0), (db.Ladders.Count(), db.Editions.Count(), db.EditionDrafts.Count()));
        Assert.Null(db.Programmes.Single().LadderId);
    }

    [Fact]
    public async Task Throwing_a_draft_away_leaves_the_belts_that_are_worn_without_a_key()
    {
        await using var club = await MadeAsync();
        var (ladder, ranks) = await club.BeltsAsync("White", "Red Tab White", "Yellow");
        var draft = await club.BegunAsync(SmallLadder.Edition);
        await club.Store.ThrowAwayAsync(draft, club.Head, club.Device, Cancel);
        using var db = club.Engine.OpenDb();
        Assert.Equal(ladder, db.Programmes.Single().LadderId);
        Assert.Equal(ranks, db.Ranks.OrderBy(r => r.Position).Select(r => r.Id).ToList());
        Assert.All(db.Ranks, r => Assert.Equal("", r.Key));
    }

    [Fact]
    public async Task Publishing_makes_ranks_and_item_ids_and_the_book_holds_the_edition_from_its_day_on()
    {
        await using var club = await MadeAsync();
        await club.PublishedAsync(SmallLadder.Edition, "edition 1", Spring);
        var book = club.Book();
        var ladder = book.Programmes[0].LadderId;
        Assert.Equal(["White", "White, one red tip", "Yellow"], book.Ranks.Select(r => r.Name));
        Assert.Equal(["white", "white-1", "yellow"], book.Ranks.Select(r => r.Key));
        Assert.Equal([1, 2, 3], book.Ranks.Select(r => r.Position));
        Assert.Null(book.EditionOn(ladder, Spring.AddDays(-1)));
        Assert.Equal("edition 1", book.EditionOn(ladder, Spring)!.Name);
        Assert.Same(book.NewestEdition(ladder)!.Edition, book.EditionOn(ladder, Today)!.Edition);
        Assert.Equal((Spring, "edition 1"), (book.NewestEdition(ladder)!.Edition.From!.Value, book.NewestEdition(ladder)!.Edition.Name));
        var id = book.ItemId("o-goshi")!.Value;
        Assert.Equal("o-goshi", book.ItemKey(id));
        Assert.Null(book.ItemId("no-such-item"));
        Assert.Null(book.ItemKey(club.Device));
        Assert.Null(club.Draft());
        using var db = club.Engine.OpenDb();
        Assert.Equal(SmallLadder.Edition.Items.Count, db.Items.Count());
        Assert.Single(db.Trail.Where(t => t.Kind == TrailKind.EditionPublished));
    }

    [Fact, Statement(83)]
    public async Task A_later_edition_with_another_name_for_a_technique_leaves_the_published_one_letter_for_letter()
    {
        await using var club = await MadeAsync();
        var first = await club.PublishedAsync(SmallLadder.Edition, "edition 1", Spring);
        string written;
        using (var db = club.Engine.OpenDb()) written = db.Editions.Single(e => e.Id == first).Document;
        var id = club.Book().ItemId("o-goshi");
        var renamed = SmallLadder.Edition with { Items = [.. SmallLadder.Edition.Items.Select(i => i.Key == "o-goshi" ? i with { Name = "Large hip throw" } : i)] };
        await club.PublishedAsync(renamed, "edition 2", Summer);
        using (var db = club.Engine.OpenDb())
        {
            Assert.Equal(written, db.Editions.AsNoTracking().Single(e => e.Id == first).Document);
            Assert.Equal("Large hip throw", db.Items.Single(i => i.Key == "o-goshi").Name);
        }

        var book = club.Book();
        Assert.Equal(id, book.ItemId("o-goshi"));
        var ladder = book.Programmes[0].LadderId;
        Assert.Equal("O-goshi", book.EditionOn(ladder, Today)!.Edition.Items.Single(i => i.Key == "o-goshi").Name);
        Assert.Equal("Large hip throw", book.EditionOn(ladder, Summer)!.Edition.Items.Single(i => i.Key == "o-goshi").Name);
        Assert.Equal(["edition 1", "edition 2"], book.EditionsOf(ladder).Select(e => e.Name));
    }

    [Fact]
    public async Task A_changeover_day_lets_the_edition_before_be_asked_until_it_and_not_on_it()
    {
        await using var club = await MadeAsync();
        await club.PublishedAsync(SmallLadder.Edition, "edition 1", Spring);
        var draft = await club.BegunAsync(SmallLadder.Edition);
        Task<PublishOutcome> Publish(DateOnly? changeover) => club.Store.PublishAsync(draft, 1, "edition 2", Summer, Today, club.Head, club.Device, Cancel, changeover);
        Assert.Contains("is not after 14 April 2026", Assert.Single(Assert.IsType<PublishOutcome.Refused>(await Publish(Summer)).Sentences), StringComparison.Ordinal);
        Assert.IsType<PublishOutcome.Published>(await Publish(Summer.AddDays(60)));
        var book = club.Book();
        var ladder = book.Programmes[0].LadderId;
        Assert.Equal(Summer.AddDays(60), book.NewestEdition(ladder)!.Changeover);
        foreach (var (day, beside) in new[] { (Summer.AddDays(-1), null), (Summer, "edition 1"), (Summer.AddDays(59), "edition 1"), (Summer.AddDays(60), null) })
            Assert.Equal(beside, book.OlderBeside(ladder, day)?.Name);
        Assert.Equal("edition 2", book.ComingAfter(ladder, Summer.AddDays(-1))?.Name);
        Assert.Null(book.ComingAfter(ladder, Summer));
    }

    [Fact]
    public async Task The_first_edition_has_none_before_it_to_be_asked()
    {
        await using var club = await MadeAsync();
        var draft = await club.BegunAsync(SmallLadder.Edition);
        var outcome = await club.Store.PublishAsync(draft, 1, "edition 1", Spring, Today, club.Head, club.Device, Cancel, Summer);
        Assert.Contains("There is no edition before this one", Assert.Single(Assert.IsType<PublishOutcome.Refused>(outcome).Sentences), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_rank_has_the_name_of_the_edition_that_holds_on_the_day_shown()
    {
        await using var club = await MadeAsync();
        await club.PublishedAsync(SmallLadder.Edition, "edition 1", Spring);
        var renamed = SmallLadder.Edition with { Ranks = [.. SmallLadder.Edition.Ranks.Select(r => r.Key == "white-1" ? r with { Name = "First red tip" } : r)] };
        await club.PublishedAsync(renamed, "edition 2", Summer);
        foreach (var (day, name) in new[] { (Today, "White, one red tip"), (Summer.AddDays(-1), "White, one red tip"), (Summer, "First red tip") })
        {
            using var reading = club.Engine.OpenReading();
            var book = BookStore.Read(reading, Spring, day);
            Assert.Equal(name, book.Ranks[1].Name);
            Assert.Equal(name, book.Rank(book.Ranks[1].Id)!.Name);
        }
    }

    [Fact]
    public async Task Belts_that_are_worn_stay_the_same_rows_by_name_or_by_cloth_and_tips()
    {
        await using var club = await MadeAsync();
        var (_, ranks) = await club.BeltsAsync("WHITE", "Red Tab White", "yellow belt");
        var child = await club.JoinAsync(ranks[1]);
        await club.PublishedAsync(SmallLadder.Edition, "edition 1", Spring);
        var book = club.Book();
        Assert.Equal(ranks, book.Ranks.Select(r => r.Id));
        Assert.Equal("White, one red tip", book.RankOf(child, book.Programmes[0].LadderId)!.Name);
    }

    [Fact]
    public async Task A_rank_may_be_renamed_in_the_draft_and_stays_the_belt_that_is_worn()
    {
        await using var club = await MadeAsync();
        var (_, ranks) = await club.BeltsAsync("White", "White, one red tip", "Yellow");
        var child = await club.JoinAsync(ranks[2]);
        var draft = await club.BegunAsync(SmallLadder.Edition);
        var renamed = SmallLadder.Edition with { Ranks = [.. SmallLadder.Edition.Ranks.Select(r => r.Key == "yellow" ? r with { Name = "Gold", Cloth = null } : r)] };
        await club.Store.StepAsync(draft, 1, renamed, "Yellow is called Gold.", club.Head, club.Device, Cancel);
        Assert.IsType<PublishOutcome.Published>(await club.Store.PublishAsync(draft, 2, "edition 1", Spring, Today, club.Head, club.Device, Cancel));
        Assert.Equal("Gold", club.Book().RankOf(child, club.Book().Programmes[0].LadderId)!.Name);
    }

    [Fact]
    public async Task A_rank_that_is_worn_and_not_in_the_draft_stops_publication_and_is_named()
    {
        await using var club = await MadeAsync();
        var (_, ranks) = await club.BeltsAsync("White", "Violet", "Yellow");
        await club.JoinAsync(ranks[1]);
        await club.JoinAsync(ranks[1]);
        var draft = await club.BegunAsync(SmallLadder.Edition);
        var refused = Assert.IsType<PublishOutcome.Refused>(await club.Store.PublishAsync(draft, 1, "edition 1", Spring, Today, club.Head, club.Device, Cancel));
        Assert.Equal(["Violet is worn by 2 children and is not in this draft; add it, or give a rank of the draft that name."], refused.Sentences);
        using var db = club.Engine.OpenDb();
        Assert.Equal(3, db.Ranks.Count());
        Assert.Equal(1, db.EditionDrafts.Count());
        Assert.Null(db.Editions.Single().PublishedAt);
    }

    [Fact]
    public async Task A_rank_that_only_those_who_left_wore_stays_in_the_history_outside_the_ladder()
    {
        await using var club = await MadeAsync();
        var (ladder, ranks) = await club.BeltsAsync("White", "Violet", "Yellow");
        var child = await club.JoinAsync(ranks[1], left: Today.AddDays(-10));
        var draft = await club.BegunAsync(SmallLadder.Edition);
        var published = Assert.IsType<PublishOutcome.Published>(await club.Store.PublishAsync(draft, 1, "edition 1", Spring, Today, club.Head, club.Device, Cancel));
        Assert.Equal(["Violet"], published.Kept);
        var book = club.Book();
        Assert.Equal(["White", "White, one red tip", "Yellow"], book.Ranks.Select(r => r.Name));
        Assert.Equal("Violet", book.RankOf(child, ladder)!.Name);
    }

    [Fact]
    public async Task An_edition_begins_on_a_terms_first_day_not_before_the_newest_under_a_name_of_its_own()
    {
        await using var club = await MadeAsync();
        await club.PublishedAsync(SmallLadder.Edition, "edition 1", Summer);
        var draft = await club.BegunAsync(SmallLadder.Edition);
        Assert.Equal(
            [
                "There is an edition named “edition 1” already; give this one another name.",
                "6 January 2026 lies before 14 April 2026, from when edition 1 holds; choose that day or a later one.",
            ],
            Assert.IsType<PublishOutcome.Refused>(await club.Store.PublishAsync(draft, 1, "edition 1", Spring, Today, club.Head, club.Device, Cancel)).Sentences);
        Assert.Equal(
            ["No term begins on 15 April 2026; an edition holds from a term’s first day on, choose one."],
            Assert.IsType<PublishOutcome.Refused>(await club.Store.PublishAsync(draft, 1, "edition 2", Summer.AddDays(1), Today, club.Head, club.Device, Cancel)).Sentences);
        Assert.IsType<PublishOutcome.Stale>(await club.Store.PublishAsync(draft, 3, "edition 2", Summer, Today, club.Head, club.Device, Cancel));
        Assert.IsType<PublishOutcome.Published>(await club.Store.PublishAsync(draft, 1, "edition 2", Summer, Today, club.Head, club.Device, Cancel));
        // Of two from one day the later holds.
        Assert.Equal("edition 2", club.Book().EditionOn(club.Book().Programmes[0].LadderId, Summer)!.Name);
    }

    [Fact]
    public async Task An_edition_that_does_not_hold_together_is_not_published()
    {
        await using var club = await MadeAsync();
        var draft = await club.BegunAsync(SmallLadder.Edition with { Ranks = [] });
        var refused = Assert.IsType<PublishOutcome.Refused>(await club.Store.PublishAsync(draft, 1, "edition 1", Spring, Today, club.Head, club.Device, Cancel));
        Assert.Contains(refused.Sentences, s => s.Contains("no rank", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_terms_unit_is_set_changed_and_taken_away()
    {
        await using var club = await MadeAsync();
        Assert.True(await club.Store.SetUnitAsync(club.Programme, club.Term, "hips", club.Head, club.Device, Cancel));
        Assert.Equal("hips", club.Book().UnitOf(club.Programme, club.Term));
        Assert.True(await club.Store.SetUnitAsync(club.Programme, club.Term, "feet", club.Head, club.Device, Cancel));
        Assert.Equal("feet", club.Book().UnitOf(club.Programme, club.Term));
        Assert.True(await club.Store.SetUnitAsync(club.Programme, club.Term, null, club.Head, club.Device, Cancel));
        Assert.Null(club.Book().UnitOf(club.Programme, club.Term));
        Assert.False(await club.Store.SetUnitAsync(club.Programme, club.Device, "hips", club.Head, club.Device, Cancel));
    }

    [Fact]
    public async Task An_age_rule_holds_until_it_is_taken_out_and_stays_on_record()
    {
        await using var club = await MadeAsync();
        var rule = new AgeRule("No neck grips", 11, AgeBasis.CalendarYear, ["o-goshi"], ["Koshi-guruma"], [ItemKind.Strangle], "Body, rules for children, page 9", new DateOnly(2025, 9, 1));
        var id = await club.Store.AddAgeRuleAsync(rule, club.Head, club.Device, Cancel);
        Assert.Equivalent(rule, Assert.Single(club.Book().AgeRules).Rule, strict: true);
        Assert.True(await club.Store.EndAgeRuleAsync(id, club.Head, club.Device, Cancel));
        Assert.False(await club.Store.EndAgeRuleAsync(id, club.Head, club.Device, Cancel));
        Assert.Empty(club.Book().AgeRules);
        using var db = club.Engine.OpenDb();
        Assert.NotNull(db.AgeRules.Single().EndedAt);
    }

    [Fact]
    public async Task Publishing_a_unit_and_an_age_rule_raise_the_calendars_revision()
    {
        await using var club = await MadeAsync();
        var before = club.Revision();
        await club.PublishedAsync(SmallLadder.Edition, "edition 1", Spring);
        var published = club.Revision();
        await club.Store.SetUnitAsync(club.Programme, club.Term, "hips", club.Head, club.Device, Cancel);
        var unit = club.Revision();
        await club.Store.AddAgeRuleAsync(new AgeRule("None", 8, AgeBasis.Birthday, [], ["Tomoe-nage"], [], "Body", Spring), club.Head, club.Device, Cancel);
        Assert.True(before < published && published < unit && unit < club.Revision());
    }

    private async Task<SyllabusClub> MadeAsync()
    {
        var engine = await Host.EmptyAsync();
        var time = FixedTime.At("2026-03-03T17:30");
        var writer = new WriterQueue(engine, time);
        var device = Guid.CreateVersion7(Now);
        await new ClubStore(writer).MakeAsync(new NewClub("Osier Quay", "Maren", "Holt", "Juniors", "Europe/London", PaperChoice.A4), device, Today, Cancel);
        var calendar = new CalendarStore(writer);
        var term = await calendar.AddTermAsync("Spring 2026", Spring, new DateOnly(2026, 3, 31), null, device, Cancel);
        await calendar.AddTermAsync("Summer 2026", Summer, new DateOnly(2026, 7, 14), null, device, Cancel);
        using var db = engine.OpenDb();
        return new SyllabusClub(engine, writer, time, device, db.Programmes.Single().Id, db.Duties.Single().PersonId, term!.Value);
    }

    /// <summary>A club with two terms and no ladder.</summary>
    private sealed class SyllabusClub(Engine engine, WriterQueue writer, FixedTime time, Guid device, Guid programme, Guid head, Guid term) : IAsyncDisposable
    {
        public Engine Engine => engine;
        public Guid Device => device;
        public Guid Programme => programme;
        public Guid Head => head;
        public Guid Term => term;
        public SyllabusStore Store { get; } = new(writer);

        public ClubBook Book()
        {
            using var reading = engine.OpenReading();
            return BookStore.Read(reading, new DateOnly(2025, 1, 1));
        }

        public EditionDraft? Draft()
        {
            using var reading = engine.OpenReading();
            return DraftReader.Of(reading, Book().Programmes[0].LadderId);
        }

        public long Revision()
        {
            using var db = engine.OpenDb();
            return db.Clubs.Single().CalendarRevision;
        }

        public async Task<Guid> BegunAsync(Edition edition)
        {
            time.Step(TimeSpan.FromMinutes(1));
            return Assert.IsType<StartOutcome.Begun>(await Store.StartAsync(programme, edition, "Begun.", head, device, Cancel)).Draft;
        }

        public async Task<Guid> PublishedAsync(Edition edition, string name, DateOnly from)
        {
            var draft = await BegunAsync(edition);
            var outcome = await Store.PublishAsync(draft, 1, name, from, Today, head, device, Cancel);
            return Assert.IsType<PublishOutcome.Published>(outcome).Edition;
        }

        /// <summary>A ladder as reading a roster makes it.</summary>
        public Task<(Guid Ladder, List<Guid> Ranks)> BeltsAsync(params string[] names) => writer.RunAsync(session =>
        {
            var ladder = new LadderRow { Club = session.Club, Id = session.NewId(), Name = "Juniors" };
            session.Db.Ladders.Add(ladder);
            session.Db.SaveChanges();
            var ranks = names.Select((name, i) =>
            {
                var read = Keikocho.Core.Intake.RankWords.Read(name);
                return new RankRow { Club = session.Club, Id = session.NewId(), LadderId = ladder.Id, Name = name, Cloth = read.Cloth, Tips = read.Tips, Position = i + 1 };
            }).ToList();
            session.Db.Ranks.AddRange(ranks);
            session.Db.Programmes.Single().LadderId = ladder.Id;
            session.Db.SaveChanges();
            return (ladder.Id, ranks.ConvertAll(r => r.Id));
        }, Cancel);

        /// <summary>A child who wears a rank.</summary>
        public Task<Guid> JoinAsync(Guid rank, DateOnly? left = null) => writer.RunAsync(session =>
        {
            var child = new PersonRow { Club = session.Club, Id = session.NewId(), Given = Keikocho.Store.Kernel.Seal.Close("Wren"), MadeAt = session.Now };
            session.Db.People.Add(child);
            session.Db.SaveChanges();
            session.Db.Enrolments.Add(new EnrolmentRow { Club = session.Club, Id = session.NewId(), PersonId = child.Id, ProgrammeId = programme, From = new DateOnly(2025, 9, 2), To = left, CountsFrom = new DateOnly(2025, 9, 2), Position = 1 });
            session.Db.Awards.Add(new AwardRow { Club = session.Club, Id = session.NewId(), PersonId = child.Id, LadderId = session.Db.Ladders.Single().Id, RankId = rank, Source = AwardSource.Imported, MadeAt = session.Now });
            session.Db.SaveChanges();
            return child.Id;
        }, Cancel);

        public ValueTask DisposeAsync() => writer.DisposeAsync();
    }
}

public sealed class SyllabusOnSqlite() : SyllabusSpecification(new SqliteHost());

public sealed class SyllabusOnPostgres(PostgresDatabase database) : SyllabusSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;
