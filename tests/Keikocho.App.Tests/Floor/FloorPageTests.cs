using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Floor;

/// <summary>The mat plan's page, and what stands at the mat on the club's.</summary>
public sealed class FloorPageTests
{
    [Fact]
    public async Task While_the_mat_is_not_measured_the_page_says_where_to_do_it()
    {
        await using var club = await SpringClub.StartAsync();
        await club.JoinOfTheExampleAsync();
        Assert.Contains("There is no plan. The mat is not measured yet. Its length and width stand on the club’s page.", await club.WordsAsync($"/mat-plan?lesson={club.Lesson(5, 14).Id}"), StringComparison.Ordinal);
    }

    [Fact, Statement(46)]
    public async Task Tonights_numbers_are_drawn_to_scale_with_their_words_and_no_name()
    {
        await using var club = await SpringClub.StartAsync();
        var lesson = club.Lesson(5, 14);
        await MeasureAsync(club);
        var names = new List<string>();
        for (var i = 0; i < 4; i++)
        {
            var child = await club.JoinAsync($"Wren{i}", "Hollis", SpringClub.FirstLesson);
            names.Add($"Wren{i}");
            if (i < 3) await club.MarkAsync(child, lesson.Date, MarkKind.Present);
        }

        var page = await club.TextAsync($"/mat-plan?lesson={lesson.Id}");
        var words = SpringClub.Plain(page);
        Assert.Contains("<svg class=\"floor-drawing\" viewBox=\"-60 -60 1320 920\"", page, StringComparison.Ordinal);
        Assert.Contains("Beginners: 96 m² at 6 m² a pair is room for 16 pairs by area", words, StringComparison.Ordinal);
        Assert.Contains("3 children, 1 pair on", words, StringComparison.Ordinal);
        Assert.DoesNotContain("style=", page, StringComparison.Ordinal);
        Assert.All(names, name => Assert.DoesNotContain(name, words, StringComparison.Ordinal));
        Assert.Contains("Technique, without throws", words, StringComparison.Ordinal);
        Assert.Contains("aria-current=\"page\">Technique", await club.TextAsync($"/mat-plan?lesson={lesson.Id}&work=technique"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_stands_at_the_mat_is_entered_drawn_and_removed()
    {
        await using var club = await SpringClub.StartAsync();
        await club.JoinOfTheExampleAsync();
        await MeasureAsync(club);
        var hall = Hall(club);
        var key = $"obstacle-{hall:N}-";
        var page = await club.TextAsync("/club");
        var id = System.Text.RegularExpressions.Regex.Match(page, "name=\"obstacle\" value=\"([0-9a-f-]{36})\"").Groups[1].Value;
        (string, string)[] form = [("hall", hall.ToString("D")), ("obstacle", id), (key + "name", "pillar"), (key + "along", "3.5"), (key + "across", "-0.2"), (key + "length", "0.4"), (key + "width", "0.4")];
        Assert.Contains("pillar is on the plan of", await TakenAsync(club, "/club/obstacles/add", form), StringComparison.Ordinal);
        Assert.Contains("0.4 by 0.4 m, 3.5 m along the length, -0.2 m along the width", await club.WordsAsync("/club"), StringComparison.Ordinal);
        Assert.Contains("No space comes nearer than 1 m to pillar.", await club.WordsAsync($"/mat-plan?lesson={club.Lesson(5, 14).Id}"), StringComparison.Ordinal);
        Assert.Contains("pillar is off the plan.", await TakenAsync(club, "/club/obstacles/remove", ("obstacle", id)), StringComparison.Ordinal);
        Assert.DoesNotContain("pillar", await club.WordsAsync($"/mat-plan?lesson={club.Lesson(5, 14).Id}"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("name", "", "It has no name. “Pillar” will do.")]
    [InlineData("along", "near the door", "Type how far from the corner it begins, from -100 to 17 metres; 0 at the corner.")]
    [InlineData("across", "900", "Type how far from the corner it begins, from -100 to 13 metres; 0 at the corner.")]
    [InlineData("length", "0", "Type a size above 0 and up to 100 metres.")]
    [InlineData("width", "", "Type a size above 0 and up to 100 metres.")]
    public async Task A_bad_obstacle_comes_back_with_a_sentence_and_changes_nothing(string field, string typed, string sentence)
    {
        await using var club = await SpringClub.StartAsync();
        await MeasureAsync(club);
        var hall = Hall(club);
        var key = $"obstacle-{hall:N}-";
        (string, string)[] form =
        [
            ("hall", hall.ToString("D")), ("obstacle", Guid.CreateVersion7().ToString("D")),
            .. new[] { ("name", "pillar"), ("along", "3"), ("across", "0"), ("length", "1"), ("width", "1") }.Select(f => (key + f.Item1, f.Item1 == field ? typed : f.Item2)),
        ];
        using var answer = await club.PostAsync("/club", "/club/obstacles/add", form);
        Assert.Equal(System.Net.HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(sentence, System.Net.WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(SpringClub.Stop)), StringComparison.Ordinal);
        using var db = club.Db();
        Assert.Empty(db.Obstacles);
    }

    private static async Task<string> TakenAsync(SpringClub club, string address, params (string, string)[] form)
    {
        using var answer = await club.PostAsync("/club", address, form);
        Assert.Equal(System.Net.HttpStatusCode.SeeOther, answer.StatusCode);
        return await club.WordsAsync(answer.Headers.Location!.ToString());
    }

    private static Task<bool> MeasureAsync(SpringClub club) => club.House.Club.ChangeHallAsync(Hall(club), "Hall", 1200, 800, 100, club.Head, club.Tablet, SpringClub.Stop);

    private static Guid Hall(SpringClub club)
    {
        using var db = club.Db();
        return db.Halls.Single().Id;
    }
}
