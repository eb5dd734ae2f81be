using Keikocho.Core.Syllabus;
using Keikocho.Paper.Sheets;
using Xunit;

namespace Keikocho.Paper.Tests;

public sealed class MinimaWordsTests
{
    [Fact]
    public void Nothing_asked_gives_no_sentence() => Assert.Empty(MinimaWords.Of(new Minima(), false, true));

    [Fact]
    public void Lessons_weeks_months_and_age_are_said() =>
        Assert.Equal(
            ["You need 1 lesson, 12 full weeks and 3 full months since your last belt.", "At most 2 lessons of one day count.", "A lesson counts from 45 minutes on.", "On the day of the test you are 8 or older."],
            MinimaWords.Of(new Minima(1, 12, 3, 8, LessonsADay: 2, ShortestLessonMinutes: 45, MostReductionPercent: 20, ExaminerIsNotTheCoach: true), false, false));

    [Fact]
    public void It_says_from_when_on_lessons_count()
    {
        Assert.Equal(["You need 14 lessons since your first lesson."], MinimaWords.Of(new Minima(14), true, false));
        Assert.Equal(["You need 14 lessons since the belt before your last one."], MinimaWords.Of(new Minima(14, CountedOverTwoRanks: true), false, false));
    }

    [Fact]
    public void The_year_may_count_instead_of_the_birthday() =>
        Assert.Equal(["You turn 8 in the year of the test, or are older."], MinimaWords.Of(new Minima(Age: 8, AgeBy: AgeBasis.CalendarYear), false, false));

    [Fact]
    public void Other_ages_stand_on_the_wall_and_not_on_a_childs_sheet()
    {
        var minima = new Minima(20, 10, ForAges: [new(new(null, 7), Lessons: 30), new(new(8, 10), Weeks: 8), new(new(16), 0, 0)], FastTrack: new(12, 3, 2));
        Assert.Equal(["You need 20 lessons and 10 full weeks since your last belt."], MinimaWords.Of(minima, false, false));
        Assert.Equal(
            [
                "You need 20 lessons and 10 full weeks since your last belt.", "Up to 7 years: 30 lessons and 10 full weeks.", "8 to 10 years: 20 lessons and 8 full weeks.",
                "Whoever starts at 12 or older may move up by as many as 3 ranks at each of the first 2 tests.",
            ],
            MinimaWords.Of(minima, false, true));
    }
}
