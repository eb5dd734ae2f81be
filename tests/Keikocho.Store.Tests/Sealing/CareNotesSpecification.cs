using Keikocho.Core.Safety;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;
using Keikocho.Store.Sealing;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Sealing;

/// <summary>Care notes, closed by the club's lock, the same on both engines.</summary>
public abstract class CareNotesSpecification(StoreHost host) : StoreSpecification(host)
{
    private const string Passphrase = "four plain words here";
    private const string Words = "Peanuts: lips swell within minutes.";
    private static readonly DateOnly Day = new(2026, 3, 3);
    private readonly FixedTime time = new(Now);
    private readonly TempFolder folder = new();

    protected override void Ending() => folder.Dispose();

    [Fact]
    public async Task A_note_opens_with_the_lock_only_and_no_word_of_it_lies_in_the_database_or_the_trail()
    {
        var (engine, child, other) = await WithChildrenAsync();
        await using var writer = new WriterQueue(engine, time);
        using var locks = new LockStore(writer, engine, time);
        using var reading = engine.OpenReading();
        await locks.MakeAsync(Passphrase, null, child, Cancel);
        var key = locks.Now(reading).Key!;
        var notes = new CareNoteStore(writer);
        Assert.True(await notes.EnterAsync(child, [new(CareHeading.Allergies, $" {Words} "), new(CareHeading.WhatToDo, "Pen in the bag, then ring."), new(CareHeading.Fits, "  ")], Day, key, child, child, Cancel));
        Assert.Equal(
            [(CareHeading.Allergies, Words), (CareHeading.WhatToDo, "Pen in the bag, then ring.")],
            CareNoteReader.Of(reading, [child, other], key)[child].Select(n => (n.Heading, n.Text)));
        Assert.Equal(
            [new CareStands(child, Day, true), new CareStands(other, null, false)],
            CareNoteReader.Stands(reading, [child, other]).Values.OrderByDescending(s => s.HasNote));
        Assert.True(CareNoteReader.Any(reading));
        using (var db = engine.OpenDb())
        {
            Assert.All(db.CareNotes.ToList(), n => Assert.Equal(1, n.Text.Bytes[0]));
            Assert.All(db.CareNotes.ToList(), n => Assert.Throws<InvalidDataException>(() => Seal.Open(n.Text)));
            var line = Assert.Single(db.Trail.Where(t => t.Kind == TrailKind.CareNoteChanged).ToList());
            Assert.Equal((child, child, 0), (line.SubjectId!.Value, line.ById!.Value, line.Digest.Length));
        }

        using (var wrong = new OpenedLock(key.Id, key.ClubId, new byte[32])) Assert.All(CareNoteReader.Of(reading, [child], wrong)[child], n => Assert.Null(n.Text));
        locks.Shut();
        Assert.Throws<ObjectDisposedException>(() => CareNoteReader.Of(reading, [child], key));
        await Assert.ThrowsAsync<ObjectDisposedException>(() => notes.EnterAsync(child, [new(CareHeading.Fits, "Faints at blood.")], Day, key, child, child, Cancel));
        using (var db = engine.OpenDb()) Assert.Equal(2, db.CareNotes.Count());
    }

    [Fact]
    public async Task Bytes_of_one_note_open_in_no_other_row_and_for_no_other_child()
    {
        var (engine, child, other) = await WithChildrenAsync();
        await using var writer = new WriterQueue(engine, time);
        using var locks = new LockStore(writer, engine, time);
        using var reading = engine.OpenReading();
        await locks.MakeAsync(Passphrase, null, child, Cancel);
        var key = locks.Now(reading).Key!;
        var notes = new CareNoteStore(writer);
        await notes.EnterAsync(child, [new(CareHeading.Allergies, Words)], Day, key, child, child, Cancel);
        await notes.EnterAsync(other, [new(CareHeading.Allergies, "None known.")], Day, key, child, child, Cancel);
        using (var db = engine.OpenDb())
        {
            var rows = db.CareNotes.ToList();
            rows.Single(r => r.PersonId == other).Text = rows.Single(r => r.PersonId == child).Text;
            await db.SaveChangesAsync(Cancel);
        }

        var held = CareNoteReader.Of(reading, [child, other], key);
        Assert.Equal((Words, null), (held[child][0].Text, held[other][0].Text));
    }

    [Fact]
    public async Task Taking_a_note_out_deletes_its_words_and_what_is_written_anew_leaves_nothing_of_the_old()
    {
        var (engine, child, _) = await WithChildrenAsync();
        await using var writer = new WriterQueue(engine, time);
        using var locks = new LockStore(writer, engine, time);
        using var reading = engine.OpenReading();
        await locks.MakeAsync(Passphrase, null, child, Cancel);
        var key = locks.Now(reading).Key!;
        var notes = new CareNoteStore(writer);
        await notes.EnterAsync(child, [new(CareHeading.Allergies, Words), new(CareHeading.Fits, "Faints at blood.")], Day, key, child, child, Cancel);
        await notes.EnterAsync(child, [new(CareHeading.Allergies, "Peanuts and bees."), new(CareHeading.Fits, "")], Day.AddYears(1), key, child, child, Cancel);
        Assert.Equal([(CareHeading.Allergies, "Peanuts and bees.")], CareNoteReader.Of(reading, [child], key)[child].Select(n => (n.Heading, n.Text)));
        Assert.Equal(new CareStands(child, Day.AddYears(1), true), CareNoteReader.Stands(reading, [child])[child]);
        // No lock is needed to take them out.
        locks.Shut();
        Assert.True(await notes.RemoveAsync(child, child, child, Cancel));
        Assert.False(await notes.RemoveAsync(child, child, child, Cancel));
        Assert.Equal(new CareStands(child, null, false), CareNoteReader.Stands(reading, [child])[child]);
        using var db = engine.OpenDb();
        Assert.Empty(db.CareNotes);
        Assert.Equal(3, db.Trail.Count(t => t.Kind == TrailKind.CareNoteChanged));
    }

    [Fact]
    public async Task A_note_that_is_too_long_or_of_nobody_is_refused_and_changes_nothing()
    {
        var (engine, child, _) = await WithChildrenAsync();
        await using var writer = new WriterQueue(engine, time);
        using var locks = new LockStore(writer, engine, time);
        using var reading = engine.OpenReading();
        await locks.MakeAsync(Passphrase, null, child, Cancel);
        var key = locks.Now(reading).Key!;
        var notes = new CareNoteStore(writer);
        Assert.False(await notes.EnterAsync(child, [new(CareHeading.Other, new string('a', CareHeadings.LongestNote + 1))], Day, key, child, child, Cancel));
        Assert.False(await notes.EnterAsync(child, [new((CareHeading)77, Words)], Day, key, child, child, Cancel));
        Assert.False(await notes.EnterAsync(Guid.CreateVersion7(Now), [new(CareHeading.Other, Words)], Day, key, child, child, Cancel));
        Assert.False(CareNoteReader.Any(reading));
    }

    [Fact]
    public async Task An_archive_carries_notes_sealed_and_the_check_finds_one_that_is_plain()
    {
        var (engine, child, _) = await WithChildrenAsync();
        await using var writer = new WriterQueue(engine, time);
        using var locks = new LockStore(writer, engine, time);
        using var reading = engine.OpenReading();
        await locks.MakeAsync(Passphrase, null, child, Cancel);
        await new CareNoteStore(writer).EnterAsync(child, [new(CareHeading.Allergies, Words)], Day, locks.Now(reading).Key!, child, child, Cancel);
        Assert.DoesNotContain((await CheckClub.RunAsync(engine, _ => new(), cancel: Cancel)).Problems, p => p.Part == CheckPart.Sealed);
        var manifest = await Archive.WriteAsync(engine, folder.File("club"), Now, Cancel);
        Assert.Contains("closed by the club's lock", manifest.Note, StringComparison.Ordinal);
        var cell = (await File.ReadAllLinesAsync(folder.File("club/tables/CareNotes.csv"), Cancel))[1];
        Assert.Matches(",sealed:01[0-9a-f]+,", $",{cell},");
        Assert.DoesNotContain("Peanuts", cell, StringComparison.Ordinal);

        await using var otherHost = new SqliteHost();
        var to = await otherHost.EmptyAsync();
        await Archive.ReadAsync(to, folder.File("club"), null, Cancel);
        await using var there = new WriterQueue(to, time);
        using var lockThere = new LockStore(there, to, time);
        using var readingThere = to.OpenReading();
        Assert.Equal(LockOutcome.Done, (await lockThere.OpenAsync(Passphrase, Cancel)).Outcome);
        Assert.Equal(Words, CareNoteReader.Of(readingThere, [child], lockThere.Now(readingThere).Key!)[child][0].Text);

        using (var db = engine.OpenDb())
        {
            db.CareNotes.Single().Text = Seal.Close(Words);
            await db.SaveChangesAsync(Cancel);
        }

        Assert.Contains((await CheckClub.RunAsync(engine, _ => new(), cancel: Cancel)).Problems, p => p.Part == CheckPart.Sealed);
    }

    private async Task<(Engine Engine, Guid Child, Guid Other)> WithChildrenAsync()
    {
        var engine = await Host.EmptyAsync();
        await using var writer = new WriterQueue(engine, time);
        return await writer.RunAsync(s =>
        {
            s.Db.Clubs.Add(new Keikocho.Store.Club.ClubRow { Club = s.Club, Id = s.NewId(), Name = "Osier Quay", Zone = "Europe/London" });
            var child = new PersonRow { Club = s.Club, Id = s.NewId(), Given = Seal.Close("Wren"), MadeAt = s.Now };
            var other = new PersonRow { Club = s.Club, Id = s.NewId(), Given = Seal.Close("Noor"), MadeAt = s.Now };
            s.Db.People.AddRange(child, other);
            s.Db.SaveChanges();
            return (engine, child.Id, other.Id);
        }, Cancel);
    }
}

public sealed class CareNotesOnSqlite() : CareNotesSpecification(new SqliteHost());

public sealed class CareNotesOnPostgres(PostgresDatabase database) : CareNotesSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;
