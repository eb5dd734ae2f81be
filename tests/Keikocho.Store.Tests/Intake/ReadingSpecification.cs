using System.Text;
using Keikocho.Core.Evening;
using Keikocho.Core.Intake;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Intake;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Promotion;
using Keikocho.Testing;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Tests.Intake;

/// <summary>Readings from the first look to the undo, the same on both engines.</summary>
public abstract partial class ReadingSpecification
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    protected abstract Task<Engine> FreshAsync();

    [Fact]
    [Statement(98)]
    public async Task A_messy_roster_saves_nothing_before_each_doubt_is_settled_and_then_everything()
    {
        await using var club = await ReadingClub.MakeAsync(await FreshAsync());
        var id = await club.OpenAsync("messy-roster.xlsx");
        Assert.Contains(club.View(id).Open, doubt => doubt.Kind == DoubtKind.DateOrder);
        var before = club.Everything();
        Assert.IsType<SaveOutcome.NotSettled>(await club.Readings.SaveAsync(id, null, club.Today, ReadingClub.Rules, club.Head, club.Device, Cancel));
        Assert.Equal(before, club.Everything());

        var view = await club.SettleAsync(id);
        var summary = await club.SaveAsync(id);
        var count = view.Roster!.New;
        Assert.Equal(61, count);
        Assert.Equal(count, summary.Count("new"));
        var enrolments = club.Ask(db => db.Enrolments.AsNoTracking().OrderBy(e => e.Position).ToList());
        Assert.Equal(Enumerable.Range(1, count), enrolments.Select(e => e.Position));
        var names = club.Ask(db => db.People.AsNoTracking().ToDictionary(p => p.Id, p => $"{Seal.Open(p.Given)} {Seal.Open(p.Family)}".Trim()));
        Assert.Equal(view.Roster.Lines.Where(line => line.Standing == LineStanding.New).Select(line => line.Child.FullName), enrolments.Select(e => names[e.PersonId]));
        // One child wears a "stripy" belt, which was left out.
        Assert.Equal(count - 1, club.Ask(db => db.Awards.Count(a => a.Source == AwardSource.Imported)));
        Assert.Equal(view.Roster.Lines.Count(line => line.Child.PhotoConsent is not null), club.Ask(db => db.Consents.Count()));
        Assert.True(club.Ask(db => db.Contacts.Count()) >= 60);
        Assert.Contains(enrolments, e => e.From == new DateOnly(2024, 9, 1) && e.CountsFrom == e.From);
        // The file's own words, lowest first, and the cloth of those that can be drawn.
        Assert.Equal(
            [("white", "white"), ("white-yellow", null), ("yellow", "yellow"), ("yellow-orange", null), ("orange", "orange")],
            club.Ask(db => db.Ranks.OrderBy(r => r.Position).AsEnumerable().Select(r => (r.Name.ToLowerInvariant(), r.Cloth)).ToList()));
        Assert.IsType<SaveOutcome.NotOpen>(await club.Readings.SaveAsync(id, null, club.Today, ReadingClub.Rules, club.Head, club.Device, Cancel));
    }

    [Theory]
    [InlineData("messy-roster.xlsx", false)]
    [InlineData("messy-roster.xlsx", true)]
    [InlineData("messy-roster-comma-utf8.csv", false)]
    [Statement(99)]
    public async Task The_same_roster_again_doubles_nobody_and_changes_nothing(string file, bool afresh)
    {
        await using var club = await ReadingClub.MakeAsync(await FreshAsync());
        var count = (await club.ReadAsync(file)).Count("new");
        var before = club.Everything();
        // With another byte it is another file to the hash, and no answer is remembered.
        var bytes = await File.ReadAllBytesAsync(IntakeFiles.PathOf(file), Cancel);
        var id = await club.OpenAsync(file, bytes);
        if (!afresh) Assert.True(club.View(id).IsSettled, string.Join('\n', club.View(id).Open.Select(d => d.Sentence)));
        else await club.Readings.AnswerAsync(id, club.View(id).Doubts.ToDictionary(d => d.Key, _ => ""), null, null, Cancel);
        var view = await club.SettleAsync(id, doubt => doubt.Key == "rank:stripy" ? "leave-out" : null);
        Assert.DoesNotContain(view.Roster!.Lines.SelectMany(line => line.Differences), difference => difference.Take == true);
        var summary = await club.SaveAsync(id);
        Assert.Equal((0, 0), (summary.Count("new"), summary.Count("changed")));
        Assert.Equal(count, summary.Count("unchanged") + summary.Count("left"));
        Assert.Equal(before, club.Everything());
        await club.Readings.UndoAsync(id, ReadingClub.Rules, club.Head, club.Device, Cancel);
        Assert.Equal(before, club.Everything());
    }

    [Fact]
    public async Task Undo_of_a_roster_leaves_what_was_there_before()
    {
        await using var club = await ReadingClub.MakeAsync(await FreshAsync());
        var before = club.Everything();
        var id = await club.OpenAsync("messy-roster.xlsx");
        await club.SettleAsync(id);
        await club.SaveAsync(id);
        var undone = await club.Readings.UndoAsync(id, ReadingClub.Rules, club.Head, club.Device, Cancel);
        Assert.Empty(undone!.Kept);
        Assert.Equal(before, club.Everything());
        Assert.Null(await club.Readings.UndoAsync(id, ReadingClub.Rules, club.Head, club.Device, Cancel));
    }

    [Fact]
    public async Task Undo_keeps_a_child_of_whom_something_newer_speaks_and_says_so()
    {
        await using var club = await ReadingClub.MakeAsync(await FreshAsync());
        var id = await club.OpenAsync("messy-roster.xlsx");
        await club.SettleAsync(id);
        await club.SaveAsync(id);
        var (changed, noted) = club.Ask(db => (db.Enrolments.Single(e => e.Position == 3).PersonId, db.Enrolments.Single(e => e.Position == 7).PersonId));
        await new PeopleStore(club.Writer).ChangeDetailsAsync(changed, new PersonDetails("Zo", "Aldwater", null, null), club.Head, club.Device, Cancel);
        await club.Writer.RunAsync(session => session.Db.Notes.Add(new NoteRow { Club = session.Club, Id = session.NewId(), PersonId = noted, Text = Seal.Close("late tonight"), Until = club.Today, ById = club.Head, MadeAt = session.Now }).Entity is not null && session.Db.SaveChanges() > 0, Cancel);
        var undone = await club.Readings.UndoAsync(id, ReadingClub.Rules, club.Head, club.Device, Cancel);
        Assert.Equal(new[] { changed, noted }.Order(), undone!.Kept.Select(k => k.PersonId).Order());
        Assert.All(undone.Kept, k => Assert.NotEmpty(k.Why));
        Assert.Equal(3, club.Ask(db => db.People.Count()));
        Assert.Equal(2, club.Ask(db => db.Awards.Count()));
        Assert.Equal(2, club.Ask(db => db.Enrolments.Count()));
    }

    [Fact]
    public async Task Accepted_differences_are_taken_and_undone_where_nobody_changed_them_since()
    {
        await using var club = await ReadingClub.MakeAsync(await FreshAsync());
        const string first = "First name,Surname,Birth date,Belt,Mum's mobile,Photo,Licence no,Licence expires\nAda,Brook,2016-05-04,white,07700 900001,yes,L1,2026-08-31\nBo,Cole,2015-05-04,yellow,07700 900002,yes,L2,2026-08-31\n";
        const string second = "First name,Surname,Birth date,Belt,Mum's mobile,Photo,Licence no,Licence expires\nAda,Brook,2016-05-04,yellow,07700 900077,no,L1,2027-08-31\nBo,Cole,2015-05-04,yellow,07700 900002,yes,L2,2027-08-31\n";
        var one = await club.OpenAsync("one.csv", Encoding.UTF8.GetBytes(first));
        await club.SettleAsync(one);
        await club.SaveAsync(one);
        var before = club.Everything();
        var two = await club.OpenAsync("two.csv", Encoding.UTF8.GetBytes(second));
        var view = await club.SettleAsync(two, doubt => doubt.Kind == DoubtKind.Differs ? "take" : null);
        Assert.Equal(["rank", "contacts", "photo consent", "registration expiry"], view.Roster!.Lines[0].Differences.Select(d => d.Field));
        var summary = await club.SaveAsync(two);
        Assert.Equal((0, 2), (summary.Count("new"), summary.Count("changed")));
        var again = await club.OpenAsync("three.csv", Encoding.UTF8.GetBytes(second));
        Assert.Equal(2, club.View(again).Roster!.Unchanged);

        // Bo's expiry is changed by hand: it stays, everything else goes back.
        await club.Writer.RunAsync(session =>
        {
            var row = session.Db.Registrations.AsEnumerable().Single(r => Seal.Open(r.Number) == "L2");
            row.Expires = new DateOnly(2028, 8, 31);
            return session.Db.SaveChanges();
        }, Cancel);
        var undone = await club.Readings.UndoAsync(two, ReadingClub.Rules, club.Head, club.Device, Cancel);
        Assert.Contains(undone!.Undone, sentence => sentence == "1 value was changed since and stays as it is.");
        Assert.Equal(before.Replace("\"Expires\":\"2026-08-31\"", "", StringComparison.Ordinal).Length, club.Everything().Replace("\"Expires\":\"2026-08-31\"", "", StringComparison.Ordinal).Replace("\"Expires\":\"2028-08-31\"", "", StringComparison.Ordinal).Length);
        Assert.Equal(new DateOnly(2028, 8, 31), club.Ask(db => db.Registrations.AsEnumerable().Single(r => Seal.Open(r.Number) == "L2").Expires));
    }

    [Theory]
    [InlineData("messy-register.xlsx")]
    [InlineData("row-register.xlsx")]
    [Statement(99)]
    public async Task A_register_is_saved_as_marks_of_the_reading_read_again_it_changes_nothing_and_undo_takes_it_back(string file)
    {
        await using var club = await ReadingClub.MakeAsync(await FreshAsync(), DayOfWeek.Tuesday, DayOfWeek.Thursday);
        await club.ReadAsync("messy-roster.xlsx");
        var before = club.Everything();
        var id = await club.OpenAsync(file);
        Assert.Equal(ReadingKind.Register, club.Ask(db => db.Readings.Single(r => r.Id == id).Kind));
        var view = await club.SettleAsync(id);
        var summary = await club.SaveAsync(id);
        var marks = club.Ask(db => db.Marks.AsNoTracking().Where(m => m.DeviceId == id).OrderBy(m => m.Sequence).ToList());
        Assert.Equal(view.Register!.Marks.Count, marks.Count);
        Assert.Equal(marks.Count, summary.Count("marks"));
        Assert.Equal(DeviceKind.Reading, club.Ask(db => db.Devices.Single(d => d.Id == id).Kind));
        Assert.Equal(view.Register.Marks.Count(m => m.Says is { Word: RegisterWord.Late, Arrived: null }), marks.Count(m => (m.Code & MarkCode.LateWithoutTime) != 0));
        club.StatesAreWhatTheMarksSay();
        // A late without a time is a lesson and no evening with falls.
        Assert.All(marks.Where(m => m.Code == MarkCode.LateWithoutTime), m => Assert.True(club.Ask(db => db.Attendances.Single(a => a.LessonId == m.LessonId && a.PersonId == m.PersonId)) is { Counts: true, Ukemi: false }));
        Assert.Equal(view.Register.Days.Any(d => d.Standing == DayStanding.Closed) ? 1 : 0, club.Ask(db => db.Closures.Count(c => c.Name == "closed (from the register)")));

        var saved = club.Everything();
        var again = await club.OpenAsync(file);
        Assert.True(club.View(again).IsSettled, string.Join('\n', club.View(again).Open.Select(d => d.Sentence)));
        var second = await club.SaveAsync(again);
        Assert.Equal((0, marks.Count, 0), (second.Count("marks"), second.Count("same"), second.Count("new")));
        Assert.Equal(saved, club.Everything());
        await club.Readings.UndoAsync(again, ReadingClub.Rules, club.Head, club.Device, Cancel);
        await club.Readings.UndoAsync(id, ReadingClub.Rules, club.Head, club.Device, Cancel);
        club.StatesAreWhatTheMarksSay();
        Assert.Equal(before, club.Everything());
    }

    [Fact]
    public async Task Marks_at_lessons_that_were_there_are_voided_not_deleted_and_a_corrected_tap_speaks_again()
    {
        await using var club = await ReadingClub.MakeAsync(await FreshAsync(), DayOfWeek.Tuesday);
        await new CalendarStore(club.Writer).AddTermAsync("Autumn", new(2026, 9, 1), new(2026, 12, 18), club.Head, club.Device, Cancel);
        var roster = await club.OpenAsync("r.csv", Encoding.UTF8.GetBytes("First name,Surname,Birth date\nAda,Brook,2016-05-04\nBo,Cole,2015-05-04\n"));
        await club.SettleAsync(roster);
        await club.SaveAsync(roster);
        var lesson = club.Ask(db => db.Lessons.Single(l => l.Date == new DateOnly(2026, 9, 8)));
        var ada = club.Ask(db => db.People.AsEnumerable().Single(p => Seal.Open(p.Given) == "Ada").Id);
        await new MarksStore(club.Writer).TapAsync(new Tap(Guid.CreateVersion7(DateTimeOffset.UnixEpoch), club.Device, null, lesson.Id, ada, club.Head, DateTimeOffset.UnixEpoch, MarkKind.Absent, null), club.Today, ReadingClub.Rules, Cancel);
        var before = club.Everything();
        var id = await club.OpenAsync("g.csv", Encoding.UTF8.GetBytes("Name,2026-09-08,2026-09-15\nAda Brook,P,P\nBo Cole,P,L\n"));
        await club.SettleAsync(id, doubt => doubt.Kind == DoubtKind.Differs ? "take" : null);
        var summary = await club.SaveAsync(id);
        Assert.Equal((3, 1, 0), (summary.Count("marks"), summary.Count("taken"), summary.Count("lessons")));
        Assert.Equal(AttendanceWord.Present, club.Ask(db => db.Attendances.Single(a => a.LessonId == lesson.Id && a.PersonId == ada).Word));
        // Ada's first class was today: the register shows lessons before it.
        Assert.Equal(2, summary.Count("moved"));
        var undone = await club.Readings.UndoAsync(id, ReadingClub.Rules, club.Head, club.Device, Cancel);
        club.StatesAreWhatTheMarksSay();
        Assert.Equal(before, club.Everything());
        Assert.Equal(10, club.Ask(db => db.Marks.Count(m => m.DeviceId == id)));
        Assert.Contains("5 marks were voided and stay to be seen.", undone!.Undone);
    }

    [Fact]
    public async Task Hours_that_the_programme_does_not_have_are_asked_for_once()
    {
        await using var club = await ReadingClub.MakeAsync(await FreshAsync(), DayOfWeek.Tuesday);
        var id = await club.OpenAsync("g.csv", Encoding.UTF8.GetBytes("Name,2026-09-08,2026-09-10,2026-09-12\nAda Brook,P,P,P\n"));
        await club.SettleAsync(id, doubt => doubt.Kind == DoubtKind.HoursMissing ? "=9.30-11:00" : null);
        Assert.Single(club.View(id).Doubts, doubt => doubt.Kind == DoubtKind.HoursMissing);
        await club.SaveAsync(id);
        Assert.Equal([new(17, 30), new(9, 30), new TimeOnly(9, 30)], club.Ask(db => db.Lessons.OrderBy(l => l.Date).Select(l => l.Start).ToList()));
        Assert.Equal([new DateOnly(2026, 9, 8)], club.Ask(db => db.Enrolments.Select(e => e.From).ToList()));
    }

    [Fact]
    public async Task What_somebody_else_changed_since_it_was_looked_at_is_shown_again_before_it_is_saved()
    {
        await using var club = await ReadingClub.MakeAsync(await FreshAsync());
        var bytes = Encoding.UTF8.GetBytes("First name,Surname,Birth date\nAda,Brook,2016-05-04\n");
        var (one, two) = (await club.OpenAsync("a.csv", bytes), await club.OpenAsync("a.csv", bytes));
        var looked = club.View(one).Fingerprint();
        await club.SaveAsync(two);
        Assert.IsType<SaveOutcome.Stale>(await club.Readings.SaveAsync(one, looked, club.Today, ReadingClub.Rules, club.Head, club.Device, Cancel));
        Assert.Equal(2, club.Ask(db => db.People.Count()));
    }

    [Fact]
    public async Task An_erased_child_never_comes_back()
    {
        await using var club = await ReadingClub.MakeAsync(await FreshAsync(), DayOfWeek.Tuesday);
        await club.Writer.RunAsync(session =>
        {
            var salt = session.Db.Clubs.Single().Salt;
            foreach (var born in new DateOnly?[] { new(2016, 5, 4), null })
                session.Db.Erased.Add(new ErasedRow { Club = session.Club, Digest = System.Security.Cryptography.HMACSHA256.HashData(salt, Encoding.UTF8.GetBytes(ErasedPersons.Identity("Ada Brook", born))), ErasedAt = session.Now });
            return session.Db.SaveChanges();
        }, Cancel);
        var roster = await club.OpenAsync("r.csv", Encoding.UTF8.GetBytes("First name,Surname,Birth date\nBROOK,Ada,2016-05-04\nBo,Cole,2015-05-04\n"));
        await club.SettleAsync(roster);
        Assert.Equal((1, 1), ((await club.SaveAsync(roster)) is var summary ? summary.Count("new") : 0, summary.Count("setAside")));
        var register = await club.OpenAsync("g.csv", Encoding.UTF8.GetBytes("Name,2026-09-08,2026-09-15\nAda Brook,P,P\nBo Cole,P,L\n"));
        await club.SettleAsync(register);
        await club.SaveAsync(register);
        Assert.DoesNotContain(club.Ask(db => db.People.AsEnumerable().Select(p => Seal.Open(p.Given)).ToList()), name => name is "Ada" or "BROOK");
    }

    [Fact]
    public async Task A_name_that_looks_like_a_formula_stays_text_and_is_made_safe_for_an_export()
    {
        await using var club = await ReadingClub.MakeAsync(await FreshAsync());
        var id = await club.OpenAsync("f.csv", Encoding.UTF8.GetBytes("First name,Surname,Birth date\n\"=HYPERLINK(\"\"x\"\",\"\"y\"\")\",Cole,2015-05-04\n@SUM(A1),Dale,2015-06-04\n"));
        await club.SettleAsync(id);
        await club.SaveAsync(id);
        var names = club.Ask(db => db.People.AsEnumerable().Select(p => Seal.Open(p.Given)!).Order(StringComparer.Ordinal).ToList());
        Assert.Equal(["=HYPERLINK(\"x\",\"y\")", "@SUM(A1)", "Maren"], names);
        Assert.Equal(["'=HYPERLINK(\"x\",\"y\")", "'@SUM(A1)", "Maren"], names.Select(SpreadsheetText.Safe));
    }

    [Fact]
    public async Task Rank_words_without_a_colour_are_placed_by_the_answers()
    {
        await using var club = await ReadingClub.MakeAsync(await FreshAsync());
        var id = await club.OpenAsync("r.csv", Encoding.UTF8.GetBytes("First name,Surname,Birth date,Belt\nAda,Brook,2016-05-04,Bronze\nBo,Cole,2015-05-04,yellow belt\nCy,Dale,2015-05-05,\"yellow, 2 red tips\"\nDi,Ek,2015-05-06,white\n"));
        await club.SettleAsync(id, doubt => doubt.Kind == DoubtKind.RankPlace ? doubt.Offers.Single(o => o.Words == "Next above white").Code : null);
        await club.SaveAsync(id);
        Assert.Equal([("white", "white", 0), ("Bronze", null, 0), ("yellow belt", "yellow", 0), ("yellow, 2 red tips", "yellow", 2)],
            club.Ask(db => db.Ranks.OrderBy(r => r.Position).AsEnumerable().Select(r => (r.Name, r.Cloth, r.Tips)).ToList()));
    }
}
