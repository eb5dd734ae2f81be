using System.Text;
using Keikocho.Core.Evening;
using Keikocho.Core.Intake;
using Keikocho.Store.Intake;
using Keikocho.Testing;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Tests.Intake;

/// <content>Sign-off grids.</content>
public abstract partial class ReadingSpecification
{
    private static readonly DateOnly Tenth = new(2026, 11, 10);

    [Theory]
    [InlineData("messy-signoffs.xlsx", SignOffLayout.ChildrenDown)]
    [InlineData("messy-signoffs-turned-semicolon-utf8.csv", SignOffLayout.ItemsDown)]
    [Statement(98), Statement(99), Statement(56)]
    public async Task A_messy_sign_off_grid_is_asked_about_saved_read_again_and_taken_back(string file, SignOffLayout layout)
    {
        await using var club = await ReadingClub.MakeAsync(await FreshAsync(), DayOfWeek.Tuesday, DayOfWeek.Thursday);
        await club.PublishWillowAsync();
        await club.ReadAsync("messy-roster.xlsx", doubt => doubt.Kind == DoubtKind.RankUnknown ? "leave-out" : null);
        await club.ReadAsync("messy-register.xlsx");
        var before = club.Everything();
        var id = await club.OpenAsync(file);
        var open = club.View(id);
        Assert.Equal((ReadingKind.SignOffs, layout), (open.Kind, open.SignOffs!.Reading.Layout));
        Assert.IsType<SaveOutcome.NotSettled>(await club.Readings.SaveAsync(id, null, club.Today, ReadingClub.Rules, club.Head, club.Device, Cancel));
        var asked = new HashSet<string>(StringComparer.Ordinal);
        var view = await club.SettleAsync(id, doubt =>
        {
            asked.Add(doubt.Key);
            return doubt.Key switch { "sign:mh" => "good", "tick:date" => "last", "order" => "day-first", _ => null };
        });
        var at = layout == SignOffLayout.ChildrenDown;
        Assert.Superset(at
            ? new HashSet<string> { "order", "item:8", "item:10", "item:12", "year", "worth", "sign:mh", "sign:x", "tick:date", "day:2026-11-15", "who:9", "who:12" }
            : ["item:7", "item:9", "item:11", "year", "worth", "sign:mh", "sign:x", "tick:date", "day:2026-11-15", "who:6", "who:9"], asked);
        // The file's own text shows the day first once the date cells are text.
        Assert.Equal(at, asked.Contains("order"));
        Assert.Equal(before, club.Everything());

        var summary = await club.SaveAsync(id);
        var grid = view.SignOffs!.Reading;
        Assert.Equal(grid.Marks.Count, summary.Count("sightings"));
        Assert.Contains("1 heading of falls was not read: falls are seen again on the mat.", summary.Sentences);
        Assert.Equal(0, club.Ask(db => db.FallStates.Count()));
        var marks = club.Ask(db => db.Marks.AsNoTracking().Where(m => m.DeviceId == id).ToList());
        Assert.Equal(grid.Marks.Count, marks.Count);
        Assert.All(marks, m => Assert.Null(m.ById));
        Assert.Equal("Good", club.Seen("Piet", "Ferriman", "uki-goshi", new(2026, 9, 15)));
        Assert.Equal("Good", club.Seen("Piet", "Ferriman", "o-goshi", new(2026, 11, 3)));
        Assert.Equal("Good", club.Seen("Piet", "Ferriman", "yoko-shiho-gatame", new(2026, 10, 6)));
        Assert.Equal("Good", club.Seen("Queenie", "Reedham", "yoko-shiho-gatame", new(2026, 11, 12)));
        Assert.Equal("NotYet", club.Seen("Fabian", "Millrace", "de-ashi-barai", new(2026, 11, 19)));
        Assert.Equal("Prompted", club.Seen("Jarek", "Fennick", "tai-otoshi-moving", new(2026, 11, 19)));
        club.StatesAreWhatTheMarksSay();
        club.SeenIsWhatTheMarksSay();

        // The same file weeks later, and the same again as another file: nothing is doubled.
        var seen = club.SeenStates();
        var again = await club.OpenAsync(file);
        await club.SettleAsync(again);
        var second = await club.SaveAsync(again);
        Assert.Equal((0, marks.Count), (second.Count("sightings"), second.Count("same")));
        Assert.Equal(seen, club.SeenStates());
        await club.Readings.UndoAsync(again, ReadingClub.Rules, club.Head, club.Device, Cancel);
        Assert.Equal(seen, club.SeenStates());

        var undone = await club.Readings.UndoAsync(id, ReadingClub.Rules, club.Head, club.Device, Cancel);
        Assert.Contains($"{marks.Count} marks were voided and stay to be seen.", undone!.Undone);
        Assert.Equal("", club.SeenStates());
        Assert.Equal(before, club.Everything());
        club.SeenIsWhatTheMarksSay();
    }

    [Fact]
    public async Task A_sighting_that_differs_is_corrected_with_trace_and_speaks_again_after_the_undo()
    {
        await using var club = await SmallAsync();
        await club.SeeAsync("Ada", "uki-goshi", Tenth, SeenWord.NotYet, club.Head);
        await club.SeeAsync("Ada", "hiza-guruma", Tenth, SeenWord.Good, club.Head);
        var before = club.SeenStates();
        var id = await club.OpenAsync("s.csv", Encoding.UTF8.GetBytes("Name,Uki goshi,Hiza guruma,Mate\nAda Brook,2026-11-10,2026-11-10,2026-11-10\n"));
        await club.SettleAsync(id, doubt => doubt.Kind == DoubtKind.Differs ? "take" : doubt.Key == "worth" ? "settled" : null);
        var summary = await club.SaveAsync(id);
        Assert.Equal((1, 1, 2, 0), (summary.Count("sightings"), summary.Count("settled"), summary.Count("taken"), summary.Count("same")));
        Assert.Equal("Good settled", club.Seen("Ada", "Brook", "uki-goshi", Tenth));
        Assert.Equal("Good settled", club.Seen("Ada", "Brook", "hiza-guruma", Tenth));
        Assert.Equal("Good settled", club.Seen("Ada", "Brook", "mate", Tenth));
        Assert.Equal(2, club.Ask(db => db.Marks.Count(m => m.DeviceId == id && m.Kind == MarkKind.Corrected)));
        Assert.Equal(1, club.Ask(db => db.Marks.Count(m => m.DeviceId == id && m.Kind == MarkKind.Words)));
        var again = await club.OpenAsync("s.csv", Encoding.UTF8.GetBytes("Name,Uki goshi,Hiza guruma,Mate\nAda Brook,2026-11-10,2026-11-10,2026-11-10\n"));
        Assert.True(club.View(again).IsSettled);
        Assert.Equal(3, club.View(again).SignOffs!.Reading.Count(MarkStanding.Same));
        await club.Readings.UndoAsync(id, ReadingClub.Rules, club.Head, club.Device, Cancel);
        Assert.Equal(before, club.SeenStates());
        club.SeenIsWhatTheMarksSay();
    }

    [Fact]
    public async Task What_a_leader_suggested_waits_no_longer_once_a_grid_that_an_instructor_saves_says_it()
    {
        await using var club = await SmallAsync();
        await club.SeeAsync("Ada", "uki-goshi", Tenth, SeenWord.Good, club.Person("Bo"));
        Assert.Equal("Good suggested", club.Seen("Ada", "Brook", "uki-goshi", Tenth));
        var id = await club.OpenAsync("s.csv", Encoding.UTF8.GetBytes("Name,Uki goshi,Mate\nAda Brook,2026-11-10,\n"));
        await club.SettleAsync(id);
        Assert.Equal(1, (await club.SaveAsync(id)).Count("sightings"));
        Assert.Equal("Good", club.Seen("Ada", "Brook", "uki-goshi", Tenth));
        await club.Readings.UndoAsync(id, ReadingClub.Rules, club.Head, club.Device, Cancel);
        Assert.Equal("Good suggested", club.Seen("Ada", "Brook", "uki-goshi", Tenth));
    }

    [Fact]
    public async Task A_grid_makes_no_child_and_without_a_syllabus_it_says_so()
    {
        await using var club = await SmallAsync();
        var id = await club.OpenAsync("s.csv", Encoding.UTF8.GetBytes("Name,Uki goshi,Mate\nAda Brook,2026-11-10,\nNell Visitor,2026-11-10,2026-11-10\n"));
        await club.SettleAsync(id);
        var summary = await club.SaveAsync(id);
        Assert.Equal((1, 1), (summary.Count("sightings"), summary.Count("setAside")));
        Assert.Equal(3, club.Ask(db => db.People.Count()));

        await using var bare = await ReadingClub.MakeAsync(await FreshAsync());
        var none = await bare.OpenAsync("s.csv", Encoding.UTF8.GetBytes("Name,Uki goshi,Mate\nAda Brook,2026-11-10,\n"), ReadingKind.SignOffs);
        Assert.StartsWith("The club has no syllabus yet", Assert.Single(bare.View(none).Open).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sightings_at_a_lesson_that_an_earlier_register_brought_keep_that_lesson_when_it_is_taken_back()
    {
        await using var club = await SmallAsync(lessons: false);
        var register = await club.OpenAsync("g.csv", Encoding.UTF8.GetBytes("Name,2026-11-10,2026-11-17\nAda Brook,P,P\n"));
        await club.SettleAsync(register);
        await club.SaveAsync(register);
        var id = await club.OpenAsync("s.csv", Encoding.UTF8.GetBytes("Name,Uki goshi,Mate\nAda Brook,2026-11-10,\n"));
        await club.SettleAsync(id);
        await club.SaveAsync(id);
        var undone = await club.Readings.UndoAsync(register, ReadingClub.Rules, club.Head, club.Device, Cancel);
        Assert.Contains(undone!.Undone, sentence => sentence.StartsWith("1 lesson that it had put into the calendar stays", StringComparison.Ordinal));
        Assert.Equal("Good", club.Seen("Ada", "Brook", "uki-goshi", Tenth));
        club.SeenIsWhatTheMarksSay();
    }

    private async Task<ReadingClub> SmallAsync(bool lessons = true)
    {
        var club = await ReadingClub.MakeAsync(await FreshAsync(), DayOfWeek.Tuesday);
        await club.PublishWillowAsync();
        if (lessons) await new Keikocho.Store.Calendar.CalendarStore(club.Writer).AddTermAsync("Autumn", new(2026, 9, 1), new(2026, 12, 18), club.Head, club.Device, Cancel);
        var roster = await club.OpenAsync("r.csv", Encoding.UTF8.GetBytes("First name,Surname,Birth date\nAda,Brook,2016-05-04\nBo,Cole,2010-05-04\n"));
        await club.SettleAsync(roster);
        await club.SaveAsync(roster);
        return club;
    }
}
