using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Keikocho.Store.Promotion;
using Keikocho.Store.Tests.Marks;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Promotion;

/// <summary>What was told is kept as it was told, the same on both engines.</summary>
public abstract class KeptAnswerSpecification(StoreHost host) : StoreSpecification(host)
{
    [Fact]
    public async Task What_was_told_is_kept_word_for_word_and_the_newest_stands_first()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var store = new KeptAnswerStore(club.Writer);
        var page = new NewKeptAnswer(club.NewId(), KeptAnswerStore.ParentsPage, club.Wren, "{\"asked\":1}", "parents-page 1", "{\"told\":\"7 of 9 – “good”\"}");
        Assert.Equal(page.Id, await store.KeepAsync(page, club.Head, club.Device, Cancel));
        club.Later();
        var sheet = page with { Id = club.NewId(), Kind = KeptAnswerStore.Sheet, Answer = "{\"sheet\":1}" };
        Assert.Equal(sheet.Id, await store.KeepAsync(sheet, club.Assistant, club.Device, Cancel));
        using var db = club.Engine.OpenDb();
        var kept = KeptAnswerStore.Of(db, club.Wren);
        Assert.Equal([sheet.Id, page.Id], kept.Select(k => k.Id));
        Assert.Equal((page.Kind, club.Wren, page.SumVersion, page.Answer, (Guid?)club.Head), (kept[1].Kind, kept[1].SubjectId, kept[1].SumVersion, kept[1].Answer, kept[1].ById));
        Assert.Equal(kept[0], KeptAnswerStore.Find(db, sheet.Id));
        Assert.Null(KeptAnswerStore.Find(db, club.Wren));
        Assert.Empty(KeptAnswerStore.Of(db, club.Bram));
        Assert.Equal(2, db.Trail.Count(t => t.Kind == TrailKind.AnswerKept && t.SubjectId == club.Wren));
    }

    [Fact]
    public async Task The_same_told_again_from_the_same_facts_is_kept_once_and_after_a_change_and_back_again()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var store = new KeptAnswerStore(club.Writer);
        Task<Guid?> Keep(Guid id, string question, string version = "1") =>
            store.KeepAsync(new NewKeptAnswer(id, KeptAnswerStore.ParentsPage, club.Wren, question, version, "{}"), club.Head, club.Device, Cancel);
        var ids = Enumerable.Range(0, 5).Select(_ => club.NewId()).ToArray();
        Assert.Equal(ids[0], await Keep(ids[0], "a"));
        Assert.Equal(ids[0], await Keep(ids[0], "a"));
        club.Later();
        Assert.Equal(ids[0], await Keep(ids[1], "a"));
        Assert.Equal(ids[2], await Keep(ids[2], "b"));
        club.Later();
        // What was told in between was told: the first facts again are told again.
        Assert.Equal(ids[3], await Keep(ids[3], "a"));
        club.Later();
        Assert.Equal(ids[4], await Keep(ids[4], "a", "2"));
        using var db = club.Engine.OpenDb();
        Assert.Equal([ids[4], ids[3], ids[2], ids[0]], KeptAnswerStore.Of(db, club.Wren).Select(k => k.Id));
    }

    [Fact]
    public async Task Nothing_is_kept_of_nobody_and_a_closed_list_is_no_paper_of_a_child()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var store = new KeptAnswerStore(club.Writer);
        var asked = new NewKeptAnswer(club.NewId(), KeptAnswerStore.Sheet, club.Device, "a", "1", "{}");
        Assert.Null(await store.KeepAsync(asked, club.Head, club.Device, Cancel));
        var list = club.NewId();
        await club.Writer.RunAsync(session =>
        {
            session.Db.People.Single(p => p.Id == club.Bram).ErasedAt = session.Now;
            session.Db.KeptAnswers.Add(new KeptAnswerRow
            {
                Club = session.Club,
                Id = list,
                Kind = TestReader.ListKind,
                SubjectId = club.Wren,
                SumVersion = "1",
                Answer = Seal.Close("{}"),
                MadeAt = session.Now,
            });
            session.Db.SaveChanges();
            return true;
        }, Cancel);
        Assert.Null(await store.KeepAsync(asked with { SubjectId = club.Bram }, club.Head, club.Device, Cancel));
        using var db = club.Engine.OpenDb();
        Assert.Empty(KeptAnswerStore.Of(db, club.Wren));
        Assert.Null(KeptAnswerStore.Find(db, list));
    }
}

public sealed class KeptAnswersInSqlite() : KeptAnswerSpecification(new SqliteHost());

public sealed class KeptAnswersInPostgres(PostgresDatabase database) : KeptAnswerSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;
