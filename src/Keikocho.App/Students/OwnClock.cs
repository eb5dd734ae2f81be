using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Calendar;
using Keikocho.Core.Kernel;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;

namespace Keikocho.App.Students;

/// <summary>One child's own clock, with everything that it rests on.</summary>
/// <param name="Lead">Put in bold: "If", "Enough lessons", "Not this time", "No test is set".</param>
/// <param name="Sentence">What follows it.</param>
/// <param name="Test">The day of the test; empty when none is set.</param>
/// <param name="Count">"7 of 9": attended of held.</param>
/// <param name="SinceWord">Since what is counted: "since this belt", "since the first lesson", "since joining".</param>
/// <param name="Reckoned">The evening just closed.</param>
/// <param name="Left">The lessons left, in words; empty when none is.</param>
/// <param name="Reasons">Every rule, figure and date.</param>
/// <param name="Settings">The settings used.</param>
/// <param name="Chance">The chance of enough lessons in words, for an instructor alone; null otherwise or when there is nothing to ask.</param>
/// <param name="ChanceBecause">The figures behind it.</param>
public sealed record OwnClock(
    string Lead,
    string Sentence,
    string Test,
    string Count,
    string SinceWord,
    string Reckoned,
    string Left,
    ImmutableArray<string> Reasons,
    ImmutableArray<UsedSetting> Settings,
    string? Chance,
    string? ChanceBecause)
{
    /// <summary>Puts a child's reckoning into words.</summary>
    /// <param name="club">The club.</param>
    /// <param name="programme">The programme.</param>
    /// <param name="person">The child.</param>
    /// <param name="reckoning">Everybody's.</param>
    /// <param name="reckoned">The child's.</param>
    /// <param name="byOlder">Whether the child is tested by the edition before the one that holds.</param>
    public static OwnClock Of(OpenClub club, ProgrammeRow programme, BookPerson person, ProgrammeReckoning reckoning, ChildReckoning reckoned, bool byOlder = false)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(programme);
        ArgumentNullException.ThrowIfNull(person);
        ArgumentNullException.ThrowIfNull(reckoning);
        ArgumentNullException.ThrowIfNull(reckoned);
        var (time, clock) = byOlder && reckoned.ByOlder is { } older ? (older.Time, older.Clock) : (reckoned.Time, reckoned.Clock);
        var (lead, sentence) = clock.Verdict switch
        {
            ClockVerdict.Enough => ("Enough lessons", "for the next test."),
            ClockVerdict.If some => ("If", $"{person.CallName} comes to {some.Words}."),
            ClockVerdict.NotThisTime { NextTestOn: { } next } => ("Not this time;", $"next test {next.Full()}."),
            ClockVerdict.NotThisTime => ("Not this time;", "no later test is set."),
            ClockVerdict.NoTestSet none => ("No test is set.", none.StillNeeded == 0 ? "Enough lessons." : $"{none.StillNeeded} more needed."),
            _ => throw new ArgumentOutOfRangeException(nameof(reckoned), clock.Verdict, "There is no such verdict."),
        };
        var left = reckoning.TestOn is { } test
            ? club.Book.LessonsOf(programme.Id).Where(l => l.Date > reckoning.AsOf && l.Date < test && l.ClosureId is null && time.IsLongEnough(l)).Select(l => l.Date.Brief()).ToList()
            : [];
        // Only an instructor reads a chance; the adult who holds this device says who reads.
        var asks = clock.Verdict is ClockVerdict.If && ReferenceEquals(clock, reckoned.Clock) && club.InstructorActs;
        return new OwnClock(
            lead,
            sentence,
            reckoning.TestOn?.Full() ?? "",
            $"{clock.Attended} of {clock.Held}",
            time.LessonsFrom is not null ? "over two belts" : reckoned.FromPromotion ? "since this belt" : reckoned.FromJoining ? "since joining" : "since the first lesson",
            $"Reckoned after {reckoning.AsOf.WithWeekday()}.",
            left.Count switch
            {
                0 => "",
                1 => $"One lesson is left: {left[0]}.",
                _ => $"{left.Count} lessons are left: {string.Join(", ", left.Take(left.Count - 1))} and {left[^1]}.",
            },
            [.. clock.Reasons.Select(r => r.Sentence)],
            UsedSetting.Of(clock.Settings, ClockRule.Settings),
            asks ? reckoned.Chance.Words : null,
            asks ? reckoned.Chance.Because.Sentence : null);
    }
}
