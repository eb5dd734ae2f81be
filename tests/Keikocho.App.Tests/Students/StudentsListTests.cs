using System.Net;
using Keikocho.Core.Kernel;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Students;

/// <summary>The register of a programme.</summary>
public sealed class StudentsListTests
{
    [Fact]
    [Statement(12)]
    public async Task Two_of_one_first_name_show_a_second_part()
    {
        await using var club = await SpringClub.StartAsync();
        await club.JoinAsync("Noor", "Bakker", SpringClub.FirstLesson);
        await club.JoinAsync("Noor", "Dahl", SpringClub.FirstLesson);
        await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        var html = await club.TextAsync("/students");
        Assert.Contains(">Noor B.</a>", html, StringComparison.Ordinal);
        Assert.Contains(">Noor D.</a>", html, StringComparison.Ordinal);
        Assert.Contains(">Wren</a>", html, StringComparison.Ordinal);
        // Alone in a search, a child is called as on every other list.
        Assert.Contains(">Noor D.</a>", await club.TextAsync("/students?search=dahl"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ends_are_apart_and_inside_them_the_order_is_the_registers_not_that_of_nearness()
    {
        await using var club = await SpringClub.StartAsync();
        var far = await club.JoinAsync("Zeno", "Aker", new DateOnly(2026, 5, 12));
        var near = await club.JoinOfTheExampleAsync("Ada", "Brook");
        var main = await club.JoinAsync("Maud", "Cole", SpringClub.FirstLesson);
        await club.House.People.CrossAsync(main, club.Programme, MatEnd.Main, SpringClub.FirstLesson, null, club.Head, club.Tablet, SpringClub.Stop);
        var words = await club.WordsAsync("/students");
        int[] places = [At("Beginners’ end 2"), At("Zeno newcomer"), At("Ada 2 of the 4"), At("Main group 1"), At("Maud newcomer")];
        Assert.Equal(places.Order(), places);
        Assert.NotEqual(far, near);

        int At(string text)
        {
            var place = words.IndexOf(text, StringComparison.Ordinal);
            Assert.True(place >= 0, text);
            return place;
        }
    }

    [Fact]
    public async Task The_list_holds_no_contact_no_birth_date_no_size_nothing_medical_and_no_chance()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinOfTheExampleAsync();
        await club.House.People.ChangeDetailsAsync(child, new PersonDetails("Wren", "Hollis", null, new DateOnly(2017, 8, 9)), club.Head, club.Tablet, SpringClub.Stop);
        await club.House.Writer.RunAsync(s =>
        {
            s.Db.Sizes.Add(new SizeRow { Club = s.Club, Id = s.NewId(), PersonId = child, On = new DateOnly(2026, 3, 3), Grams = Seal.Close(31_750), ById = club.Head });
            s.Db.Notes.Add(new NoteRow { Club = s.Club, Id = s.NewId(), PersonId = child, Text = Seal.Close("inhaler in the bag"), Until = new DateOnly(2026, 7, 1), ById = club.Head, MadeAt = s.Now });
            s.Db.SaveChanges();
            return true;
        }, SpringClub.Stop);
        var html = await club.TextAsync("/students");
        foreach (var word in new[] { "07700", "2017", "31.7", "31750", " kg", "inhaler", "Hollis", " in 10", "years old" })
            Assert.DoesNotContain(word, html, StringComparison.Ordinal);
        var page = await club.TextAsync($"/students/{child}");
        foreach (var word in new[] { "31.7", "31750", " kg", "inhaler" })
            Assert.DoesNotContain(word, page, StringComparison.Ordinal);
        Assert.Contains("07700 900001", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("lucja", true)]
    [InlineData("ŁUCJA", true)]
    [InlineData("kow luc", true)]
    [InlineData("kova", false)]
    [InlineData("  ", true)]
    public async Task Names_are_found_without_accents_and_capitals_by_their_beginnings(string search, bool found)
    {
        await using var club = await SpringClub.StartAsync();
        await club.JoinAsync("Łucja", "Kowalska", SpringClub.FirstLesson);
        var html = await club.TextAsync($"/students?search={WebUtility.UrlEncode(search)}");
        Assert.Equal(found, html.Contains(">Łucja</a>", StringComparison.Ordinal));
        if (!found) Assert.Contains("Nobody on this register is called “kova”.", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_has_left_stands_on_a_list_of_their_own_with_the_last_day()
    {
        await using var club = await SpringClub.StartAsync();
        var gone = await club.JoinAsync("Ada", "Brook", SpringClub.FirstLesson);
        await club.House.People.EndEnrolmentAsync(gone, club.Programme, new DateOnly(2026, 4, 2), club.Head, club.Tablet, SpringClub.Stop);
        var words = await club.WordsAsync("/students");
        Assert.Contains("Former children 1, by last day Ada Brook to 2 April 2026", words, StringComparison.Ordinal);
        Assert.Contains("0 on the register", words, StringComparison.Ordinal);
        Assert.Contains("on this register to 2 April 2026", await club.WordsAsync($"/students/{gone}"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_club_without_children_says_what_to_do()
    {
        await using var club = await SpringClub.StartAsync();
        Assert.Contains("Nobody is on this register yet", await club.WordsAsync("/students"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_name_is_text_and_never_markup()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("<b>Bo", "\"&O'Neil", SpringClub.FirstLesson);
        foreach (var address in new[] { "/students", $"/students/{child}", "/students?search=%3Cb%3E" })
            Assert.DoesNotContain("<b>Bo", await club.Browser.GetStringAsync(address, SpringClub.Stop), StringComparison.Ordinal);
    }
}
