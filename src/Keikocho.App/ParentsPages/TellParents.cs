using Keikocho.App.Club;
using Keikocho.App.Papers;
using Keikocho.App.PromotionTests;
using Keikocho.Core.Kernel;
using Keikocho.Core.Readiness;
using Keikocho.Store.Kernel;
using Keikocho.Store.Promotion;

namespace Keikocho.App.ParentsPages;

/// <summary>Puts the question of the parent's page together from the answer of the test and from the register.</summary>
public static class TellParents
{
    /// <summary>What the family is told now.</summary>
    public static ToldPage Of(OpenClub club, PaperTest test, TestList list, TestChild child)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(child);
        ArgumentNullException.ThrowIfNull(list);
        return Of(club, list, child, Question(club, test, list, child));
    }

    /// <summary>What the family is told, from a question that was put together before.</summary>
    public static ToldPage Of(OpenClub club, TestList list, TestChild child, ParentsPageSnapshot question)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(list);
        ArgumentNullException.ThrowIfNull(child);
        ArgumentNullException.ThrowIfNull(question);
        return new ToldPage(club.Book.Club.Name, question.Child, question.SpeakTo, list.TestOn, list.AsOf, ParentsPage.Write(question), child.Answer.Settings);
    }

    /// <summary>The question.</summary>
    public static ParentsPageSnapshot Question(OpenClub club, PaperTest test, TestList list, TestChild child)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(test);
        ArgumentNullException.ThrowIfNull(list);
        ArgumentNullException.ThrowIfNull(child);
        var lessons = LessonsOfChild.Of(club, test.Programme, child.Person.Id, list.AsOf);
        var (attended, held) = lessons.ThisTerm();
        DateOnly? closed = test.Test.ListClosedAt is { } at ? club.Clock.DayOf(at) : null;
        var kept = closed is not null && TestReader.ListOf(club.Reading, test.Test.Id) is { } row ? SumJson.Read<KeptList>(Seal.Open(row.Answer)) : null;
        bool? was = kept?.Children.Any(c => c.Person == child.Person.Id && c.Verdict == ReadyWord.PutForward);
        return new ParentsPageSnapshot(
            child.Person.CallName,
            child.Answer,
            child.Sheet!,
            list.AsOf,
            attended,
            held,
            closed > list.TestOn ? list.TestOn : closed,
            lessons.UnitsMissed(),
            PaperTest.SpeakTo(club),
            was,
            was == false ? kept!.LastOf(child.Person.Id)?.OnIt : null,
            child.WhichList.Count > 0 ? child.WhichList : null);
    }
}
