using System.Net;
using System.Text.Json.Nodes;
using Keikocho.App.Mat;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;
using Keikocho.Store.Safety;
using Keikocho.Testing;
using Microsoft.Extensions.DependencyInjection;

namespace Keikocho.App.Tests.Hall;

/// <summary>What each child still lacks, on an instructor's tablet.</summary>
public sealed class LacksOnTabletTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_instructors_tablet_says_of_each_child_what_the_laptops_list_says()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = new TabletOfTests(await hall.TabletOfAsync(DutyKind.Instructor));
        var evening = await tablet.AskAsync();
        var lacks = await LacksAsync(tablet);
        Assert.Equal(evening["lacks"]!.GetValue<string>(), lacks["at"]!.GetValue<string>());
        Assert.NotEmpty(lacks["phrases"]!.AsArray());
        var lesson = lacks["lessons"]![0]!;
        Assert.Equal(tablet.Lesson["children"]!.AsArray().Select(c => c!["id"]!.GetValue<Guid>()), lesson["children"]!.AsArray().Select(c => c!["child"]!.GetValue<Guid>()));
        Assert.StartsWith("Test on ", lesson["test"]!.GetValue<string>(), StringComparison.Ordinal);
        using var laptop = hall.App.Browser();
        Guid test;
        using (var db = hall.House.Engine.OpenDb())
        {
            var programme = db.Lessons.Where(l => l.Id == tablet.LessonId).Select(l => l.ProgrammeId).First();
            test = db.PromotionTests.Where(t => t.ProgrammeId == programme && t.Date >= new DateOnly(2026, 11, 24)).OrderBy(t => t.Date).Select(t => t.Id).First();
        }

        var asked = 0;
        foreach (var child in lesson["children"]!.AsArray().Where(c => c!["verdict"]!.GetValue<string>().Length > 0).Take(6))
        {
            var page = WebUtility.HtmlDecode(await laptop.GetStringAsync($"/promotion-tests/{test}/children/{child!["child"]!.GetValue<Guid>()}", Cancel));
            Assert.Contains($"<b>{child["verdict"]!.GetValue<string>()}", page, StringComparison.Ordinal);
            asked++;
        }

        Assert.Equal(6, asked);
        Assert.Contains(lesson["children"]!.AsArray(), c => c!["falls"]!.AsArray().Count > 0);
        Assert.Contains(lesson["children"]!.AsArray(), c => c!["items"]!.AsArray().Count > 0);
        Assert.Contains(lesson["children"]!.AsArray(), c => c!["says"]!.AsArray().Any(s => s!.GetValue<string>().Contains(" attended", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task It_is_made_once_until_people_calendar_or_an_evening_that_is_over_change()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        var made = hall.App.App.Services.GetRequiredService<LacksInHand>();
        using var one = new TabletOfTests(await hall.TabletOfAsync(DutyKind.Instructor));
        using var two = new TabletOfTests(await hall.TabletOfAsync(DutyKind.HeadInstructor));
        var at = (await one.AskAsync())["lacks"]!.GetValue<string>();
        await two.AskAsync();
        Assert.Equal(0, made.Makings);
        await LacksAsync(one);
        var lessons = made.Makings;
        Assert.Equal(one.Evening["lessons"]!.AsArray().Count, lessons);
        // A tap of tonight, polls, and the other tablet leave it alone.
        Assert.Equal(["taken"], await one.HandInAsync(one.Mark("present", one.Child(0), m => m["at"] = 1045)));
        for (var i = 0; i < 5; i++) Assert.Equal(at, (await one.AskAsync())["lacks"]!.GetValue<string>());
        await LacksAsync(two);
        Assert.Equal(lessons, made.Makings);
        // A knock takes a child off the mat: that is people's.
        Assert.Equal(["taken"], await one.HandInAsync(one.Mark("knock", one.Child(1), m => m["code"] = 1)));
        Assert.NotEqual(at, (await two.AskAsync())["lacks"]!.GetValue<string>());
        var after = await LacksAsync(two);
        Assert.Equal(2 * lessons, made.Makings);
        Assert.Contains("Off the mat for now.", Child(after, one.Child(1))["says"]!.AsArray().Select(s => s!.GetValue<string>()));
    }

    [Fact, Statement(86)]
    public async Task A_junior_leaders_tablet_never_gets_it()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var leader = new TabletOfTests(await hall.TabletOfAsync(DutyKind.JuniorLeader));
        Assert.Equal("", (await leader.AskAsync())["lacks"]!.GetValue<string>());
        Assert.All(leader.Evening["lessons"]!.AsArray(), l => Assert.Empty(l!["planB"]!.AsArray()));
        using var answer = await leader.Http.GetAsync(MatAddress.Lacks, Cancel);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Fact, Statement(88)]
    public async Task A_stand_down_is_said_without_whose_word_and_no_child_is_told_beside_another()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = new TabletOfTests(await hall.TabletOfAsync(DutyKind.Instructor));
        await tablet.AskAsync();
        using (var db = hall.House.Engine.OpenDb())
        {
            db.StandDowns.Add(new StandDownRow
            {
                Club = 1,
                Id = Guid.CreateVersion7(),
                PersonId = tablet.Child(2),
                Scope = 1,
                From = new DateOnly(2026, 11, 20),
                ReviewOn = new DateOnly(2026, 11, 26),
                WhoseWord = Seal.Close("Dr Pemberley"),
                ById = db.Duties.Select(d => d.PersonId).First(),
            });
            db.SaveChanges();
        }

        var lacks = await LacksAsync(tablet);
        Assert.Contains("No falls for now.", Child(lacks, tablet.Child(2))["says"]!.AsArray().Select(s => s!.GetValue<string>()));
        Assert.DoesNotContain("Pemberley", lacks.ToJsonString(), StringComparison.Ordinal);
        Assert.DoesNotContain("reviewed", lacks.ToJsonString(), StringComparison.Ordinal);
        Assert.DoesNotContain("in 10", lacks.ToJsonString(), StringComparison.Ordinal);
    }

    private static JsonNode Child(JsonNode lacks, Guid child) =>
        lacks["lessons"]!.AsArray().SelectMany(l => l!["children"]!.AsArray()).First(c => c!["child"]!.GetValue<Guid>() == child)!;

    private static async Task<JsonNode> LacksAsync(TabletOfTests tablet) => JsonNode.Parse(await tablet.Http.GetStringAsync(MatAddress.Lacks, Cancel))!;
}
