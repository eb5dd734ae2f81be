using System.Net;
using System.Text.Json.Nodes;
using Keikocho.App.Tests.Hall;
using Keikocho.Store.People;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Cards;

/// <summary>The card on a tablet.</summary>
public sealed class CardsOnTheMatTests
{
    [Fact]
    public async Task A_tablet_holds_the_cards_of_its_evening_part_by_part()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = new TabletOfTests(await hall.TabletOfAsync(DutyKind.HeadInstructor));
        await tablet.AskAsync();
        var card = tablet.Lesson["cards"]![0]!;
        var parts = card["parts"]!.AsArray();
        Assert.True(parts.Count >= 5);
        Assert.Equal(tablet.Lesson["start"]!.GetValue<int>(), parts[0]!["start"]!.GetValue<int>());
        Assert.Equal(tablet.Lesson["end"]!.GetValue<int>(), parts[^1]!["start"]!.GetValue<int>() + parts[^1]!["minutes"]!.GetValue<int>());
        Assert.True(First(parts, p => p["falls"]!.GetValue<bool>()) < First(parts, p => p["slot"]!.GetValue<int>() > 0));
        // What is worked on can be marked where it is seen.
        var items = tablet.Lesson["items"]!.AsArray().Select(i => i!["id"]!.GetValue<Guid>()).ToHashSet();
        Assert.All(parts.Where(p => p!["item"] is not null), p => Assert.Contains(p!["item"]!.GetValue<Guid>(), items));
    }

    [Fact, Statement(86)]
    public async Task A_leaders_card_has_no_reason_and_nobody_to_look_at()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var leader = new TabletOfTests(await hall.TabletOfAsync(DutyKind.JuniorLeader));
        await leader.AskAsync();
        foreach (var card in leader.Lesson["cards"]!.AsArray())
        {
            Assert.Equal("", card!["lookAt"]!.GetValue<string>());
            var text = card.ToJsonString();
            foreach (var word in new[] { "never shown", "signed", "overdue", "Nobody has marked", "stand-down" }) Assert.DoesNotContain(word, text, StringComparison.OrdinalIgnoreCase);
        }

        var page = await leader.Http.GetStringAsync("/cards", TestContext.Current.CancellationToken);
        Assert.DoesNotContain("Why this card", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Look at", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_slot_that_is_gone_to_on_a_tablet_is_stored_once_and_only_for_its_own_evening()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = new TabletOfTests(await hall.TabletOfAsync(DutyKind.Instructor));
        await tablet.AskAsync();
        var (card, part) = tablet.Lesson["cards"]!.AsArray().SelectMany(c => c!["parts"]!.AsArray().Select(p => (c, p!))).First(p => p.Item2["item"] is not null);
        var command = Guid.CreateVersion7();
        Task<HttpResponseMessage> PostAsync(Guid lesson) => SendAsync(tablet, [
            ("command", command.ToString("D")), ("lesson", lesson.ToString("D")), ("end", card["end"]!.ToString()), ("slot", part["slot"]!.ToString()), ("item", part["item"]!.ToString()), ("both", "")]);
        for (var i = 0; i < 2; i++)
        {
            using var answer = await PostAsync(tablet.LessonId);
            Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        }

        using var db = hall.House.Engine.OpenDb();
        Assert.Equal(1, db.Showings.Count(s => s.LessonId == tablet.LessonId));
        var other = db.Lessons.Where(l => l.Date < new DateOnly(2026, 11, 24) && l.ClosureId == null).OrderByDescending(l => l.Date).Select(l => l.Id).First();
        using var refused = await PostAsync(other);
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
    }

    private static int First(JsonArray parts, Func<JsonNode, bool> which) => parts.Select((p, i) => (p, i)).First(p => which(p.p!)).i;

    private static async Task<HttpResponseMessage> SendAsync(TabletOfTests tablet, (string Name, string Value)[] fields)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/cards/slot") { Content = new FormUrlEncodedContent(fields.Select(f => KeyValuePair.Create(f.Name, f.Value))) };
        request.Headers.Add("Page-Token", tablet.Evening["token"]!.GetValue<string>());
        return await tablet.Http.SendAsync(request, TestContext.Current.CancellationToken);
    }
}
