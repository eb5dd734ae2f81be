using System.Net;
using System.Text;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Syllabus;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace Keikocho.App.Tests.Papers;

/// <summary>The club of the clock's example with a syllabus that has one line of every kind that a sheet shows.</summary>
internal static class SheetDesk
{
    public static Edition Edition { get; } = new(
        "Juniors",
        "edition 3",
        null,
        [
            new LadderRank("white", "White", null, "white", 0, new Minima(), []),
            new LadderRank("white-1", "White, one red tip", null, "white", 1, new Minima(Lessons: 12, Weeks: 10), [
                new Requirement("falls", new Ask.AllOf(["fall-back"]), Critical: true, Carry: Carry.Always),
                new Requirement("throw", new Ask.AnyOf(1, ["o-goshi", "de-ashi-barai"]), Condition: "slow, from a standstill"),
                new Requirement("neck", new Ask.AllOf(["koshi-guruma"])),
                new Requirement("hold", new Ask.AllOf(["kesa"])),
                new Requirement("out", new Ask.AnyOf(1, ["out-hips", "out-leg"])),
                new Requirement("stop", new Ask.AllOf(["mate"]), Critical: true, Carry: Carry.Always),
                new Requirement("unit-word", new Ask.AllOf(["koshi"]), Carry: Carry.ThisTerm, Unit: "hips"),
                new Requirement("foot-word", new Ask.AllOf(["ashi"]), Carry: Carry.ThisTerm, Unit: "sweeps"),
                new Requirement("founder", new Ask.AllOf(["founder"]), Carry: Carry.OnceAskedStays),
                new Requirement("belt", new Ask.AllOf(["belt"]))]),
            new LadderRank("yellow", "Yellow", null, "yellow", 0, new Minima(), [new Requirement("throw", new Ask.AllOf(["tai-otoshi"]))]),
        ],
        [new Core.Syllabus.Unit("hips", "Hip throws", ["o-goshi", "koshi"]), new Core.Syllabus.Unit("sweeps", "Sweeps", ["de-ashi-barai", "ashi"])],
        ["o-goshi", "mate"],
        [
            new Item("fall-back", ItemKind.Fall, "Falling backward", Fall: new FallForm(FallDirection.Back, false, 1)),
            new Item("o-goshi", ItemKind.Throw, "O-goshi", "O-goshi", LookFor: "hips below your partner’s"),
            new Item("de-ashi-barai", ItemKind.Throw, "De-ashi-barai", "De-ashi-barai"),
            new Item("koshi-guruma", ItemKind.Throw, "Koshi-guruma", "Koshi-guruma", LoadsTheNeck: true, Alternative: "uki-goshi"),
            new Item("uki-goshi", ItemKind.Throw, "Uki-goshi", "Uki-goshi"),
            new Item("kesa", ItemKind.HoldDown, "Kesa-gatame", "Kesa-gatame"),
            new Item("out-hips", ItemKind.Escape, "Out of Kesa-gatame: turn the hips away", Order: new Order.EscapeFrom("Kesa-gatame", "turn the hips away")),
            new Item("out-leg", ItemKind.Escape, "Out of Kesa-gatame: trap the leg", Order: new Order.EscapeFrom("Kesa-gatame", "trap the leg")),
            new Item("mate", ItemKind.Word, "mate", Kana: "まて", Kanji: "待て", Meaning: "stop, stand still", Answers: ["stop"], Safety: true),
            new Item("koshi", ItemKind.Word, "koshi", Kana: "こし", Kanji: "腰", Meaning: "hip", Answers: ["hip"]),
            new Item("ashi", ItemKind.Word, "ashi", Kana: "あし", Kanji: "足", Meaning: "foot, leg", Answers: ["foot"]),
            new Item("founder", ItemKind.Question, "Who founded judo?", Answers: ["Jigoro Kano"]),
            new Item("belt", ItemKind.Etiquette, "Tying your own belt"),
            new Item("tai-otoshi", ItemKind.Throw, "Tai-otoshi", "Tai-otoshi"),
        ],
        Cautions: ["Not reviewed by a graded instructor."]);

    public static async Task PublishAsync(this SpringClub club, Edition edition, DateOnly? from = null)
    {
        var store = new SyllabusStore(club.House.Writer);
        var begun = Assert.IsType<StartOutcome.Begun>(await store.StartAsync(club.Programme, edition, "Begun.", club.Head, club.Tablet, SpringClub.Stop));
        var outcome = await store.PublishAsync(begun.Draft, 1, edition.Name, from ?? SpringClub.FirstLesson, club.Today, club.Head, club.Tablet, SpringClub.Stop);
        Assert.True(outcome is PublishOutcome.Published, outcome.ToString() + (outcome is PublishOutcome.Refused refused ? string.Join(' ', refused.Sentences) : ""));
    }

    public static async Task SetUnitAsync(this SpringClub club, string term, string unit)
    {
        Guid id;
        using (var db = club.Db()) id = db.Terms.Single(t => t.Name == term).Id;
        Assert.True(await new SyllabusStore(club.House.Writer).SetUnitAsync(club.Programme, id, unit, club.Head, club.Tablet, SpringClub.Stop));
    }

    public static async Task SeenAsync(this SpringClub club, Guid child, string item, SeenWord word, params (int Month, int Day)[] days)
    {
        Guid id;
        using (var db = club.Db()) id = db.Items.Single(i => i.Key == item).Id;
        foreach (var (month, day) in days)
        {
            var tap = SeenTap.OfItem(Guid.CreateVersion7(), club.Lesson(month, day).Id, child, id, word);
            Assert.Equal(EvidenceOutcome.Stored, (await club.House.Sightings.AddAsync([tap], club.Today, club.Head, club.Tablet, SpringClub.Stop)).Outcome);
        }
    }

    public static async Task BornAsync(this SpringClub club, Guid child, string given, string family, DateOnly born) =>
        Assert.True(await club.House.People.ChangeDetailsAsync(child, new PersonDetails(given, family, null, born), club.Head, club.Tablet, SpringClub.Stop));

    public static Guid Test(this SpringClub club, DateOnly day)
    {
        using var db = club.Db();
        return db.PromotionTests.Single(t => t.Date == day).Id;
    }

    /// <summary>The text of a PDF, and the answer that brought it.</summary>
    public static async Task<(string Text, HttpResponseMessage Answer)> PdfAsync(this SpringClub club, string address)
    {
        var answer = await club.Browser.GetAsync(address, SpringClub.Stop);
        Assert.True(answer.StatusCode == HttpStatusCode.OK, $"{address}: {(int)answer.StatusCode} {SpringClub.Plain(WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(SpringClub.Stop)))}");
        Assert.Equal("application/pdf", answer.Content.Headers.ContentType?.ToString());
        using var pdf = PdfDocument.Open(await answer.Content.ReadAsByteArrayAsync(SpringClub.Stop));
        return (string.Join(" ", pdf.GetPages().Select(Flowing)), answer);
    }

    /// <summary>A page's text in drawing order, so that two columns do not run into each other, with a space where a line begins.</summary>
    public static string Flowing(Page page)
    {
        var text = new StringBuilder();
        Letter? before = null;
        foreach (var letter in page.Letters)
        {
            var jump = before is not null && (Math.Abs(letter.StartBaseLine.Y - before.StartBaseLine.Y) > 1 || letter.StartBaseLine.X - before.EndBaseLine.X > 4);
            if (jump && text[^1] is not (' ' or '-')) text.Append(' ');
            text.Append(letter.Value == "\u00A0" ? " " : letter.Value);
            before = letter;
        }

        return text.ToString();
    }
}
