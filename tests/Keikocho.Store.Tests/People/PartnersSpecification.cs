using Keikocho.Store.Engines;
using Keikocho.Store.Evening;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;
using Keikocho.Store.Tests.Engines;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.People;

/// <summary>Wishes about two children, families, and who worked together, the same on both engines.</summary>
public abstract class PartnersSpecification(StoreHost host) : StoreSpecification(host)
{
    private static readonly DateOnly Day = new(2026, 3, 3);

    [Fact]
    public async Task A_wish_holds_from_its_day_to_the_day_before_it_ends_and_no_second_one_about_the_two_is_taken()
    {
        var club = await ClubAsync();
        await using var writer = new WriterQueue(club.Engine, new FixedTime(Now));
        var wishes = new PairWishStore(writer);
        using var reading = club.Engine.OpenReading();
        Task<bool> Enter(int one, int other, bool apart) => wishes.EnterAsync(club.People[one], club.People[other], apart, Day, club.People[4], club.People[4], Cancel);
        Assert.True(await Enter(0, 1, apart: true));
        Assert.True(await Enter(2, 3, apart: false));
        Assert.False(await Enter(1, 0, apart: true));
        Assert.False(await Enter(1, 0, apart: false));
        Assert.False(await Enter(0, 0, apart: true));
        Assert.Empty(PairWishReader.On(reading, Day.AddDays(-1)));
        var held = PairWishReader.On(reading, Day);
        Assert.Equal([(club.People[0], club.People[1], true), (club.People[2], club.People[3], false)], held.Select(w => (w.OneId, w.OtherId, w.Apart)));
        Assert.True(await wishes.EndAsync(held[0].Id, Day.AddDays(7), club.People[4], club.People[4], Cancel));
        Assert.False(await wishes.EndAsync(held[0].Id, Day.AddDays(9), club.People[4], club.People[4], Cancel));
        Assert.True(await wishes.EndAsync(held[1].Id, Day, club.People[4], club.People[4], Cancel));
        Assert.Equal(held[0].Id, Assert.Single(PairWishReader.On(reading, Day.AddDays(6))).Id);
        Assert.Empty(PairWishReader.On(reading, Day.AddDays(7)));
        Assert.True(await wishes.EnterAsync(club.People[1], club.People[0], apart: false, Day.AddDays(7), club.People[4], club.People[4], Cancel));
    }

    [Fact]
    public async Task Pairs_that_are_put_to_use_are_a_round_each_and_a_repair_undoes_only_what_it_changed()
    {
        var club = await ClubAsync();
        await using var writer = new WriterQueue(club.Engine, new FixedTime(Now));
        var together = new TogetherStore(writer);
        using var reading = club.Engine.OpenReading();
        var p = club.People;
        Task<int?> Use(int activity, int? repairs, params (Guid, Guid)[] links) => together.UseAsync(club.Lesson, activity, links, repairs, p[4], p[4], Cancel);
        Assert.Equal(1, await Use(2, null, (p[0], p[1]), (p[3], p[2])));
        Assert.Equal(2, await Use(1, null, (p[0], p[2])));
        Assert.Equal(1, await Use(2, 1, (p[1], p[0]), (p[3], p[4])));
        Assert.Null(await together.UseAsync(Guid.CreateVersion7(Now), 2, [(p[0], p[1])], null, p[4], p[4], Cancel));
        Assert.Null(await Use(2, null, (p[0], Guid.CreateVersion7(Now))));
        var round = Assert.Single(TogetherReader.Rounds(reading, club.Lesson, 2));
        Assert.Equal(1, round.Round);
        Assert.Equal(Sorted((p[0], p[1]), (p[3], p[4])), Sorted([.. round.Links]));
        Assert.Equal(3, TogetherReader.OfLessons(reading, [club.Lesson]).Count);
        using var db = club.Engine.OpenDb();
        Assert.Equal((4, 1), (db.Togethers.Count(), db.Togethers.Count(t => t.UndoneAt != null)));
    }

    [Fact]
    public async Task Children_who_share_any_family_have_one_name_for_it()
    {
        var club = await ClubAsync();
        await using var writer = new WriterQueue(club.Engine, new FixedTime(Now));
        var p = club.People;
        await writer.RunAsync(s =>
        {
            foreach (var members in new[] { new[] { p[0], p[1] }, [p[1], p[2]] })
            {
                var family = new FamilyRow { Club = s.Club, Id = s.NewId() };
                s.Db.Families.Add(family);
                s.Db.FamilyMembers.AddRange(members.Select(m => new FamilyMemberRow { Club = s.Club, FamilyId = family.Id, PersonId = m }));
            }

            s.Db.SaveChanges();
            return 0;
        }, Cancel);
        using var reading = club.Engine.OpenReading();
        var names = FamilyReader.Of(reading, p);
        Assert.Equal(3, names.Count);
        Assert.Single(names.Values.Distinct());
        Assert.False(names.ContainsKey(p[3]));
    }

    private static List<(Guid, Guid)> Sorted(params (Guid One, Guid Other)[] links) =>
        [.. links.Select(l => l.One.CompareTo(l.Other) < 0 ? l : (l.Other, l.One)).Order()];

    private async Task<(Engine Engine, Guid Lesson, List<Guid> People)> ClubAsync()
    {
        var engine = await Host.EmptyAsync();
        await using var writer = new WriterQueue(engine, new FixedTime(Now));
        return await writer.RunAsync(s =>
        {
            var (lesson, _) = TappingChild.AddLesson(s);
            var people = Enumerable.Range(0, 5).Select(_ => new PersonRow { Club = s.Club, Id = s.NewId(), Given = Seal.Close("Kim"), MadeAt = s.Now }).ToList();
            s.Db.People.AddRange(people);
            s.Db.SaveChanges();
            return (engine, lesson, people.Select(p => p.Id).ToList());
        }, Cancel);
    }
}

public sealed class PartnersOnSqlite() : PartnersSpecification(new SqliteHost());

public sealed class PartnersOnPostgres(PostgresDatabase database) : PartnersSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;
