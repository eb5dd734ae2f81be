using System.Text.Json;
using Keikocho.App.Pairs;
using Keikocho.App.Tests.Hall;
using Keikocho.Core.Evening;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Testing;
using Microsoft.Extensions.DependencyInjection;

namespace Keikocho.App.Tests.Pairs;

/// <summary>What a tablet gets of pairs.</summary>
public sealed class PairsOnTheMatTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    [Statement(36), Statement(88)]
    public async Task A_tablet_gets_names_and_yes_and_no_and_nothing_is_reckoned_again_while_nothing_changes()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        var day = new DateOnly(2026, 11, 24);
        List<Guid> children;
        Guid lesson, by, device;
        using (var db = hall.House.Engine.OpenDb())
        {
            var row = db.Lessons.Where(l => l.Date == day).OrderBy(l => l.Start).First();
            lesson = row.Id;
            children = [.. db.Enrolments.Where(e => e.ProgrammeId == row.ProgrammeId && e.To == null).OrderBy(e => e.Position).Select(e => e.PersonId).Take(12)];
            by = db.Duties.Select(d => d.PersonId).First();
            device = db.Devices.Select(d => d.Id).First();
        }

        await hall.House.Lock.MakeAsync("four plain words here", by, device, Cancel);
        using (var reading = hall.House.Engine.OpenReading())
            await hall.House.Sizes.EnterAsync([.. children.Select((c, i) => new NewSize(c, day.AddDays(-10), 27_351 + 1_003 * ((7 * i) % 12)))], hall.House.Lock.Now(reading).Key!, by, device, Cancel);
        Task Mark(Guid child, MarkKind kind) =>
            hall.House.Marks.TapAsync(new Tap(Guid.CreateVersion7(), device, null, lesson, child, by, hall.Time.GetUtcNow(), kind, new TimeOnly(17, 30)), day, new AttendanceRules(), Cancel);
        foreach (var child in children) await Mark(child, MarkKind.Present);

        using var tablet = await hall.TabletOfAsync(DutyKind.JuniorLeader);
        var inHand = hall.App.App.Services.GetRequiredService<PairsInHand>();
        var text = await tablet.GetStringAsync("/mat/evening", Cancel);
        using var pack = JsonDocument.Parse(text);
        var pairs = pack.RootElement.GetProperty("lessons").EnumerateArray().SelectMany(l => l.GetProperty("pairs").EnumerateArray()).ToList();
        Assert.Equal(0, pairs.Count % 4);
        Assert.NotEmpty(pairs);
        var turnIns = pairs.First(p => p.GetProperty("activity").GetInt32() == 1 && p.GetProperty("here").GetArrayLength() > 1);
        Assert.NotEqual(0, turnIns.GetProperty("groups").GetArrayLength());
        Assert.NotEqual(0, turnIns.GetProperty("ahead").GetArrayLength());
        var n = turnIns.GetProperty("register").GetArrayLength();
        Assert.All(turnIns.GetProperty("may").EnumerateArray(), row => Assert.Matches($"^[01]{{{n}}}$", row.GetString()!));
        foreach (var pair in pairs)
        {
            // Names and places only, and in the order of the register.
            Assert.Equal(
                ["activity", "adults", "ahead", "end", "groups", "here", "may", "middle", "name", "needsAdult", "register", "says", "share", "thrown", "word"],
                pair.EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal));
            Assert.All(pair.GetProperty("register").EnumerateArray(), c => Assert.Equal(["id", "name", "tori"], c.EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal)));
            var first = pair.GetProperty("groups").EnumerateArray().Select(g => g.GetProperty("places").EnumerateArray().Min(p => p.GetInt32())).ToList();
            Assert.Equal(first.Order(), first);
        }

        foreach (var word in new[] { "size", "gap", "cost", "kg", "because", "27351", "27.35" }) Assert.DoesNotContain(word, JsonSerializer.Serialize(pairs), StringComparison.OrdinalIgnoreCase);
        var made = inHand.Makings;
        await tablet.GetStringAsync("/mat/evening", Cancel);
        await tablet.GetStringAsync("/mat/evening", Cancel);
        Assert.Equal(made, inHand.Makings);
        await Mark(children[0], MarkKind.Left);
        await tablet.GetStringAsync("/mat/evening", Cancel);
        Assert.InRange(inHand.Makings, made + 1, made + 8);
    }

    [Fact]
    [Statement(36)]
    public async Task One_beginner_without_a_partner_does_not_cost_the_others_theirs_and_where_nobody_falls_the_tablet_says_what_else_there_is()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        var day = new DateOnly(2026, 11, 24);
        using (var db = hall.House.Engine.OpenDb())
        {
            var row = db.Lessons.Where(l => l.Date == day).OrderBy(l => l.Start).First();
            var (by, device) = (db.Duties.Select(d => d.PersonId).First(), db.Devices.Select(d => d.Id).First());
            foreach (var child in db.Enrolments.Where(e => e.ProgrammeId == row.ProgrammeId && e.To == null).Select(e => e.PersonId).ToList())
                await hall.House.Marks.TapAsync(new Tap(Guid.CreateVersion7(), device, null, row.Id, child, by, hall.Time.GetUtcNow(), MarkKind.Present, new TimeOnly(17, 30)), day, new AttendanceRules(), Cancel);
        }

        using var tablet = await hall.TabletOfAsync(DutyKind.JuniorLeader);
        using var pack = JsonDocument.Parse(await tablet.GetStringAsync("/mat/evening", Cancel));
        var beginners = pack.RootElement.GetProperty("lessons")[0].GetProperty("pairs").EnumerateArray().Where(p => p.GetProperty("end").GetInt32() == 0).ToDictionary(p => p.GetProperty("activity").GetInt32());
        foreach (var activity in new[] { 1, 3 })
        {
            var (groups, needs, here) = (beginners[activity].GetProperty("groups"), beginners[activity].GetProperty("needsAdult"), beginners[activity].GetProperty("here"));
            var placed = groups.EnumerateArray().SelectMany(g => g.GetProperty("places").EnumerateArray()).Concat(needs.EnumerateArray()).Select(p => p.GetInt32()).Order();
            Assert.True(groups.GetArrayLength() >= 2);
            Assert.Equal(here.EnumerateArray().Select(p => p.GetInt32()), placed);
            Assert.Equal(JsonValueKind.Null, beginners[activity].GetProperty("says").ValueKind);
        }

        Assert.Equal(0, beginners[2].GetProperty("groups").GetArrayLength());
        Assert.StartsWith("Nobody here may be thrown tonight: for throwing", beginners[2].GetProperty("says").GetString(), StringComparison.Ordinal);
        Assert.DoesNotContain("because", JsonSerializer.Serialize(beginners[1]), StringComparison.OrdinalIgnoreCase);
    }
}
