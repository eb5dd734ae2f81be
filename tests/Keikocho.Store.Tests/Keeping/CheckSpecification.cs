using System.Security.Cryptography;
using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Calendar;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Tests.Engines;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Keeping;

/// <summary>A sound club has no problem; each damage is found, where it is and nowhere else.</summary>
public abstract class CheckSpecification(StoreHost host) : StoreSpecification(host)
{
    [Fact]
    public async Task A_sound_club_has_no_problem()
    {
        var report = await CheckAsync(await SoundAsync());
        Assert.Empty(report.Problems);
        Assert.True(report.Sound);
        Assert.Equal((7, 4, 3), (report.Marks, report.States, report.TrailLines));
        Assert.Equal(5, report.SealedValues);
    }

    [Theory]
    [InlineData("UPDATE \"Attendances\" SET \"Word\" = 3 WHERE \"Word\" = 4", CheckPart.States, "word is Absent, should be Excused")]
    [InlineData("UPDATE \"Attendances\" SET \"Arrived\" = 1070 WHERE \"Word\" = 1", CheckPart.States, "arrival is 17:50, should be 17:31")]
    [InlineData("DELETE FROM \"Attendances\" WHERE \"Word\" = 4", CheckPart.States, "and no state")]
    [InlineData("INSERT INTO \"Attendances\" SELECT \"Club\", \"LessonId\", (SELECT \"ById\" FROM \"Trail\" WHERE \"Number\" = 3), \"ProgrammeId\", \"Date\", \"Word\", \"Arrived\", \"LeftAt\", \"Late\", \"Counts\", \"Ukemi\", \"LeftEarly\", \"Clash\" FROM \"Attendances\" WHERE \"Word\" = 4", CheckPart.States, "has no mark behind it")]
    [InlineData("UPDATE \"Lessons\" SET \"End\" = \"Start\"", CheckPart.Marks, "cannot be folded")]
    [InlineData("UPDATE \"Marks\" SET \"Replaces\" = (SELECT \"Id\" FROM \"Halls\") WHERE \"Sequence\" = 1", CheckPart.Marks, "which is not there")]
    [InlineData("UPDATE \"Marks\" SET \"Replaces\" = (SELECT \"Id\" FROM \"Marks\" WHERE \"Sequence\" = 2) WHERE \"Sequence\" = 1", CheckPart.Marks, "of another person")]
    [InlineData("UPDATE \"Marks\" SET \"Kind\" = 10 WHERE \"Sequence\" = 6; DELETE FROM \"Attendances\" WHERE \"Word\" = 4", CheckPart.Marks, "is of something seen and has no item")]
    [InlineData("UPDATE \"Marks\" SET \"DeviceId\" = \"PersonId\" WHERE \"Sequence\" = 1", CheckPart.Links, "is of a device")]
    [InlineData("UPDATE \"Marks\" SET \"PersonId\" = (SELECT \"Id\" FROM \"Halls\") WHERE \"Sequence\" = 6; UPDATE \"Attendances\" SET \"PersonId\" = (SELECT \"Id\" FROM \"Halls\") WHERE \"Word\" = 4", CheckPart.Links, "is of a person")]
    [InlineData("UPDATE \"Marks\" SET \"LessonId\" = (SELECT \"Id\" FROM \"Halls\") WHERE \"Sequence\" = 6; DELETE FROM \"Attendances\" WHERE \"Word\" = 4", CheckPart.Links, "is of a lesson")]
    [InlineData("UPDATE \"Attendances\" SET \"LessonId\" = (SELECT \"Id\" FROM \"Halls\") WHERE \"Word\" = 4", CheckPart.States, "has no mark behind it")]
    [InlineData("UPDATE \"Attendances\" SET \"Date\" = '2026-03-04' WHERE \"Word\" = 4", CheckPart.States, "date is 2026-03-04, should be 2026-03-03")]
    [InlineData("INSERT INTO \"RegisterPlaces\" (\"Club\", \"ProgrammeId\", \"TermId\", \"PersonId\", \"Position\") SELECT \"Club\", \"ProgrammeId\", \"ProgrammeId\", \"PersonId\", 3 FROM \"Enrolments\"", CheckPart.Calendar, "Place 3 of programme")]
    [InlineData("UPDATE \"Trail\" SET \"Digest\" = (SELECT \"Salt\" FROM \"Clubs\") WHERE \"Number\" = 3", CheckPart.Trail, "Line 3 of the trail does not fit its hash")]
    [InlineData("UPDATE \"Trail\" SET \"ById\" = NULL WHERE \"Number\" = 3", CheckPart.Trail, "Line 3 of the trail does not fit its hash")]
    [InlineData("UPDATE \"Trail\" SET \"At\" = \"At\" + 1 WHERE \"Number\" = 1", CheckPart.Trail, "Line 1 of the trail does not fit its hash")]
    [InlineData("UPDATE \"Marks\" SET \"Sequence\" = 2 WHERE \"Sequence\" = 1", CheckPart.Marks, "has count 2 on 2 marks")]
    [InlineData("UPDATE \"Evenings\" SET \"HallId\" = \"Id\"", CheckPart.Links, "1 of Evenings point by HallId to a row of Halls that is not there")]
    [InlineData("UPDATE \"Trail\" SET \"Kind\" = 1 WHERE \"Number\" = 2", CheckPart.Trail, "Line 2 of the trail does not fit its hash")]
    [InlineData("UPDATE \"Trail\" SET \"Hash\" = (SELECT \"Salt\" FROM \"Clubs\") WHERE \"Number\" = 2", CheckPart.Trail, "Line 3 of the trail does not fit its hash")]
    [InlineData("DELETE FROM \"Trail\" WHERE \"Number\" = 2", CheckPart.Trail, "from line 1 to line 3")]
    [InlineData("DELETE FROM \"Trail\" WHERE \"Number\" = 1", CheckPart.Trail, "from line 0 to line 2")]
    [InlineData("UPDATE \"People\" SET \"Given\" = (SELECT \"Salt\" FROM \"Clubs\") WHERE \"Given\" IS NOT NULL", CheckPart.Sealed, "Given of People")]
    [InlineData("UPDATE \"Attachments\" SET \"Hash\" = (SELECT \"Salt\" FROM \"Clubs\")", CheckPart.Sealed, "does not have the hash")]
    [InlineData("UPDATE \"Evenings\" SET \"Date\" = '2026-03-04'", CheckPart.Calendar, "belongs to the evening of 2026-03-04")]
    [InlineData("UPDATE \"Enrolments\" SET \"Position\" = 7", CheckPart.Calendar, "both have place 7")]
    public async Task A_damage_is_found_where_it_is(string damage, CheckPart part, string says)
    {
        var engine = await SoundAsync();
        Damage(engine, damage);
        var report = await CheckAsync(engine);
        Assert.Contains(report.Problems, p => p.Part == part && p.Sentence.Contains(says, StringComparison.Ordinal));
        Assert.All(report.Problems, p => Assert.Equal(part, p.Part));
        Assert.All(report.Problems, p => Assert.EndsWith(".", p.Sentence, StringComparison.Ordinal));
        Assert.DoesNotContain(report.Problems, p => p.Sentence.Contains("Kim", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Of_many_alike_the_first_are_listed_and_the_rest_counted()
    {
        var engine = await SoundAsync();
        await using (var writer = new WriterQueue(engine, new FixedTime(Now)))
        {
            await writer.RunAsync(
                s =>
                {
                    s.Db.People.AddRange(Enumerable.Range(0, 30).Select(_ => new PersonRow { Club = s.Club, Id = s.NewId(), Given = new Sealed<string>([9]) }));
                    return s.Db.SaveChanges();
                },
                Cancel);
        }

        var report = await CheckAsync(engine);
        Assert.Equal(21, report.Problems.Count);
        Assert.Equal("And 10 more of this kind.", report.Problems[^1].Sentence);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(8)]
    public async Task Every_lesson_is_looked_at_whichever_half_of_them_it_is_in(int lessons)
    {
        var engine = await Host.EmptyAsync();
        await using (var writer = new WriterQueue(engine, new FixedTime(Now)))
        {
            await writer.RunAsync(
                s =>
                {
                    var (first, person) = TappingChild.AddLesson(s);
                    var device = TappingChild.AddDevice(s);
                    var lesson = s.Db.Lessons.Single();
                    for (var n = 1; n <= lessons; n++)
                    {
                        if (n > 1)
                        {
                            lesson = new LessonRow
                            {
                                Club = s.Club,
                                Id = s.NewId(),
                                ProgrammeId = lesson.ProgrammeId,
                                EveningId = lesson.EveningId,
                                Date = lesson.Date,
                                Start = lesson.Start.AddMinutes(1),
                                UkemiFrom = lesson.UkemiFrom,
                                UkemiTo = lesson.UkemiTo,
                                HalfTime = lesson.HalfTime,
                                End = lesson.End,
                            };
                            s.Db.Lessons.Add(lesson);
                        }

                        s.Db.Marks.Add(TappingChild.MarkOf(s, device, n, lesson.Id, person));
                        s.Db.SaveChanges();
                        FoldMarks.Store(s, lesson, person, new AttendanceRules());
                    }

                    return 0;
                },
                Cancel);
        }

        var sound = await CheckAsync(engine);
        Assert.Empty(sound.Problems);
        Assert.Equal((lessons, lessons), (sound.Marks, sound.States));
        Damage(engine, "DELETE FROM \"Attendances\"");
        var damaged = await CheckAsync(engine);
        Assert.Equal(lessons, damaged.Problems.Count(p => p.Sentence.Contains("and no state", StringComparison.Ordinal)));
        Assert.Equal(lessons, damaged.Problems.Count);
    }

    [Fact]
    public async Task A_mark_that_takes_the_place_of_another_is_looked_up_however_many_there_are()
    {
        const int Undone = 1200;
        var engine = await Host.EmptyAsync();
        await using (var writer = new WriterQueue(engine, new FixedTime(Now)))
        {
            await writer.RunAsync(
                s =>
                {
                    var (lesson, _) = TappingChild.AddLesson(s);
                    var device = TappingChild.AddDevice(s);
                    for (var n = 0; n < Undone; n++)
                    {
                        var person = new PersonRow { Club = s.Club, Id = s.NewId(), MadeAt = s.Now };
                        var slip = TappingChild.MarkOf(s, device, 2 * n + 1, lesson, person.Id);
                        var undo = TappingChild.MarkOf(s, device, 2 * n + 2, lesson, person.Id, MarkKind.Cleared);
                        undo.Replaces = slip.Id;
                        s.Db.AddRange(person, slip, undo);
                    }

                    s.Db.SaveChanges();
                    FoldMarks.StoreAll(s, s.Db.Lessons.Single(), new AttendanceRules());
                    return 0;
                },
                Cancel);
        }

        Assert.Empty((await CheckAsync(engine)).Problems);
        Damage(engine, $"UPDATE \"Marks\" SET \"Replaces\" = (SELECT \"Id\" FROM \"Halls\") WHERE \"Sequence\" IN (2, {Undone}, {2 * Undone})");
        var damaged = await CheckAsync(engine);
        Assert.Equal(3, damaged.Problems.Count(p => p.Part == CheckPart.Marks && p.Sentence.Contains("which is not there", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task The_rules_of_the_day_are_used()
    {
        var asked = new List<DateOnly>();
        var report = await CheckClub.RunAsync(
            await SoundAsync(),
            day =>
            {
                asked.Add(day);
                return new AttendanceRules(LateAfterMinutes: 0);
            },
            cancel: Cancel);
        Assert.Equal([new DateOnly(2026, 3, 3)], asked);
        Assert.Contains(report.Problems, p => p.Sentence.Contains("late is False, should be True", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Others_go_on_tapping_while_it_looks_at_one_moment()
    {
        var engine = await SoundAsync();
        await using var writer = new WriterQueue(engine, new FixedTime(Now));
        using var enough = new CancellationTokenSource();
        var tapped = 0;
        var tapping = Task.Run(
            async () =>
            {
                var device = await writer.RunAsync(TappingChild.AddDevice, Cancel);
                var sequence = 0;
                while (!enough.IsCancellationRequested)
                {
                    var number = ++sequence;
                    Volatile.Write(ref tapped, number);
                    await writer.RunAsync(
                        s =>
                        {
                            var lesson = s.Db.Lessons.Single();
                            var person = new PersonRow { Club = s.Club, Id = s.NewId(), MadeAt = s.Now };
                            s.Db.People.Add(person);
                            s.Db.SaveChanges();
                            s.Db.Marks.Add(TappingChild.MarkOf(s, device, number, lesson.Id, person.Id));
                            s.Db.SaveChanges();
                            FoldMarks.Store(s, lesson, person.Id, new AttendanceRules());
                            s.Note(TrailKind.PersonAdded, person.Id, null, device);
                            return 0;
                        },
                        Cancel);
                }

                return sequence;
            },
            Cancel);
        // A check of a small club is over in an instant: it is asked again until somebody has tapped in the meantime.
        for (var round = 0; round < 5 || (Volatile.Read(ref tapped) < 3 && round < 500); round++) Assert.Empty((await CheckAsync(engine)).Problems);
        await enough.CancelAsync();
        Assert.True(await tapping > 1);
    }

    protected abstract void Damage(Engine engine, string statement);

    private static Task<CheckReport> CheckAsync(Engine engine) => CheckClub.RunAsync(engine, _ => new AttendanceRules(), thorough: true, cancel: Cancel);

    /// <summary>One lesson with a tap, an undo, a correction, an excuse, a fall and its undo; a trail of three lines.</summary>
    private async Task<Engine> SoundAsync()
    {
        var engine = await Host.EmptyAsync();
        await using var writer = new WriterQueue(engine, new FixedTime(Now));
        await writer.RunAsync(
            s =>
            {
                var (lessonId, _) = TappingChild.AddLesson(s);
                var device = TappingChild.AddDevice(s);
                var lesson = s.Db.Lessons.Single(l => l.Id == lessonId);
                var people = Enumerable.Range(0, 5).Select(n => new PersonRow { Club = s.Club, Id = s.NewId(), MadeAt = s.Now }).ToList();
                people[0].Given = Seal.Close("Kim");
                people[0].Family = Seal.Close("O’Neil");
                people[0].Born = Seal.Close(new DateOnly(2017, 2, 28));
                s.Db.People.AddRange(people);
                s.Db.Enrolments.AddRange(people.Take(2).Select((p, n) => new EnrolmentRow
                {
                    Club = s.Club,
                    Id = s.NewId(),
                    PersonId = p.Id,
                    ProgrammeId = lesson.ProgrammeId,
                    From = lesson.Date,
                    Position = n + 1,
                }));
                s.Db.Sizes.Add(new SizeRow { Club = s.Club, Id = s.NewId(), PersonId = people[0].Id, On = lesson.Date, Grams = Seal.Close(24_000), ById = people[4].Id });
                byte[] photo = [1, 2, 3, 4];
                s.Db.Attachments.Add(new AttachmentRow { Club = s.Club, Id = s.NewId(), Hash = SHA256.HashData(photo), Type = "image/png", Content = Seal.Close(photo), MadeAt = s.Now });
                s.Db.SaveChanges();

                MarkRow Mark(int sequence, int person, MarkKind kind, Guid? replaces = null, int code = 0)
                {
                    var mark = TappingChild.MarkOf(s, device, sequence, lesson.Id, people[person].Id, kind);
                    mark.Replaces = replaces;
                    mark.Code = code;
                    s.Db.Marks.Add(mark);
                    return mark;
                }

                Mark(1, 0, MarkKind.Present);
                var slip = Mark(2, 1, MarkKind.Present);
                Mark(3, 1, MarkKind.Cleared, slip.Id);
                var wrong = Mark(4, 2, MarkKind.Absent);
                Mark(5, 2, MarkKind.Corrected, wrong.Id, (int)MarkKind.Left);
                Mark(6, 3, MarkKind.Excused);
                Mark(7, 3, MarkKind.Fall, code: EvidenceCode.OfFall(new FallWay(FallDirection.Back, FallSide.None), 1, clean: true)).ItemId = MarkCode.Falls;
                s.Db.SaveChanges();
                EvidenceStatements.StoreState(s, people[3].Id, MarkCode.Falls);
                FoldMarks.StoreAll(s, lesson, new AttendanceRules());
                s.Note(TrailKind.ClubMade, null, null, null);
                s.Note(TrailKind.CalendarChanged, lesson.Id, people[4].Id, device);
                s.Note(TrailKind.PersonAdded, people[0].Id, people[4].Id, device, "Kim"u8);
                return 0;
            },
            Cancel);
        return engine;
    }
}

public sealed class CheckOnSqlite() : CheckSpecification(new SqliteHost())
{
    [Fact]
    public async Task A_check_leaves_the_file_as_it_is()
    {
        var club = (SqliteEngine)await FilledAsync();
        var copy = club.File + ".copy";
        SqliteCopy.Make(club.File, copy);
        var before = SHA256.HashData(await File.ReadAllBytesAsync(copy, Cancel));
        await CheckClub.RunAsync(new SqliteEngine(copy), _ => new AttendanceRules(), cancel: Cancel);
        Assert.Equal(before, SHA256.HashData(await File.ReadAllBytesAsync(copy, Cancel)));
        Assert.False(File.Exists(copy + "-wal"));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_damaged_page_is_found(bool thorough)
    {
        var club = (SqliteEngine)await FilledAsync();
        var copy = club.File + ".copy";
        SqliteCopy.Make(club.File, copy);
        long page;
        using (var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={copy};Pooling=false"))
        {
            await connection.OpenAsync(Cancel);
            using var command = connection.CreateCommand();
            command.CommandText = "SELECT rootpage FROM sqlite_master WHERE name = 'Marks'";
            page = (long)(await command.ExecuteScalarAsync(Cancel))!;
        }

        var bytes = await File.ReadAllBytesAsync(copy, Cancel);
        bytes.AsSpan((int)(page - 1) * 4096, 4096).Fill(0x5A);
        await File.WriteAllBytesAsync(copy, bytes, Cancel);
        var report = await CheckClub.RunAsync(new SqliteEngine(copy), _ => new AttendanceRules(), thorough, cancel: Cancel);
        Assert.Contains(report.Problems, p => p.Part == CheckPart.Engine);
        Assert.False(report.Sound);
    }

    [Fact]
    public async Task An_index_that_lacks_a_row_is_found_by_a_thorough_check()
    {
        var club = await FilledAsync();
        Damage(club, "PRAGMA writable_schema=ON; UPDATE sqlite_master SET sql = replace(sql, '\"Date\")', '\"Club\")') WHERE name = 'IX_Lessons_Club_Date'");
        ((SqliteEngine)club).Release();
        var report = await CheckClub.RunAsync(club, _ => new AttendanceRules(), thorough: true, cancel: Cancel);
        Assert.Contains(report.Problems, p => p.Part == CheckPart.Engine && p.Sentence.Contains("IX_Lessons_Club_Date", StringComparison.Ordinal));
    }

    [Fact]
    public async Task No_file_is_made_by_a_check()
    {
        using var folder = new TempFolder();
        await Assert.ThrowsAsync<StoreRefusal>(() => CheckClub.RunAsync(new SqliteEngine(folder.File("none")), _ => new AttendanceRules(), cancel: Cancel));
        Assert.Empty(Directory.GetFiles(folder.Path));
    }

    protected override void Damage(Engine engine, string statement)
    {
        using var connection = engine.OpenConnection();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // The test's own statements.
        command.CommandText = "PRAGMA foreign_keys=OFF; DROP TRIGGER marks_are_not_changed; DROP TRIGGER trail_is_not_changed; DROP TRIGGER trail_is_not_deleted; "
            + "DROP INDEX \"IX_Marks_Club_DeviceId_Sequence\"; " + statement;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }
}

public sealed class CheckOnPostgres(PostgresDatabase database) : CheckSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>
{
    /// <summary>As a replica neither triggers nor links hold; and the statement names no column's order of its own.</summary>
    protected override void Damage(Engine engine, string statement)
    {
        using var connection = engine.OpenConnection();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // The test's own statements.
        command.CommandText = "SET session_replication_role = replica; DROP INDEX \"IX_Marks_Club_DeviceId_Sequence\"; " + statement + "; RESET session_replication_role";
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }
}
