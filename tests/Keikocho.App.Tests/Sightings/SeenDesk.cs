using System.Net;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Tests.Sightings;

/// <summary>The club of the clock's example with a small syllabus, at the desk after the evening.</summary>
internal static class SeenDesk
{
    /// <summary>Publishes a syllabus of two throws, a hold, a word that must be right, and a fall.</summary>
    public static async Task PublishAsync(this SpringClub club, Minima? minima = null)
    {
        var edition = new Edition(
            "Juniors",
            "edition 1",
            null,
            [
                new LadderRank("white", "White", null, "white", 0, new Minima(), []),
                new LadderRank("white-1", "White, one red tip", null, "white", 1, minima ?? new Minima(), [
                    new Requirement("throws", new Ask.AllOf(["o-goshi", "uki-goshi"])),
                    new Requirement("stop", new Ask.AllOf(["stop"]), Critical: true),
                    new Requirement("falls", new Ask.AllOf(["fall-back"]), Critical: true)]),
                new LadderRank("yellow", "Yellow", null, "yellow", 0, new Minima(), [new Requirement("holds", new Ask.AllOf(["kesa"]))]),
            ],
            [],
            ["o-goshi", "stop"],
            [
                new Item("o-goshi", ItemKind.Throw, "O-goshi", "O-goshi"),
                new Item("uki-goshi", ItemKind.Throw, "Uki-goshi", "Uki-goshi"),
                new Item("kesa", ItemKind.HoldDown, "Kesa-gatame", "Kesa-gatame"),
                new Item("stop", ItemKind.Word, "Stop", Meaning: "everybody stops", Answers: ["stop"], Safety: true),
                new Item("fall-back", ItemKind.Fall, "Fall backward", Fall: new FallForm(Core.Safety.FallDirection.Back, false, 3)),
            ]);
        var store = new SyllabusStore(club.House.Writer);
        var begun = Assert.IsType<StartOutcome.Begun>(await store.StartAsync(club.Programme, edition, "Begun.", club.Head, club.Tablet, SpringClub.Stop));
        var published = await store.PublishAsync(DraftOf(begun), 1, "edition 1", SpringClub.FirstLesson, club.Today, club.Head, club.Tablet, SpringClub.Stop);
        Assert.True(published is PublishOutcome.Published, (published as PublishOutcome.Refused)?.Sentences[0]);
    }

    /// <summary>A form that is taken, and the page that it leads to, without its markup.</summary>
    public static async Task<string> TakenAsync(this SpringClub club, string page, string address, params (string, string)[] fields)
    {
        using var answer = await club.PostAsync(page, address, fields);
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        return await club.WordsAsync(answer.Headers.Location!.ToString());
    }

    /// <summary>A form that comes back.</summary>
    public static async Task<string> RefusedAsync(this SpringClub club, string page, string address, params (string, string)[] fields)
    {
        using var answer = await club.PostAsync(page, address, fields);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        return SpringClub.Plain(WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(SpringClub.Stop)));
    }

    public static Guid Item(this SpringClub club, string key)
    {
        using var db = club.Db();
        return db.Items.Single(i => i.Key == key).Id;
    }

    private static Guid DraftOf(StartOutcome.Begun begun) => begun.Draft;
}
