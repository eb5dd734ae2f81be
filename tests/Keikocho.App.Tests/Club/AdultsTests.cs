using Keikocho.Store.People;

namespace Keikocho.App.Tests.Club;

public sealed class AdultsTests
{
    [Fact]
    public async Task An_adult_is_added_once_however_often_the_form_is_sent()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var form = Form(desk);
        Assert.Equal("Piet is on the list as assistant. Counted among the adults when marked present.", await desk.TakenAsync("/club/adults/add", form));
        Assert.StartsWith("Piet was on the list already.", await desk.TakenAsync("/club/adults/add", form), StringComparison.Ordinal);
        var duty = Assert.Single(desk.Book().Duties, d => d.Kind == DutyKind.Assistant);
        Assert.Equal((new DateOnly(2027, 6, 1), new DateOnly(2027, 3, 1)), (duty.VettedUntil, duty.FirstAidUntil));
        Assert.True(desk.Book().Person(duty.PersonId)!.SeenAdult);
        Assert.Contains("assistant; vetted until 1 June 2027; first aid until 1 March 2027", await desk.PageAsync("/club"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("adult-given", "", "The first name is missing. Type what the adult is called.")]
    [InlineData("adult-born", "2009-11-26", "Born on 26 November 2009 is 16 today. Under 18 the duty is junior leader, who is never counted as an adult.")]
    [InlineData("adult-born", "2026-11-26", "26 November 2026 is still to come. Type the birth date.")]
    [InlineData("adult-born", "1816-11-26", "26 November 1816 is too far away. Type a day from 1916 to 2100.")]
    [InlineData("adult-vetted", "next June", "“next June” is no date. Type it like 2026-03-03.")]
    [InlineData("adult-duty", "Sensei", "Choose the duty.")]
    public async Task An_adult_who_cannot_be_is_refused_with_a_sentence(string field, string value, string sentence)
    {
        await using var desk = await ClubDesk.FreshAsync();
        var html = await desk.RefusedAsync("/club/adults/add", Form(desk, (field, value)));
        Assert.Contains($"<a href=\"#{field}\">{sentence}</a>", html, StringComparison.Ordinal);
        Assert.Contains("value=\"Vos\"", html, StringComparison.Ordinal);
        Assert.Single(desk.Book().Duties);
    }

    [Fact]
    public async Task Eighteen_today_is_an_adult_and_no_junior_leader()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var html = await desk.RefusedAsync("/club/adults/add", Form(desk, ("adult-born", "2008-11-25"), ("adult-duty", "JuniorLeader")));
        Assert.Contains("Born on 25 November 2008 is 18 today. A junior leader is under 18", html, StringComparison.Ordinal);
        await desk.TakenAsync("/club/adults/add", Form(desk, ("adult-born", "2008-11-25")));
        Assert.Equal(2, desk.Book().Duties.Length);
    }

    [Fact]
    public async Task The_dates_of_a_duty_change_and_lapsed_vetting_is_said()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.TakenAsync("/club/adults/add", Form(desk));
        var duty = desk.Book().Duties.Single(d => d.Kind == DutyKind.Assistant);
        var key = $"duty-{duty.Id:N}-";
        var said = await desk.TakenAsync("/club/adults/change", ("duty", duty.Id.ToString()), (key + "vetted", "2026-11-24"), (key + "aid", ""));
        Assert.Equal("The dates of Piet Vos are saved. Not counted among the adults until vetting holds.", said);
        Assert.Contains("vetting ended 24 November 2026, not counted", await desk.PageAsync("/club"), StringComparison.Ordinal);
        await desk.RefusedWithAsync("/club/adults/change", key + "aid", "“later” is no date. Type it like 2026-03-03.", ("duty", duty.Id.ToString()), (key + "vetted", "2026-11-24"), (key + "aid", "later"));
    }

    [Fact]
    public async Task An_assistant_of_eighteen_may_be_let_confirm_falls_and_nobody_younger()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.TakenAsync("/club/adults/add", Form(desk));
        var duty = desk.Book().Duties.Single(d => d.Kind == DutyKind.Assistant);
        var head = desk.Book().Duties.Single(d => d.Kind == DutyKind.HeadInstructor);
        var field = $"duty-{duty.Id:N}-falls";
        Assert.False(duty.MayConfirmFalls);
        var page = await desk.PageAsync("/club");
        Assert.Contains("falls are suggestions", page, StringComparison.Ordinal);
        Assert.DoesNotContain($"duty-{head.Id:N}-falls", page, StringComparison.Ordinal);
        Assert.StartsWith("Piet Vos may confirm falls from now on.", await desk.TakenAsync("/club/adults/falls", ("duty", duty.Id.ToString()), (field, "yes")), StringComparison.Ordinal);
        Assert.True(desk.Book().Duties.Single(d => d.Id == duty.Id).MayConfirmFalls);
        Assert.StartsWith("Piet Vos may not confirm falls any more.", await desk.TakenAsync("/club/adults/falls", ("duty", duty.Id.ToString()), (field, "no")), StringComparison.Ordinal);
        await desk.TakenAsync("/club/adults/add", Form(desk, ("adult-person", Guid.CreateVersion7().ToString()), ("adult-given", "Juno"), ("adult-born", "2009-11-26"), ("adult-duty", "JuniorLeader")));
        var leader = desk.Book().Duties.Single(d => d.Kind == DutyKind.JuniorLeader);
        Assert.DoesNotContain($"duty-{leader.Id:N}-falls", await desk.PageAsync("/club"), StringComparison.Ordinal);
        Assert.Contains("Juno Vos is a junior leader.", await desk.RefusedAsync("/club/adults/falls", ("duty", leader.Id.ToString()), ($"duty-{leader.Id:N}-falls", "yes")), StringComparison.Ordinal);
        using (var db = desk.Db())
        {
            // As a file would bring it: an assistant whose birth date says seventeen.
            db.Duties.Single(d => d.Id == leader.Id).Kind = DutyKind.Assistant;
            db.Clubs.Single().PeopleRevision++;
            db.SaveChanges();
        }

        Assert.Contains("Juno Vos is 16 today. Only from 18 on may somebody confirm falls.", await desk.RefusedAsync("/club/adults/falls", ("duty", leader.Id.ToString()), ($"duty-{leader.Id:N}-falls", "yes")), StringComparison.Ordinal);
        Assert.False(desk.Book().Duties.Single(d => d.Id == leader.Id).MayConfirmFalls);
    }

    [Fact]
    public async Task A_duty_ends_but_not_that_of_the_only_head_instructor()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.TakenAsync("/club/adults/add", Form(desk));
        var book = desk.Book();
        var head = book.Duties.Single(d => d.Kind == DutyKind.HeadInstructor);
        var field = $"duty-{head.Id:N}-last";
        await desk.RefusedWithAsync("/club/adults/end", field, "Maren Holt is the only head instructor. Add the next one first.", ("duty", head.Id.ToString()), (field, "2026-12-01"));
        var other = book.Duties.Single(d => d.Kind == DutyKind.Assistant);
        field = $"duty-{other.Id:N}-last";
        await desk.RefusedWithAsync("/club/adults/end", field, "The duty only begins on 25 November 2026. Type that day or a later one.", ("duty", other.Id.ToString()), (field, "2026-11-24"));
        Assert.StartsWith("Piet Vos: last day as assistant is 25 November 2026.", await desk.TakenAsync("/club/adults/end", ("duty", other.Id.ToString()), (field, "2026-11-25")), StringComparison.Ordinal);
        desk.Time.Step(TimeSpan.FromDays(1));
        Assert.Contains("assistant, until 25 November 2026", await desk.PageAsync("/club"), StringComparison.Ordinal);
    }

    private static (string, string)[] Form(ClubDesk desk, params (string Name, string Value)[] other)
    {
        (string Name, string Value)[] form =
        [
            ("adult-person", Guid.CreateVersion7(desk.Time.GetUtcNow()).ToString()), ("adult-given", "Piet"), ("adult-family", "Vos"), ("adult-duty", "Assistant"),
            ("adult-born", ""), ("adult-vetted", "2027-06-01"), ("adult-aid", "2027-03-01"),
        ];
        return [.. form.Where(f => other.All(o => o.Name != f.Name)), .. other];
    }
}
