using CsCheck;
using Keikocho.Core.Calendar;
using Keikocho.Core.Evening;

namespace Keikocho.Core.Tests.Calendar;

public sealed class UsualTimesTests
{
    // Common practice, no source: ten minutes of falls after a fifth of the lesson, half time in its middle.
    [Theory]
    [InlineData("17:30", "18:45", "17:45", "17:55", "18:07")]
    [InlineData("18:00", "19:00", "18:12", "18:22", "18:30")]
    [InlineData("10:00", "12:00", "10:24", "10:34", "11:00")]
    [InlineData("23:44", "23:59", "23:47", "23:57", "23:51")]
    public void Falls_begin_after_a_fifth_and_half_time_is_the_middle(string start, string end, string falls, string fallsEnd, string half) =>
        Assert.Equal(
            new LessonTimes(TimeOnly.Parse(start), TimeOnly.Parse(end), TimeOnly.Parse(falls), TimeOnly.Parse(fallsEnd), TimeOnly.Parse(half)),
            UsualTimes.Of(TimeOnly.Parse(start), TimeOnly.Parse(end)));

    [Fact]
    public void Of_any_lesson_of_two_minutes_or_more_the_times_are_in_order_and_inside_it() =>
        Gen.Select(Gen.Int[0, 1437], Gen.Int[2, 1439]).Where((start, length) => start + length <= 1439).Sample((start, length) =>
        {
            var bow = TimeOnly.MinValue.AddMinutes(start);
            var times = UsualTimes.Of(bow, bow.AddMinutes(length));
            times.Guard();
            return times.UkemiFrom >= times.Start && times.UkemiTo > times.UkemiFrom && times.UkemiTo <= times.End && times.HalfTime < times.End;
        });

    [Fact]
    public void Falls_end_with_the_lesson_when_it_has_no_ten_minutes_left_even_beside_midnight()
    {
        Assert.Equal(new TimeOnly(18, 45), UsualTimes.FallsEnd(new(18, 40), new(18, 45)));
        Assert.Equal(new TimeOnly(18, 45), UsualTimes.FallsEnd(new(18, 35), new(18, 45)));
        Assert.Equal(new TimeOnly(23, 59), UsualTimes.FallsEnd(new(23, 55), new(23, 59)));
    }

    [Fact]
    public void A_lesson_that_does_not_end_after_its_start_throws()
    {
        Assert.Throws<ArgumentException>(() => UsualTimes.Of(new(18, 0), new(18, 0)));
        Assert.Throws<ArgumentException>(() => UsualTimes.Of(new(23, 30), new(0, 30)));
    }
}
