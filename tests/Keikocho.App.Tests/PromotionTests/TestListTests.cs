using System.Net;
using System.Text.RegularExpressions;
using Keikocho.App.Tests.Sightings;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;
using Keikocho.Store.Safety;
using Keikocho.Testing;

namespace Keikocho.App.Tests.PromotionTests;

/// <summary>Who is put forward, if, and not this time: the list, every reason, a decided verdict, the closed list.</summary>
public sealed partial class TestListTests
{
    [Fact]
    public async Task Without_a_syllabus_time_and_papers_are_there_and_the_page_says_what_the_items_need()
    {
        await using var club = await SpringClub.StartAsync();
        await club.JoinOfTheExampleAsync();
        var page = await club.TextAsync(club.Address());
        var words = SpringClub.Plain(page);
        Assert.Contains("the items need the ladder", words, StringComparison.Ordinal);
        Assert.Contains("href=\"/syllabus?programme=", page, StringComparison.Ordinal);
        Assert.Contains("12 of 14 lessons; if the child comes to 2 of the 4 lessons left", words, StringComparison.Ordinal);
        Assert.DoesNotContain("Close the list", words, StringComparison.Ordinal);
        Assert.DoesNotContain("<th scope=\"col\">Items</th>", page, StringComparison.Ordinal);
        Assert.Contains("1 child; items need a syllabus", await club.WordsAsync("/promotion-tests"), StringComparison.Ordinal);
        Assert.Contains("no syllabus holds on the day of the next test", await club.WordsAsync($"/students/{Child(club, "Wren")}"), StringComparison.Ordinal);
    }

    [Fact, Statement(100)]
    public async Task The_list_has_each_verdict_with_time_and_items_and_why_has_every_rule_figure_and_date()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var ada = await club.AlwaysThereAsync("Ada");
        await club.AllButOnceAsync(ada);
        await club.SeenAsync(ada, 5, 14, SeenWord.Good, "uki-goshi");
        var wren = await club.JoinOfTheExampleAsync();
        await club.AllButOnceAsync(wren);
        await club.JoinAsync("Tove", "Hollis", new DateOnly(2026, 5, 12));
        var words = await club.WordsAsync(club.Address());
        Assert.Contains("Put forward 1", words, StringComparison.Ordinal);
        Assert.Matches("Put forward Ada Hollis .*If Wren Hollis .*Not this time Tove Hollis", words);
        Assert.Contains("17 of 14 lessons", words, StringComparison.Ordinal);
        Assert.Contains("3 of 3 good, each on enough evenings", words, StringComparison.Ordinal);
        Assert.Contains("1 of 3 good Fall backward: seen clean before the break; to be shown again first: one evening Uki-goshi good once, on 5 May: once more", words, StringComparison.Ordinal);
        Assert.Contains("Instructor only", words, StringComparison.Ordinal);
        Assert.Contains("1 put forward, 1 if, 1 not this time", await club.WordsAsync("/promotion-tests"), StringComparison.Ordinal);
        var why = await club.WordsAsync($"{club.Address()}/children/{wren:D}");
        foreach (var said in new[]
        {
            "Attended 12 of the 17 lessons held by 14 May 2026",
            "12 of 14 lessons attended",
            "Uki-goshi: seen good on 5 May 2026; 2 evenings are asked",
            "Backward, stage 3 (standing): shut until shown again. 21 days off the mat, 31 March 2026 to 21 April 2026",
            "4 lessons are left before the test",
            "Wren comes to 2 of the 4 lessons left, falls clean at Fall backward",
            "Lessons attended before a test: 14 lessons",
        })
            Assert.Contains(said, why, StringComparison.Ordinal);
        foreach (var page in new[] { words, why })
            Assert.DoesNotMatch(Money(), page);
    }

    [Fact, Statement(58)]
    public async Task Children_with_the_same_evidence_have_the_same_verdict_in_the_same_words()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        foreach (var name in new[] { "Wren", "Bram" })
        {
            var child = await club.JoinOfTheExampleAsync(name);
            await club.AllButOnceAsync(child);
        }

        var rows = Rows().Matches(await club.TextAsync(club.Address())).Select(r => SpringClub.Plain(r.Value).Replace("Wren", "", StringComparison.Ordinal).Replace("Bram", "", StringComparison.Ordinal)).ToList();
        Assert.Equal(2, rows.Count);
        Assert.Equal(rows[0], rows[1]);
    }

    [Fact]
    public async Task A_sighting_and_a_stand_down_show_at_once()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var ada = await club.AlwaysThereAsync("Ada");
        await club.AllButOnceAsync(ada);
        Assert.Contains("If 1", await club.WordsAsync(club.Address()), StringComparison.Ordinal);
        await club.SeenAsync(ada, 5, 14, SeenWord.Good, "uki-goshi");
        Assert.Contains("Put forward 1", await club.WordsAsync(club.Address()), StringComparison.Ordinal);
        await club.FallAsync(ada, 5, 14, clean: false);
        Assert.Contains("Put forward 0", await club.WordsAsync(club.Address()), StringComparison.Ordinal);
        await club.House.StandDowns.EnterAsync(new NewStandDown(Guid.CreateVersion7(), ada, StandDownScope.NoFalls, club.Today, null, "the family"), club.Head, club.Tablet, SpringClub.Stop);
        Assert.Contains("Not this time 1", await club.WordsAsync(club.Address()), StringComparison.Ordinal);
    }

    [Fact, Statement(61)]
    public async Task A_registration_that_ends_before_the_test_is_asked_for_by_its_day()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var ada = await club.AlwaysThereAsync("Ada");
        await club.House.Writer.RunAsync(
            s =>
            {
                s.Db.Registrations.Add(new RegistrationRow { Club = s.Club, Id = s.NewId(), PersonId = ada, Expires = new DateOnly(2026, 5, 29), MadeAt = s.Now });
                s.Db.Clubs.Single().PeopleRevision++;
                s.Db.SaveChanges();
                return true;
            },
            SpringClub.Stop);
        Assert.Contains("registration ends 29 May: ask by 15 May", await club.WordsAsync(club.Address()), StringComparison.Ordinal);
    }

    [Fact, Statement(60)]
    public async Task A_verdict_is_decided_with_a_reason_never_past_a_safety_gate_and_can_be_taken_back()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var ada = await club.AlwaysThereAsync("Ada");
        await club.SeenAsync(ada, 5, 12, SeenWord.Good, "stop");
        var page = $"{club.Address()}/children/{ada:D}";
        Assert.Contains("The reason is missing", await club.RefusedAsync(page, $"{page}/overrule", ("verdict", "3"), ("reason", " ")), StringComparison.Ordinal);
        Assert.Contains("Choose what holds instead", await club.RefusedAsync(page, $"{page}/overrule", ("verdict", "9"), ("reason", "because")), StringComparison.Ordinal);
        Assert.Matches("An overrule never passes a safety gate: .*Fall backward", await club.RefusedAsync(page, $"{page}/overrule", ("verdict", "1"), ("reason", "falls well")));
        Assert.Empty(Overrules(club));
        await club.FallAsync(ada, 5, 5);
        await club.FallAsync(ada, 5, 12);
        var said = await club.TakenAsync(page, $"{page}/overrule", ("command", Guid.CreateVersion7().ToString("D")), ("verdict", "1"), ("reason", "both throws were shown at the school"));
        Assert.Contains("Ada: put forward, as decided.", said, StringComparison.Ordinal);
        Assert.Contains("Ruth Aldersey decided on 14 May 2026: put forward, where the sum says if. The reason: both throws were shown at the school.", said, StringComparison.Ordinal);
        Assert.Contains("Decided by Ruth Aldersey; the sum says if.", await club.WordsAsync(club.Address()), StringComparison.Ordinal);
        await club.FallAsync(ada, 5, 14, clean: false);
        Assert.Contains("The decision on record does not hold.", await club.WordsAsync(page), StringComparison.Ordinal);
        Assert.Contains("the decision is taken back", await club.TakenAsync(page, $"{page}/take-back", ("command", Guid.CreateVersion7().ToString("D"))), StringComparison.Ordinal);
        Assert.DoesNotContain("Decided by", await club.WordsAsync(club.Address()), StringComparison.Ordinal);
        Assert.Contains("Nothing was changed.", await club.TakenAsync(page, $"{page}/take-back", ("command", Guid.CreateVersion7().ToString("D"))), StringComparison.Ordinal);
        Assert.Equal([1, 0], Overrules(club));
        using var db = club.Db();
        Assert.Equal(2, db.Trail.Count(t => t.Kind == TrailKind.VerdictOverruled && t.SubjectId == ada));
    }

    [Fact, Statement(62)]
    public async Task Who_becomes_ready_after_the_list_was_closed_is_a_late_addition_to_decide()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var (ada, bram) = (await club.AlwaysThereAsync("Ada"), await club.AlwaysThereAsync("Bram"));
        await club.AllButOnceAsync(ada);
        await club.SeenAsync(ada, 5, 14, SeenWord.Good, "uki-goshi");
        await club.AllButOnceAsync(bram);
        var closed = await club.TakenAsync(club.Address(), $"{club.Address()}/close", ("command", Guid.CreateVersion7().ToString("D")));
        Assert.Contains("The list is closed with 1 child.", closed, StringComparison.Ordinal);
        Assert.Contains("It stands so already", await club.TakenAsync("/acting", $"{club.Address()}/close", ("command", Guid.CreateVersion7().ToString("D"))), StringComparison.Ordinal);
        using (var db = club.Db())
        {
            var kept = Assert.Single(db.KeptAnswers);
            Assert.Equal(("putForwardList", "put-forward-list 1", 32), (kept.Kind, kept.SumVersion, kept.InputHash.Length));
            Assert.DoesNotContain("Ada", Seal.Open(kept.Answer), StringComparison.Ordinal);
            Assert.False(await club.House.Calendar.RemoveTestAsync(club.TestId(), club.Head, club.Tablet, SpringClub.Stop));
        }

        await club.SeenAsync(bram, 5, 14, SeenWord.Good, "uki-goshi");
        await club.FallAsync(ada, 5, 14, clean: false);
        var words = await club.WordsAsync(club.Address());
        Assert.Contains("Late addition: Bram Hollis", words, StringComparison.Ordinal);
        Assert.Contains("No longer put forward: Ada Hollis", words, StringComparison.Ordinal);
        Assert.Matches("The closed list .*Ada Hollis , for White, one red tip", words);
        var basis = Basis().Match(await club.TextAsync(club.Address())).Groups[1].Value;
        (string, string)[] Decide(Guid child, string on) => [("command", Guid.CreateVersion7().ToString("D")), ("person", child.ToString("D")), ("basis", basis), ("on", on)];
        Assert.Contains("Bram Hollis is on the list.", await club.TakenAsync(club.Address(), $"{club.Address()}/decide", Decide(bram, "yes")), StringComparison.Ordinal);
        Assert.Contains("somebody decided elsewhere meanwhile", await club.TakenAsync(club.Address(), $"{club.Address()}/decide", Decide(ada, "no")), StringComparison.Ordinal);
        basis = Basis().Match(await club.TextAsync(club.Address())).Groups[1].Value;
        words = await club.TakenAsync(club.Address(), $"{club.Address()}/decide", Decide(ada, "no"));
        Assert.Matches("The closed list closed on 14 May 2026 Bram Hollis , for White, one red tip", words);
        Assert.DoesNotContain("To decide", words, StringComparison.Ordinal);
        Assert.Contains("Ada Hollis: not on the list, decided by Ruth Aldersey on 14 May 2026", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_is_no_instructor_reads_no_chance_and_decides_nothing()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var wren = await club.JoinOfTheExampleAsync();
        await club.ActAsync(await club.AddAdultAsync("Cora", "Ashby", DutyKind.Assistant));
        var page = $"{club.Address()}/children/{wren:D}";
        foreach (var address in new[] { club.Address(), page, $"/students/{wren:D}" })
        {
            var words = await club.WordsAsync(address);
            Assert.DoesNotContain("in 10", words, StringComparison.Ordinal);
            Assert.DoesNotContain("Instructor only", words, StringComparison.Ordinal);
        }

        Assert.Contains("An instructor decides this", await club.TakenAsync("/acting", $"{page}/overrule", ("verdict", "3"), ("reason", "too soon")), StringComparison.Ordinal);
        Assert.Contains("An instructor decides this", await club.TakenAsync("/acting", $"{club.Address()}/close", ("command", Guid.CreateVersion7().ToString("D"))), StringComparison.Ordinal);
        Assert.Empty(Overrules(club));
        using var db = club.Db();
        Assert.False(db.KeptAnswers.Any() || db.PromotionTests.Any(t => t.ListClosedAt != null));
    }

    [Fact]
    public async Task What_is_not_there_is_said_and_changes_nothing()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        await club.JoinOfTheExampleAsync();
        var nobody = Guid.CreateVersion7();
        foreach (var address in new[] { $"/promotion-tests/{nobody:D}", $"{club.Address()}/children/{nobody:D}", $"/promotion-tests/{nobody:D}/children/{nobody:D}" })
        {
            using var answer = await club.Browser.GetAsync(address, SpringClub.Stop);
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }

        Assert.Contains("Nothing was changed.", await club.TakenAsync(club.Address(), $"{club.Address()}/children/{nobody:D}/overrule", ("verdict", "3"), ("reason", "x")), StringComparison.Ordinal);
        Assert.Contains("Nothing was changed.", await club.TakenAsync(club.Address(), $"/promotion-tests/{nobody:D}/close", ("command", Guid.CreateVersion7().ToString("D"))), StringComparison.Ordinal);
        using (var bad = await club.PostAsync(club.Address(), $"{club.Address()}/close")) Assert.Equal(HttpStatusCode.BadRequest, bad.StatusCode);
        Assert.Empty(Overrules(club));
    }

    [Fact]
    public async Task The_childs_page_says_what_the_next_rank_asks_and_how_each_line_stands()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var wren = await club.JoinOfTheExampleAsync();
        await club.AllButOnceAsync(wren);
        await club.SeenAsync(wren, 5, 14, SeenWord.Prompted, "uki-goshi");
        var words = await club.WordsAsync($"/students/{wren:D}");
        foreach (var said in new[]
        {
            "For White, one red tip 1 of 3 good",
            "O-goshi seen good on 5 and 12 May",
            "Uki-goshi good once, on 5 May: once more",
            "Fall backward seen clean before the break; to be shown again first: one evening",
            "Stop answered right on 5 May",
            "The next test 30 May 2026",
            "and is seen good at Uki-goshi once more.",
            "to attend enough lessons, from the register.",
            "Lesson by lesson",
        })
            Assert.Contains(said, words, StringComparison.Ordinal);
        Assert.DoesNotMatch(Money(), words);
    }

    private static Guid Child(SpringClub club, string given)
    {
        using var db = club.Db();
        return db.People.AsEnumerable().Single(p => Seal.Open(p.Given) == given).Id;
    }

    private static List<int> Overrules(SpringClub club)
    {
        using var db = club.Db();
        return [.. db.Overrules.OrderBy(o => o.MadeAt).Select(o => o.Verdict)];
    }

    [GeneratedRegex(@"£|€|\$\d|\b(fees?|dues|paid|pay|owes?|money|price|cost)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Money();

    [GeneratedRegex("<tr>\\s*<th scope=\"row\">.*?</tr>", RegexOptions.Singleline)]
    private static partial Regex Rows();

    [GeneratedRegex("name=\"basis\" value=\"([^\"]+)\"")]
    private static partial Regex Basis();
}
