using Keikocho.App.Club;
using Keikocho.Core.Safety;
using Keikocho.Store.Marks;
using Keikocho.Store.Safety;

namespace Keikocho.App.Knocks;

/// <summary>The earliest dates of a child after a knock, as the club knows it today.</summary>
public static class KnockSum
{
    /// <summary>The dates; null where no knock of the child counts.</summary>
    public static HeadKnockAnswer? Of(OpenClub club, Guid person, IReadOnlyList<HeldKnock> knocks, IEnumerable<HeldStandDown> standDowns)
    {
        ArgumentNullException.ThrowIfNull(club);
        var (book, today) = (club.Book, club.Today);
        var programmes = book.EnrolmentsOfPerson(person).Where(e => e.To is null || e.To >= today).Select(e => e.ProgrammeId).ToHashSet();
        DateOnly[] lessons = [.. programmes.SelectMany(p => book.LessonsOf(p)).Where(l => l.ClosureId is null && l.Date >= today).Select(l => l.Date).Distinct().Order()];
        DateOnly[] tests = [.. book.Tests.Where(t => programmes.Contains(t.ProgrammeId) && t.Date >= today).Select(t => t.Date).Distinct().Order()];
        var question = KnockQuestion.Of(
            knocks, standDowns, today, ClubRules.Knock(book, today), lessons, tests, id => book.Person(id) is { IsErased: false } adult ? adult.FullName : null);
        return question is null ? null : HeadKnock.Reckon(question);
    }

    /// <summary>Why a stand-down that a knock brought is not lifted yet, in sentences.</summary>
    public static string WhyNotLifted(OpenClub club, Guid person)
    {
        ArgumentNullException.ThrowIfNull(club);
        var answer = Of(club, person, KnockReader.OfPerson(club.Reading, person), EvidenceReader.StandDownsOf(club.Reading, [person])[person]);
        return answer is { Missing.Count: > 0 }
            ? $"A knock brought it. {string.Join(" ", answer.Missing.Select(m => m.Sentence))}"
            : $"A knock brought it: it is not lifted for a day before the earliest day{(answer?.FallsAndContact is { } day ? $", {Core.Kernel.PlainDate.Full(day)}" : "")}.";
    }
}
