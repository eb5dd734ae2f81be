using Keikocho.Core.Intake;

namespace Keikocho.Core.Tests.Intake;

/// <summary>Ranks of a file without a ladder, hours of a register without any. The words are common practice, no source.</summary>
public sealed class RanksAndHoursTests
{
    [Theory]
    [InlineData("White belt", "white", 0)]
    [InlineData("WEISS", "white", 0)]
    [InlineData("ceinture jaune", "yellow", 0)]
    [InlineData("Yellow, one red tip", "yellow", 1)]
    [InlineData("yellow 2 tips", "yellow", 2)]
    [InlineData("orange (red tab)", "orange", 1)]
    [InlineData("white-yellow", null, 0)]
    [InlineData("green 3 stripes", null, 0)]
    [InlineData("stripy", null, 0)]
    [InlineData("red", null, 0)]
    [InlineData("5th kyu", null, 0)]
    public void A_cloth_is_drawn_only_where_the_words_show_it(string words, string? cloth, int tips)
    {
        var read = RankWords.Read(words);
        Assert.Equal((cloth, tips), (read.Cloth, read.Tips));
    }

    [Fact]
    public void Colours_rise_with_second_colours_and_tips_between_them_and_spellings_are_one_rank()
    {
        var ladder = LadderFromWords.Draft(["orange", "white", "yellow-orange", "White belt", "yellow 2 tips", "yellow", "white", "white/yellow", ""], Answers.None);
        Assert.Empty(ladder.Doubts);
        Assert.Equal(["white", "white/yellow", "yellow", "yellow 2 tips", "yellow-orange", "orange"], ladder.Ranks.Select(rank => rank.Name));
        Assert.Equal(["white", "White belt"], ladder.Of("White belt")!.Spellings);
    }

    [Fact]
    public void Kyu_fall_and_mon_rise()
    {
        Assert.Equal(["6th kyu", "5. Kyu", "1 kyu"], LadderFromWords.Draft(["1 kyu", "6th kyu", "5. Kyu"], Answers.None).Ranks.Select(rank => rank.Name));
        Assert.Equal(["1st mon", "3 mon", "11th mon"], LadderFromWords.Draft(["11th mon", "3 mon", "1st mon"], Answers.None).Ranks.Select(rank => rank.Name));
    }

    [Fact]
    public void Words_that_show_nothing_are_asked_one_after_the_other_against_those_that_stand()
    {
        string[] words = ["Heron", "Otter", "Pike"];
        var first = LadderFromWords.Draft(words, Answers.None);
        var doubt = Assert.Single(first.Doubts);
        Assert.Equal("rank-place:otter", doubt.Key);
        Assert.Equal(["lowest", "above:heron", "leave-out"], doubt.Offers.Select(offer => offer.Code));
        var second = LadderFromWords.Draft(words, Answers.None.With(doubt.Key, "lowest"));
        Assert.Equal(["Otter", "Heron"], second.Ranks.Select(rank => rank.Name));
        Assert.Equal("rank-place:pike", second.Doubts.Single(d => !d.IsSettled).Key);
        var third = LadderFromWords.Draft(words, Answers.None.With(doubt.Key, "lowest").With("rank-place:pike", "above:otter"));
        Assert.Equal(["Otter", "Pike", "Heron"], third.Ranks.Select(rank => rank.Name));
        Assert.All(third.Doubts, d => Assert.True(d.IsSettled));
        Assert.Null(LadderFromWords.Draft(words, Answers.None.With(doubt.Key, "leave-out")).Of("Otter"));
    }

    [Theory]
    [InlineData("17:30-18:45", "17:30", "18:45")]
    [InlineData("=9.30 to 11:00", "09:30", "11:00")]
    [InlineData("=17:30–18:00", "17:30", "18:00")]
    [InlineData("=17:30", null, null)]
    [InlineData("=18:45-17:30", null, null)]
    [InlineData("=23:50-00:10", null, null)]
    [InlineData("=17:30-17:35", null, null)]
    public void Hours_are_read_or_asked_again(string given, string? start, string? end)
    {
        var (said, asked) = RegisterHours.Ask([new(2026, 9, 10)], [], Answers.None.With(RegisterHours.Key, given));
        Assert.Equal(start is not null, asked!.IsSettled);
        Assert.Equal((start, end), (said?.Start.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture), said?.End.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture)));
        if (said is null) Assert.Contains("is not an answer to this", asked.Sentence, StringComparison.Ordinal);
        Assert.Equal((null, null), RegisterHours.Ask([], [], Answers.None));
    }

    [Theory]
    [InlineData("Girl", "F")]
    [InlineData("m", "M")]
    [InlineData("weiblich", "F")]
    [InlineData("X", "X")]
    [InlineData("left-handed", "")]
    public void Sex_is_read_in_words_that_are_known(string word, string read) => Assert.Equal(read, SexWords.Read(word));

    [Fact]
    public void A_tap_in_time_and_a_sign_without_a_time_are_the_same_mark()
    {
        var person = new KnownPerson(new(new Guid(1, 0, 0, new byte[8])), new RosterChild { GivenName = "Ada", FamilyName = "Brook" });
        var days = new DateOnly[] { new(2026, 9, 1), new(2026, 9, 8), new(2026, 9, 15) };
        var sheet = Grids.Of("Name|2026-09-01|2026-09-08|2026-09-15\nAda Brook|P|L|17:20");
        var held = new Dictionary<(Keikocho.Core.Kernel.PersonId, DateOnly), RegisterSays>
        {
            [(person.Id, days[0])] = new(RegisterWord.Present, new TimeOnly(17, 28)),
            [(person.Id, days[1])] = new(RegisterWord.Late, new TimeOnly(17, 50)),
            [(person.Id, days[2])] = new(RegisterWord.Present, new TimeOnly(17, 20)),
        };
        var reading = ReadRegister.Read(new(sheet, new(2026, 11, 25), [person], held, ErasedPersons.None, Answers.None));
        Assert.Equal(3, reading.Count(MarkStanding.Same));
        held[(person.Id, days[0])] = new(RegisterWord.Late, new TimeOnly(17, 50));
        Assert.Equal(1, ReadRegister.Read(new(sheet, new(2026, 11, 25), [person], held, ErasedPersons.None, Answers.None)).Count(MarkStanding.Open));
    }
}
