using System.Net;
using System.Text.RegularExpressions;
using Keikocho.App.Tests.Club;
using Keikocho.Core.Syllabus;

namespace Keikocho.App.Tests.Syllabus;

public sealed class DraftPageTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_ladder_grows_rank_by_rank_and_line_by_line()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.BeginAsync("nothing");
        await desk.StepAsync("ranks/add", ("rank-name", "White"), ("rank-cloth", ""), ("rank-tips", ""));
        Assert.Equal("Yellow was added after White.", await desk.StepAsync("ranks/add", ("rank-name", "Yellow"), ("rank-cloth", ""), ("rank-tips", ""), ("rank-after", "white")));
        Assert.Equal(("yellow", 0), (desk.Stored().Ranks[1].Cloth, desk.Stored().Ranks[1].Tips));
        Assert.Equal("Yellow: O-goshi, moving was added.", await desk.StepAsync("lines/add", ("rank", "yellow"), ("item", "O-goshi, moving"), ("kind", "Throw"), ("condition", "both sides"), ("critical", "on"), ("carry", "Always")));
        var line = Assert.Single(desk.Stored().Ranks[1].Requirements);
        Assert.Equal(("both sides", true, Carry.Always), (line.Condition, line.Critical, line.Carry));
        Assert.Equal("O-goshi", desk.Stored().Items.Single(i => i.Name == "O-goshi, moving").Technique);
        // A name of the list brings its kind along.
        await desk.StepAsync("lines/add", ("rank", "yellow"), ("item", "hiza guruma"), ("kind", ""));
        await desk.StepAsync("lines/add", ("rank", "yellow"), ("item", "Kesa-gatame"), ("kind", ""));
        Assert.Equal([ItemKind.Throw, ItemKind.Throw, ItemKind.HoldDown], desk.Stored().Items.Select(i => i.Kind));
        Assert.StartsWith("Yellow: “Kesa-gatame” was moved up.", await desk.StepAsync("lines", ("rank", "yellow"), ("do", "up:kesa-gatame")), StringComparison.Ordinal);
        Assert.Equal(["o-goshi-moving", "kesa-gatame", "hiza-guruma"], desk.Stored().Ranks[1].Requirements.Select(r => r.Key));
    }

    [Fact]
    public async Task Two_lines_are_joined_into_either_of_two_and_parted_again()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.BeginAsync("nothing");
        await desk.StepAsync("ranks/add", ("rank-name", "White"), ("rank-cloth", ""), ("rank-tips", ""));
        foreach (var name in new[] { "O-goshi", "Hiza-guruma", "Tai-otoshi" }) await desk.StepAsync("lines/add", ("rank", "white"), ("item", name), ("kind", "Throw"));
        Assert.Contains("Tick two lines or more", await desk.RefusedStepAsync("lines", ("rank", "white"), ("do", "join"), ("join-count", "1"), ("join", "o-goshi")), StringComparison.Ordinal);
        Assert.Contains("does not work", await desk.RefusedStepAsync("lines", ("rank", "white"), ("do", "join"), ("join-count", "2"), ("join", "o-goshi"), ("join", "tai-otoshi")), StringComparison.Ordinal);
        Assert.Equal("White: Joined: O-goshi or Tai-otoshi.", await desk.StepAsync("lines", ("rank", "white"), ("do", "join"), ("join-count", "1"), ("join", "o-goshi"), ("join", "tai-otoshi")));
        Assert.Equivalent(new Ask.AnyOf(1, ["o-goshi", "tai-otoshi"]), desk.Stored().Ranks[0].Requirements[0].Ask, strict: true);
        await desk.StepAsync("lines/change", ("rank", "white"), ("line", "o-goshi"), ("do", "add"), ("more-item", "Uki-goshi"), ("more-kind", "Throw"));
        await desk.StepAsync("lines/change", ("rank", "white"), ("line", "o-goshi"), ("do", "store"), ("line-count", "2"), ("line-title", "Two throws"), ("line-carry", "ThisRank"));
        Assert.Equivalent(new Ask.AnyOf(2, ["o-goshi", "tai-otoshi", "uki-goshi"]), desk.Stored().Ranks[0].Requirements[0].Ask, strict: true);
        Assert.Contains("Two throws", SyllabusDesk.Plain(await desk.PageAsync("/syllabus/draft/rank/white?line=o-goshi")), StringComparison.Ordinal);
        await desk.StepAsync("lines/change", ("rank", "white"), ("line", "o-goshi"), ("do", "take:uki-goshi"));
        Assert.DoesNotContain(desk.Stored().Items, i => i.Key == "uki-goshi");
        await desk.StepAsync("lines", ("rank", "white"), ("do", "part:o-goshi"));
        Assert.Equal(3, desk.Stored().Ranks[0].Requirements.Count);
    }

    [Fact]
    public async Task A_rank_is_renamed_reordered_and_dropped_and_its_minima_are_stored()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.BeginAsync("sample:ladder-willow");
        var second = desk.Stored().Ranks[1];
        await desk.StepAsync("ranks/change", ("rank", second.Key), ("name", "White, red tab"), ("short", "WR"), ("cloth", "white"), ("tips", "1"), ("given", "any test"), ("first-course", "on"),
            ("lessons", "12"), ("weeks", "9"), ("months", ""), ("age", "7"), ("age-by", "CalendarYear"), ("a-day", "1"), ("ages-from", "10"), ("ages-to", ""), ("ages-lessons", "8"), ("ages-weeks", ""));
        var changed = desk.Stored().Ranks[1];
        Assert.Equal((second.Key, "White, red tab", "WR", true), (changed.Key, changed.Name, changed.ShortName, changed.FirstCourse));
        Assert.Equal((12, 9, 7, AgeBasis.CalendarYear, 1), (changed.Minima.Lessons, changed.Minima.Weeks, changed.Minima.Age, changed.Minima.AgeBy, changed.Minima.LessonsADay));
        Assert.Equal(new MinimaForAges(new AgeBand(10), 8), Assert.Single(changed.Minima.ForAges!));
        Assert.Contains("12 lessons, 9 weeks, 7 years old in the calendar year, from 10 years 8 lessons", SyllabusDesk.Plain(await desk.PageAsync("/syllabus/draft")), StringComparison.Ordinal);
        await desk.StepAsync("ranks", ("do", $"down:{second.Key}"));
        Assert.Equal(second.Key, desk.Stored().Ranks[2].Key);
        Assert.Equal("White, red tab was dropped.", await desk.StepAsync("ranks", ("do", $"drop:{second.Key}")));
        Assert.DoesNotContain(desk.Stored().Ranks, r => r.Key == second.Key);
        Assert.Equal("The last step was taken back.", await desk.StepAsync("undo"));
        Assert.Contains(desk.Stored().Ranks, r => r.Key == second.Key);
    }

    [Fact]
    public async Task Wrong_answers_come_back_with_what_was_typed_and_change_nothing()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.BeginAsync("sample:ladder-willow");
        var rank = desk.Stored().Ranks[2].Key;
        var page = await desk.RefusedStepAsync("ranks/change", ("rank", rank), ("name", desk.Stored().Ranks[0].Name), ("lessons", "many"), ("cloth", "white"), ("tips", "9"));
        Assert.Contains("id=\"name-error\"", page, StringComparison.Ordinal);
        Assert.Contains("Lessons: type a whole number from 0 to 500, or nothing.", page, StringComparison.Ordinal);
        Assert.Contains("value=\"many\"", page, StringComparison.Ordinal);
        Assert.Contains("“Blue moon” is new here: choose what kind of thing it is.", await desk.RefusedStepAsync("lines/add", ("rank", rank), ("item", "Blue moon"), ("kind", "")), StringComparison.Ordinal);
        Assert.Contains("A fall needs its direction", await desk.RefusedStepAsync("lines/add", ("rank", rank), ("item", "Soft landing"), ("kind", "Fall")), StringComparison.Ordinal);
        Assert.Contains("has a rank", await desk.RefusedStepAsync("ranks/add", ("rank-name", desk.Stored().Ranks[0].Name)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_that_is_behind_writes_nothing_over()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.BeginAsync("nothing");
        var seen = await desk.HiddenAsync();
        await desk.StepAsync("ranks/add", ("rank-name", "White"));
        Assert.Contains("changed on another page", await desk.TakenAsync("/syllabus/draft/ranks/add", [.. seen, ("rank-name", "Yellow")]), StringComparison.Ordinal);
        Assert.Equal(["White"], desk.Stored().Ranks.Select(r => r.Name));
        Assert.StartsWith("Nothing was changed.", await desk.StepAsync("ranks", ("do", "drop:no-such-rank")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Units_and_the_first_course_are_edited_in_place()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.BeginAsync("nothing");
        await desk.StepAsync("units/add", ("unit-name", "Hip throws"));
        Assert.Equal("Hip throws: O-goshi was added.", await desk.StepAsync("taught", ("unit", "hip-throws"), ("do", "teach"), ("taught-hip-throws-item", "o-goshi"), ("taught-hip-throws-kind", "Throw")));
        Assert.Equal("First course: O-goshi was added.", await desk.StepAsync("taught", ("unit", ""), ("do", "teach"), ("taught--item", "O-goshi"), ("taught--kind", "")));
        await desk.StepAsync("taught", ("unit", "hip-throws"), ("do", "teach"), ("taught-hip-throws-item", "Tsurikomi-goshi"), ("taught-hip-throws-kind", "Throw"));
        await desk.StepAsync("taught", ("unit", "hip-throws"), ("do", "up:tsurikomi-goshi"));
        Assert.Equal(["tsurikomi-goshi", "o-goshi"], desk.Stored().Units[0].Items);
        await desk.StepAsync("taught", ("unit", "hip-throws"), ("do", "rename"), ("taught-hip-throws-name", "Hips"));
        await desk.StepAsync("taught", ("unit", "hip-throws"), ("do", "out:tsurikomi-goshi"));
        Assert.Equal(("Hips", "o-goshi"), (desk.Stored().Units[0].Name, Assert.Single(desk.Stored().Units[0].Items)));
        await desk.StepAsync("units", ("do", "drop:hip-throws"));
        Assert.Empty(desk.Stored().Units);
        Assert.Single(desk.Stored().Items);
    }

    [Fact]
    public async Task An_item_is_described_on_its_own_page()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.BeginAsync("sample:ladder-willow");
        var hold = desk.Stored().Items.First(i => i.Kind == ItemKind.HoldDown);
        Assert.Contains(hold.Name, await desk.PageAsync($"/syllabus/draft/item/{hold.Key}"), StringComparison.Ordinal);
        await desk.StepAsync("items/change", ("item", hold.Key), ("name", "Side hold"), ("kind", "HoldDown"), ("technique", hold.Technique ?? ""), ("seconds", "20"), ("look-for", "Hips low"), ("neck", "on"));
        var changed = desk.Stored().Items.Single(i => i.Key == hold.Key);
        Assert.Equal(("Side hold", 20, "Hips low", true), (changed.Name, changed.Seconds, changed.LookFor, changed.LoadsTheNeck));
        Assert.Contains("type the second too", await desk.RefusedStepAsync("items/change", ("item", hold.Key), ("name", "Out of it"), ("kind", "Escape"), ("first", "Kesa-gatame")), StringComparison.Ordinal);
        using var gone = await desk.Browser.GetAsync("/syllabus/draft/item/no-such-item", Stop);
        Assert.Equal(HttpStatusCode.NotFound, gone.StatusCode);
    }

    [Fact]
    public async Task The_whole_draft_is_edited_as_a_text_and_a_fault_has_its_line()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.BeginAsync("sample:ladder-willow");
        var text = WebUtility.HtmlDecode(Regex.Match(await desk.Browser.GetStringAsync("/syllabus/draft/text", Stop), "<textarea[^>]*>(.*?)</textarea>", RegexOptions.Singleline).Groups[1].Value);
        Assert.Equal("The draft was written anew as a text.", await desk.StepAsync("text", ("text", text.Replace("White, one red tip", "White, one stripe", StringComparison.Ordinal).ReplaceLineEndings("\r\n"))));
        Assert.Equal("White, one stripe", desk.Stored().Ranks[1].Name);
        var refused = await desk.RefusedStepAsync("text", ("text", "nonsense = 1\n" + text));
        Assert.Contains("Line 1, nonsense", refused, StringComparison.Ordinal);
        Assert.Contains("nonsense = 1", refused, StringComparison.Ordinal);
        Assert.Equal("White, one stripe", desk.Stored().Ranks[1].Name);
    }

    [Fact]
    public async Task A_text_that_can_be_read_is_kept_with_what_stands_against_it_and_publication_stays_barred()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.BeginAsync("sample:ladder-willow");
        async Task<string> TextAsync() => WebUtility.HtmlDecode(Regex.Match(await desk.Browser.GetStringAsync("/syllabus/draft/text", Stop), "<textarea[^>]*>(.*?)</textarea>", RegexOptions.Singleline).Groups[1].Value);
        var text = await TextAsync();
        var first = desk.Stored().Ranks.SelectMany(r => r.Requirements).Select(r => r.Ask).OfType<Core.Syllabus.Ask.AllOf>().First().Items[0];
        // An item that is asked is taken out of the items: nothing of it holds together any more, and it is kept all the same.
        var broken = text.Replace($"key = \"{first}\"", "key = \"somewhat-else\"", StringComparison.Ordinal);
        Assert.Matches("The draft was written anew as a text; \\d+ things? to mend before it can be published.", await desk.StepAsync("text", ("text", broken)));
        Assert.Contains(desk.Stored().Items, i => i.Key == "somewhat-else");
        var page = await desk.PageAsync("/syllabus/draft");
        Assert.Contains("Before it can be published:", page, StringComparison.Ordinal);
        Assert.Contains(first, page, StringComparison.Ordinal);
        foreach (var rank in desk.Stored().Ranks) await desk.PageAsync($"/syllabus/draft/rank/{rank.Key}");
        Assert.Equal(broken.ReplaceLineEndings("\n").Trim(), (await TextAsync()).Trim());
        await desk.RefusedStepAsync("publish", ("publish-name", "edition 9"), ("publish-from", ClubDesk.Today.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Empty(desk.Book().EditionsOf(desk.Book().Programmes[0].LadderId));

        // A key that stands twice cannot be shown: then the text stays in the field, with the line.
        var twice = await desk.RefusedStepAsync("text", ("text", text.Replace($"key = \"{desk.Stored().Ranks[2].Key}\"", $"key = \"{desk.Stored().Ranks[1].Key}\"", StringComparison.Ordinal)));
        Assert.Matches("Line \\d+, rank", twice);
    }

    [Fact]
    public async Task Own_belts_stay_worn_and_one_that_is_dropped_stops_publication()
    {
        await using var desk = await ClubDesk.DemoAsync();
        using (var chosen = await desk.PostAsync("/acting", ("adult", desk.Book().DutiesOn(ClubDesk.Today).First().PersonId.ToString()))) Assert.Equal(HttpStatusCode.SeeOther, chosen.StatusCode);
        var before = desk.Book().Ranks.Where(r => r.LadderId == desk.Book().Programmes[0].LadderId).ToList();
        Assert.Contains("Begun from the belts", await desk.BeginAsync("belts"), StringComparison.Ordinal);
        Assert.Equal(before.Select(r => r.Name), desk.Stored().Ranks.Select(r => r.Name));
        await desk.StepAsync("ranks", ("do", $"drop:{desk.Stored().Ranks[3].Key}"));
        var term = desk.Book().Terms.First(t => t.To >= ClubDesk.Today).From.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        var page = await desk.RefusedStepAsync("publish", ("publish-name", "edition 9"), ("publish-from", term));
        Assert.Matches($"{before[3].Name} is worn by \\d+ child", page);
        await desk.StepAsync("undo");
        await desk.PublishAsync("edition 9", term);
        Assert.Equal(before.Select(r => r.Id), desk.Book().Ranks.Where(r => r.LadderId == desk.Book().Programmes[0].LadderId).Select(r => r.Id));
    }

    [Fact]
    public async Task Every_id_of_the_drafts_pages_stands_once()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.BeginAsync("sample:ladder-heron");
        var rank = desk.Stored().Ranks[2];
        foreach (var address in new[] { "/syllabus", "/syllabus/draft", "/syllabus/draft/text", $"/syllabus/draft/rank/{rank.Key}", $"/syllabus/draft/rank/{rank.Key}?line={rank.Requirements[0].Key}", $"/syllabus/draft/item/{desk.Stored().Items[0].Key}" })
        {
            var page = await desk.PageAsync(address);
            Assert.Empty(Regex.Matches(page, " id=\"([^\"]+)\"").Select(m => m.Groups[1].Value).GroupBy(id => id).Where(g => g.Count() > 1).Select(g => $"{address}: {g.Key}"));
            Assert.DoesNotContain("<script>", page, StringComparison.Ordinal);
        }
    }
}
