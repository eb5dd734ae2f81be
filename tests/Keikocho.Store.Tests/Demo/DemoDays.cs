using System.Security.Cryptography;
using System.Text.Json;
using Keikocho.Store.Demo;

namespace Keikocho.Store.Tests.Demo;

/// <summary>The demo on any day, and twice the same.</summary>
public sealed class DemoDays
{
    private static readonly Lazy<DemoRows> Large = new(() => DemoClub.Make(new DateOnly(2026, 11, 25), 1, DemoSize.Large));

    private static string HashOf(DemoRows rows)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var part in typeof(DemoRows).GetProperties().OrderBy(p => p.Name, StringComparer.Ordinal))
            hash.AppendData(JsonSerializer.SerializeToUtf8Bytes(part.GetValue(rows), part.PropertyType));
        return Convert.ToHexString(hash.GetHashAndReset());
    }

    [Fact]
    public void The_same_day_and_seed_give_the_same_rows_and_others_do_not()
    {
        var day = new DateOnly(2026, 11, 25);
        var once = HashOf(DemoClub.Make(day, 7, DemoSize.Small));
        Assert.Equal(once, HashOf(DemoClub.Make(day, 7, DemoSize.Small)));
        Assert.NotEqual(once, HashOf(DemoClub.Make(day, 8, DemoSize.Small)));
        Assert.NotEqual(once, HashOf(DemoClub.Make(day.AddDays(1), 7, DemoSize.Small)));
    }

    [Fact]
    public void Walking_the_registers_twice_gives_the_same_marks()
    {
        var rows = DemoClub.Make(new DateOnly(2026, 11, 25), 7, DemoSize.Small);
        Assert.Equal(JsonSerializer.Serialize(rows.Registers), JsonSerializer.Serialize(rows.Registers));
    }

    [Fact]
    public void Every_one_of_400_days_has_a_term_a_lesson_tonight_and_lessons_left()
    {
        // From before a leap day to after the next New Year.
        var first = new DateOnly(2027, 12, 20);
        for (var i = 0; i < 400; i++)
        {
            var today = first.AddDays(i);
            var rows = DemoClub.Make(today, i, DemoSize.Small);
            Assert.True(rows.Terms[^1].From <= today && today <= rows.Terms[^1].To, $"{today:yyyy-MM-dd}");
            Assert.Equal(5, rows.Terms.Select(t => t.Name).Distinct().Count());
            Assert.Contains(rows.Lessons, l => l.ProgrammeId == rows.Programmes[0].Id && l.Date == today && l.ClosureId is null);
            var test = rows.PromotionTests.Last(t => t.ProgrammeId == rows.Programmes[0].Id);
            Assert.True(rows.Lessons.Count(l => l.ProgrammeId == rows.Programmes[0].Id && l.Date >= today && l.Date < test.Date && l.ClosureId is null) >= 2);
            Assert.All(rows.People, p => Assert.True(p.MadeAt.UtcDateTime < today.ToDateTime(TimeOnly.MinValue), $"{today:yyyy-MM-dd}"));
            Assert.True(rows.Registers.Sum(r => r.Marks.Count) > 3000);
        }
    }

    [Fact]
    public void The_large_club_has_2000_children_in_45_programmes_of_40_and_one_of_200_and_about_two_million_marks()
    {
        var rows = Large.Value;
        var today = rows.Today;
        Assert.Equal(46, rows.Programmes.Count);
        var now = rows.Enrolments.Where(e => e.To is null).ToList();
        Assert.Equal(2000, now.Select(e => e.PersonId).Distinct().Count());
        Assert.All(now.GroupBy(e => e.ProgrammeId), g => Assert.Equal(g.Key == rows.Programmes[^1].Id ? 200 : 40, g.Count()));
        var born = rows.People.ToDictionary(p => p.Id, p => Keikocho.Store.Kernel.Seal.Open(p.Born)!.Value);
        Assert.All(now, e => Assert.InRange(Made.AgeOn(born[e.PersonId], today), 6, 13));
        Assert.InRange(rows.Terms[0].From, today.AddYears(-10), today.AddYears(-9).AddMonths(-8));
        var weeks = rows.Lessons.Where(l => l.Date > today.AddYears(-1) && l.Date <= today && l.ClosureId is null && l.ProgrammeId == rows.Programmes[0].Id).Count() / 2.0;
        Assert.InRange(weeks, 36, 44);
        Assert.InRange(rows.Registers.Sum(r => (long)r.Marks.Count), 1_800_000, 2_200_000);
    }

    [Fact]
    public void Every_place_of_the_large_club_is_taken_on_every_lesson()
    {
        var rows = Large.Value;
        var one = rows.Programmes[17].Id;
        var enrolments = rows.Enrolments.Where(e => e.ProgrammeId == one).ToList();
        foreach (var lesson in rows.Lessons.Where(l => l.ProgrammeId == one && l.Date < rows.Today))
            Assert.InRange(enrolments.Count(e => e.From <= lesson.Date && (e.To is null || e.To >= lesson.Date)), 38, 40);
    }

    [Fact]
    public void A_day_far_away_or_an_unknown_size_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => DemoClub.Make(new DateOnly(1800, 1, 1), 1, DemoSize.Small));
        Assert.Throws<ArgumentOutOfRangeException>(() => DemoClub.Make(new DateOnly(2026, 1, 1), 1, (DemoSize)9));
    }
}
