using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.People;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Kernel;
using Keikocho.Core.Readiness;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Promotion;

namespace Keikocho.App.PromotionTests;

/// <summary>One child on the list.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">Full name.</param>
/// <param name="Verdict">The verdict that holds.</param>
/// <param name="Time">Time and papers.</param>
/// <param name="Items">The items; null where no edition says any.</param>
/// <param name="For">The belt that is tested for; the belt that is worn where no edition says it.</param>
/// <param name="Chance">For the instructor only; null for anybody else, and where there is nothing to ask.</param>
/// <param name="Decided">A verdict that an instructor set, in words; null for none.</param>
/// <param name="Standing">Toward the closed list; <see cref="ListStanding.NotOnIt"/> while it is open.</param>
public sealed record TestLine(
    Guid PersonId, string Name, ReadyWord Verdict, string Time, string? Items, WornBelt For, string? Chance, string? Decided, ListStanding Standing)
{
    private const int MostOpen = 3;

    /// <summary>How many lines are good; null where no edition says any.</summary>
    public string? Good => Items?.Split("; ", 2)[0];

    /// <summary>The first lines that are still open, a phrase each.</summary>
    public ImmutableArray<string> Open { get; init; } = [];

    /// <summary>The open lines that stand one below the other, and how many more there are.</summary>
    public IEnumerable<string> Missing => Open.Length <= MostOpen ? Open : Open.Take(MostOpen).Append($"and {Shared.Counted.Of(Open.Length - MostOpen, "more line")}");
}

/// <summary>One child of a closed list of a test that is over.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">Full name.</param>
/// <param name="Rank">What was tested for.</param>
/// <param name="Words">Time and items as they stood.</param>
public sealed record KeptLine(Guid PersonId, string Name, string Rank, string Words);

/// <summary>One promotion test: who is put forward, if, and not this time, with every reason a step away.</summary>
/// <param name="Test">The test.</param>
/// <param name="Programme">Its programme.</param>
/// <param name="List">The list; null once the test is over.</param>
/// <param name="Lines">Everybody, in register order.</param>
/// <param name="Kept">The closed list; null while it is open, and for a test that went by without one.</param>
/// <param name="KeptId">Its id, for a decision.</param>
/// <param name="ClosedWords">When and by whom it was closed.</param>
/// <param name="OnTheList">Who is on the closed list.</param>
/// <param name="LaterEdition">An edition that holds only from after the test; null otherwise.</param>
public sealed record TestView(
    PromotionTestRow Test,
    ProgrammeRow Programme,
    TestList? List,
    ImmutableArray<TestLine> Lines,
    KeptList? Kept,
    Guid KeptId,
    string ClosedWords,
    ImmutableArray<KeptLine> OnTheList,
    string? LaterEdition)
{
    /// <summary>Reads it; null when there is no such test.</summary>
    public static TestView? Of(OpenClub club, TestReckoning tests, Guid id)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(tests);
        var book = club.Book;
        if (book.Tests.FirstOrDefault(t => t.Id == id) is not { } test || book.Programme(test.ProgrammeId) is not { } programme) return null;
        var list = test.Date < club.Today ? null : tests.Of(club, test);
        var row = test.ListClosedAt is null ? null : TestReader.ListOf(club.Reading, id);
        var kept = row is null ? null : SumJson.Read<KeptList>(Store.Kernel.Seal.Open(row.Answer));
        var closed = test.ListClosedAt is { } at ? club.Clock.DayOf(at).Full() : "";
        var own = club.InstructorActs;
        return new TestView(
            test,
            programme,
            list,
            list is null ? [] : [.. list.Children.Select(c => LineOf(c, kept, own))],
            kept,
            row?.Id ?? Guid.Empty,
            closed,
            kept is null ? [] : [.. kept.Children.Where(c => kept.IsOn(c.Person)).Select(c => new KeptLine(c.Person, NameOf(book, c.Person), c.Rank, $"{c.Time}; {c.Items}"))],
            list is { Edition: null } ? book.NewestEdition(programme.LadderId) is { } later ? $"{later.Name} holds from {later.From.Full()} on, after this test." : null : null);
    }

    /// <summary>Lines of one verdict, in register order.</summary>
    public ImmutableArray<TestLine> Of(ReadyWord verdict) => [.. Lines.Where(l => l.Verdict == verdict)];

    /// <summary>Who waits for a decision since the list was closed.</summary>
    public ImmutableArray<TestLine> ToDecide => [.. Lines.Where(l => l.Standing is ListStanding.LateAdditionToDecide or ListStanding.NoLongerReadyToDecide)];

    /// <summary>Whether verdicts stand on this page: the items say what is missing only where an edition holds.</summary>
    public bool HasVerdicts => List?.Edition is not null;

    private static TestLine LineOf(TestChild child, KeptList? kept, bool own)
    {
        var answer = child.Answer;
        return new TestLine(
            child.Person.Id,
            child.Person.FullName,
            answer.Verdict,
            answer.TimeSaid,
            child.Target is null ? null : Capital(answer.ItemsSaid),
            child.Target is { } target ? BeltOf(target) : child.Worn is { } worn ? WornBelt.Of(worn) : WornBelt.None,
            own && child.Target is not null && answer is { Verdict: ReadyWord.If, Forecast: { Chance: not null, Days.Count: > 0 } forecast } ? forecast.Words : null,
            answer.Overrule is { } overrule ? $"Decided by {overrule.By}; the sum says {VerdictWords.Of(answer.Reckoned)}" : answer.OverruleRefused is null ? null : "A decision on record does not hold: a safety gate is shut",
            kept is null ? ListStanding.NotOnIt : kept.StandingOf(child.Person.Id, answer.Verdict))
        {
            Open = [.. answer.Lines.Where(l => !l.Met).Select(l => l.Said).OfType<string>()],
        };
    }

    /// <summary>The belt of a rank of an edition, drawn where the look has its cloth and tips.</summary>
    public static WornBelt BeltOf(LadderRank rank)
    {
        ArgumentNullException.ThrowIfNull(rank);
        return rank.Tips > 2 || !Enum.TryParse<BeltCloth>(rank.Cloth, ignoreCase: true, out var cloth) ? new WornBelt(null, 0, rank.Name) : new WornBelt(cloth, rank.Tips, rank.Name);
    }

    /// <summary>A phrase as a sentence begins.</summary>
    public static string Capital(string phrase)
    {
        ArgumentException.ThrowIfNullOrEmpty(phrase);
        return $"{char.ToUpperInvariant(phrase[0])}{phrase[1..]}";
    }

    private static string NameOf(ClubBook book, Guid person) => book.Person(person) is { IsErased: false } known ? known.FullName : "a child whose name was erased";
}
