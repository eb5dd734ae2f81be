using System.Globalization;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>
/// The parent's page from the same facts as the verdict: one child, no average, no order, no score, no chance; readable aloud. What
/// only instructors may see (suggestions, adults who disagree, why a verdict was set by hand) stays out.
/// </summary>
public static class ParentsPage
{
    /// <summary>Version of this sum, kept with each page that was given out.</summary>
    public const string SumVersion = "parents-page 1";

    /// <summary>Writes the page.</summary>
    /// <exception cref="ArgumentException">Counts out of range, or a name missing.</exception>
    public static ParentsPageAnswer Write(ParentsPageSnapshot snapshot)
    {
        Guard(snapshot);
        var sheet = snapshot.Sheet;
        var sections = new List<PageSection>();
        Add(sections, "What is secure", Secure(snapshot));
        Add(sections, "What is not yet", NotYet(snapshot));
        Add(sections, "What would change it", Change(snapshot));
        Add(sections, "The list has changed", [.. snapshot.WhichList ?? []]);
        Add(sections, "Taught while away", [.. snapshot.UnitsMissed.Select(Missed)]);
        Add(sections, "When", When(snapshot));
        Add(sections, "Whom to ask", [$"{snapshot.SpeakTo.Trim()} will gladly talk about it, before or after a lesson."]);
        return new ParentsPageAnswer($"{snapshot.Child.Trim()}: {sheet.RankName}", Opening(snapshot), sections, SumVersion);
    }

    private static List<string> Opening(ParentsPageSnapshot snapshot)
    {
        var (answer, test) = (snapshot.Answer, snapshot.Sheet.TestOn);
        var said = new List<string>
        {
            snapshot.Held == 0
                ? $"No lesson was held for {snapshot.Child.Trim()} this term by {snapshot.AsOf.Full()}."
                : $"{snapshot.Child.Trim()} attended {snapshot.Attended} of the {Words.Count(snapshot.Held, "lesson")} held this term by {snapshot.AsOf.Full()}.",
            $"{answer.LinesMet} of the {Words.Count(answer.Lines.Count, "thing")} asked for {snapshot.Sheet.RankName} {Words.Is(answer.LinesMet)} secure.",
        };
        var verdict = answer.Verdict switch
        {
            ReadyWord.PutForward when Late(snapshot) is { } late => late,
            ReadyWord.PutForward => $"{snapshot.Child.Trim()} is put forward for the test on {test.WithWeekday()}.",
            ReadyWord.If => $"{snapshot.Child.Trim()} can be put forward for the test on {test.WithWeekday()}, if what is written below is done.",
            _ => $"It is not this time, at the test on {test.WithWeekday()}; what is secure stays.",
        };
        said.Add(verdict);
        if (answer.Overrule is not null && answer.Verdict != answer.Reckoned)
            said.Add($"An instructor decided this; {snapshot.SpeakTo.Trim()} will explain it.");
        return said;
    }

    /// <summary>Ready after the list was closed: the instructor decides, then the page says which.</summary>
    private static string? Late(ParentsPageSnapshot snapshot)
    {
        if (snapshot.ListClosedOn is not { } closed || snapshot.Answer.Verdict != ReadyWord.PutForward)
            return null;
        var became = PutForwardList.BecameGoodOn(snapshot.Answer.Lines);
        if (!(snapshot.OnTheList is { } on ? !on : became > closed))
            return null;
        var test = snapshot.Sheet.TestOn;
        var since = became is { } day && day > closed
            ? $"The list was closed on {closed.WithWeekday()}, {Days(day.DayNumber - closed.DayNumber)} before everything was secure"
            : $"The list was closed on {closed.WithWeekday()}, before everything was ready";
        return snapshot.LateAddition switch
        {
            true => $"{since}; {snapshot.Child.Trim()} was added late for the test on {test.WithWeekday()}.",
            false => $"{since}; {snapshot.Child.Trim()} is not added for the test on {test.WithWeekday()}.",
            null => $"{since}; whether to add {snapshot.Child.Trim()} late for the test on {test.WithWeekday()} is for the instructor to decide.",
        };
    }

    private static List<string> Secure(ParentsPageSnapshot snapshot)
    {
        var lines = snapshot.Answer.Lines.Where(l => l.Met).SelectMany(l => l.Items.Where(i => i.IsMet));
        return NewestFirst(lines, snapshot, i => i.Word switch
        {
            ItemStandingWord.Kept => $"{i.Name}: kept from an earlier test.",
            ItemStandingWord.CreditedByRank => $"{i.Name}: counted with the rank worn on coming to us.",
            _ => $"{i.Name}: {SeenWords(i, snapshot)}.",
        });
    }

    private static List<string> NotYet(ParentsPageSnapshot snapshot)
    {
        var said = new List<string>();
        var left = snapshot.Answer.Lines.Where(l => !l.Met).ToArray();
        said.AddRange(NewestFirst(left.SelectMany(l => l.Items.Where(i => !i.IsMet)), snapshot, i => NotYet(i, snapshot)));
        said.AddRange(NewestFirst(left.SelectMany(l => l.Items.Where(i => i.IsMet)), snapshot, i => $"{i.Name}, one of a choice: {SeenWords(i, snapshot)}, and stays."));
        return said;
    }

    private static string NotYet(ItemStanding item, ParentsPageSnapshot snapshot)
    {
        var more = item.EveningsMissing == 1 ? "once more" : $"on {ReadinessPhrases.Evenings(item.EveningsMissing)}";
        if (item.Because is FallCounted fall)
        {
            if (fall.StandsDown)
                return $"{item.Name}: no falls for now; to be shown again first, {more}.";
            var side = fall.Side == FallSide.None ? "" : $"{ReadinessPhrases.To(fall.Side)} ";
            var shown = (fall.KeptUntil is null ? "" : "kept from an earlier test; ") + side + SeenWords(item, snapshot);
            return fall.AwayFirst ? $"{item.Name}: {shown}, before a break; to be shown again first, {more}." : $"{item.Name}: {shown}; to be seen clean {more}.";
        }

        var kind = item.Because is ItemCounted counted ? counted.Kind : ItemKind.Throw;
        var old = item.Word == ItemStandingWord.GoodNotFresh ? ", a while before the test" : "";
        return item.EveningsGood == 0
            ? $"{item.Name}: not yet {ReadinessPhrases.Seen(kind)}; to be {ReadinessPhrases.Seen(kind)} {(item.EveningsMissing == 1 ? "on one evening" : more)}."
            : $"{item.Name}: {SeenWords(item, snapshot)}{old}; {more}.";
    }

    private static string SeenWords(ItemStanding item, ParentsPageSnapshot snapshot)
    {
        if (item.Because is FallCounted fall)
        {
            var touched = fall.TouchedOn is { } on ? $"the head touched on {ReadinessPhrases.Day(on, snapshot.AsOf)}; " : "";
            var clean = fall.CleanOn.Count == 0 ? "not yet seen clean" : $"seen clean on {ReadinessPhrases.Days(ReadinessPhrases.Latest(fall.CleanOn), snapshot.AsOf)}";
            return touched + clean;
        }

        var kind = item.Because is ItemCounted counted ? counted.Kind : ItemKind.Throw;
        var days = item.SeenOn.Count == 0 ? "" : $" on {ReadinessPhrases.Days(item.SeenOn, snapshot.AsOf)}";
        return ReadinessPhrases.Seen(kind) + days + (item.Word == ItemStandingWord.MetByHarderForm ? ", by a harder form" : "");
    }

    private static List<string> Change(ParentsPageSnapshot snapshot)
    {
        var answer = snapshot.Answer;
        if (answer.Verdict == ReadyWord.PutForward)
            return [];
        if (answer.Reckoned == ReadyWord.PutForward)
            return [$"Nothing is missing on the sheet; {snapshot.SpeakTo.Trim()} will say what is waited for."];
        return [.. answer.Conditions.Select(c => c.Sentence)];
    }

    private static List<string> When(ParentsPageSnapshot snapshot)
    {
        var said = new List<string>();
        var (answer, late) = (snapshot.Answer, Late(snapshot));
        var test = $"The test is on {snapshot.Sheet.TestOn.WithWeekday()}.";
        var next = answer.NextTestOn is { } on ? on.WithWeekday() : null;
        if (answer.Verdict != ReadyWord.NotThisTime && !(late is not null && snapshot.LateAddition == false))
            said.Add(test);
        if (snapshot.ListClosedOn is { } closed && late is null && answer.Verdict == ReadyWord.If)
            said.Add($"The list was closed on {closed.WithWeekday()}; whether anybody is added after that is for the instructor to decide.");
        var isOff = answer.Verdict == ReadyWord.NotThisTime || (late is not null && snapshot.LateAddition == false);
        if (isOff)
            said.Add(next is null ? "The next test is not set yet; its date will be told." : $"The next date is {next}.");
        else if (next is not null && (late is not null && snapshot.LateAddition is null || answer.Verdict == ReadyWord.If))
            said.Add($"If not at this one, the next date is {next}.");
        return said;
    }

    private static string Missed(MissedUnit unit) => unit.ReturnsIn is { } term
        ? $"{unit.Unit}, taught in {unit.Term}: not met yet; it comes back in {term}."
        : $"{unit.Unit}, taught in {unit.Term}: not met yet; the term in which it comes back is not set.";

    /// <summary>Newest sighting first, each item once; without a day last, in the order of the sheet.</summary>
    private static List<string> NewestFirst(IEnumerable<ItemStanding> items, ParentsPageSnapshot snapshot, Func<ItemStanding, string> sentence) =>
        [.. items.DistinctBy(i => i.Item).OrderByDescending(i => Newest(i, snapshot.AsOf)).Select(sentence).Distinct()];

    private static DateOnly Newest(ItemStanding item, DateOnly asOf)
    {
        var seen = item.SeenOn.Count > 0 ? item.SeenOn[^1] : DateOnly.MinValue;
        return item.Because is FallCounted { TouchedOn: { } touched } && touched > seen && touched <= asOf ? touched : seen;
    }

    private static void Add(List<PageSection> sections, string heading, List<string> sentences)
    {
        if (sentences.Count > 0)
            sections.Add(new PageSection(heading, [.. sentences.Select(s => s.Replace("?: ", "? ", StringComparison.Ordinal))])); // A question ends itself.
    }

    private static string Days(int days) => days switch { 1 => "one day", 2 => "two days", 3 => "three days", _ => $"{days.ToString(CultureInfo.InvariantCulture)} days" };

    private static void Guard(ParentsPageSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        NoGaps.In(snapshot.UnitsMissed, "units missed");
        if (string.IsNullOrWhiteSpace(snapshot.Child) || string.IsNullOrWhiteSpace(snapshot.SpeakTo))
            throw ReadinessFrame.Slip("The page names the child and the instructor to speak to; give both names.");
        if (snapshot.Held < 0 || snapshot.Attended < 0 || snapshot.Attended > snapshot.Held)
            throw ReadinessFrame.Slip($"Attended is from 0 to the {snapshot.Held} held.");
        if (snapshot.ListClosedOn > snapshot.Sheet.TestOn)
            throw ReadinessFrame.Slip($"The list was closed on {snapshot.ListClosedOn.Value.Full()}, after the test; mend the day.");
    }
}
