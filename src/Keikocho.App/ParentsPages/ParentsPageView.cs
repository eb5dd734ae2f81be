using Keikocho.App.Club;
using Keikocho.App.Papers;
using Keikocho.App.PromotionTests;
using Keikocho.Core.Kernel;
using Keikocho.Store.Book;
using Keikocho.Store.Promotion;

namespace Keikocho.App.ParentsPages;

/// <summary>A paper that was kept.</summary>
/// <param name="Id">Which.</param>
/// <param name="When">"14 May 2026, 20:10".</param>
/// <param name="Words">What, for which test, by whom.</param>
/// <param name="IsSheet">A requirement sheet; else a parent's page.</param>
public sealed record HeldLine(Guid Id, string When, string Words, bool IsSheet);

/// <summary>The parent's page of one child as it would be told now, and everything that was kept as it was told.</summary>
/// <param name="Person">The child.</param>
/// <param name="Tests">Tests to come of the child's programmes, the next first.</param>
/// <param name="Test">The test that it is about; null where there is none.</param>
/// <param name="Told">What the family is told now; null where there is nothing to tell.</param>
/// <param name="WhyNot">Why there is nothing to tell.</param>
/// <param name="Kept">What was kept, newest first.</param>
public sealed record ParentsPageView(
    BookPerson Person,
    IReadOnlyList<(Guid Id, string Words)> Tests,
    PaperTest? Test,
    ToldPage? Told,
    string? WhyNot,
    IReadOnlyList<HeldLine> Kept)
{
    /// <summary>Reads it; null when nobody of this id is or was on a register.</summary>
    /// <param name="club">The club.</param>
    /// <param name="reckoning">The tests.</param>
    /// <param name="id">The child.</param>
    /// <param name="test">The test; null for the next of the child's programmes.</param>
    public static ParentsPageView? Of(OpenClub club, TestReckoning reckoning, Guid id, Guid? test)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(reckoning);
        if (club.Book.Person(id) is not { IsErased: false } person || club.Book.EnrolmentsOfPerson(id).Length == 0) return null;
        var own = club.Book.EnrolmentsOfPerson(id).Where(e => e.To is null || e.To >= club.Today).Select(e => e.ProgrammeId).ToHashSet();
        var tests = PaperTest.Offered(club).Where(t => own.Contains(t.ProgrammeId)).ToList();
        IReadOnlyList<(Guid, string)> offered = [.. tests.Select(t => (t.Id, PaperTest.Of(club, t).Words))];
        IReadOnlyList<HeldLine> kept = [.. KeptAnswerStore.Of(club.Db, id).Select(k => Line(club, k))];
        var chosen = (tests.FirstOrDefault(t => t.Id == test) ?? tests.FirstOrDefault()) is { } row ? PaperTest.Of(club, row) : null;
        if (chosen is null) return new ParentsPageView(person, offered, null, null, "No promotion test is set from today on for a register that this child is on.", kept);
        if (SheetEndpoints.One(club, reckoning, chosen.Test.Id.ToString("D"), id.ToString("D"), out var error) is not { } one)
            return new ParentsPageView(person, offered, chosen, null, error!.Sentence, kept);
        return new ParentsPageView(person, offered, chosen, TellParents.Of(club, one.Test, one.List, one.Child), null, kept);
    }

    /// <summary>A kept paper in words.</summary>
    internal static HeldLine Line(OpenClub club, HeldAnswer held)
    {
        var test = KeptPaper.ReadPage(held)?.TestOn ?? KeptPaper.ReadSheet(held)?.Sheet.TestOn;
        var isSheet = held.Kind == KeptAnswerStore.Sheet;
        var by = held.ById is { } adult && club.Book.Person(adult) is { IsErased: false } person ? $", by {person.FullName}" : "";
        return new HeldLine(
            held.Id,
            $"{club.Clock.DayOf(held.MadeAt).Full()}, {club.Clock.TimeOf(held.MadeAt).Plain()}",
            $"{(isSheet ? "requirement sheet" : "parent’s page")} for the test on {test?.Full()}{by}",
            isSheet);
    }
}
