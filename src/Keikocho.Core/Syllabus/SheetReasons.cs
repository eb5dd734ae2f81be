using Keikocho.Core.Kernel;

namespace Keikocho.Core.Syllabus;

/// <summary>Which edition and rank the sheet is of.</summary>
/// <param name="Edition">Name of the edition.</param>
/// <param name="From">Its first day.</param>
/// <param name="Rank">Name of the rank.</param>
/// <param name="TestOn">Day of the test.</param>
public sealed record SheetOfEdition(string Edition, DateOnly? From, string Rank, DateOnly TestOn) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"What {Rank} asks on {TestOn.Full()} by {Edition}, {(From is { } day ? $"in force from {day.Full()}" : "which is a draft")}.";
}

/// <summary>The age that the age bands and age rules look at.</summary>
/// <param name="Years">Whole years; null where not known.</param>
/// <param name="TestOn">Day of the test.</param>
public sealed record AgeOnTheDay(int? Years, DateOnly TestOn) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Years is { } years
        ? $"Age on {TestOn.Full()}: {Words.Count(years, "year")}."
        : "The birth date is not known: judged as the youngest.";
}

/// <summary>The unit of the term.</summary>
/// <param name="Name">Its name; null where none is set.</param>
/// <param name="Number">Its number in the rotation.</param>
public sealed record UnitOfTheTerm(string? Name, int? Number) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Name is null
        ? "No unit is set for this term: nothing of a unit is asked."
        : $"This term's unit is {Name}, number {Number} of the rotation.";
}

/// <summary>A requirement of another unit.</summary>
/// <param name="Requirement">The line.</param>
/// <param name="Unit">Name of its unit.</param>
public sealed record OfAnotherUnit(string Requirement, string Unit) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"Not this term: {Requirement} is asked in the term of {Unit}.";
}

/// <summary>A requirement of other ages.</summary>
/// <param name="Requirement">The line.</param>
/// <param name="Ages">For which ages, in words.</param>
public sealed record OfOtherAges(string Requirement, string Ages) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"Not at this age: {Requirement} is asked {(char.IsAsciiDigit(Ages[0]) ? "at " : "")}{Ages}.";
}

/// <summary>An age rule takes an item off a sheet.</summary>
/// <param name="Item">Its name.</param>
/// <param name="Instead">Name of what is shown in its place; null for nothing.</param>
/// <param name="Rule">The rule.</param>
public sealed record BarredByAge(string Item, string? Instead, AgeRule Rule) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"{Item} is not asked below {Words.Count(Rule.BelowAge, "year")}{(Rule.AgeBy == AgeBasis.CalendarYear ? " reached in the calendar year" : "")}, by the rule \"{Rule.Name}\" ({Rule.Source}, {Rule.SourceOn.Full()}): "
        + (Instead is null ? "nothing is asked in its place." : $"{Instead} is shown in its place.");
}

/// <summary>An item gives way as agreed. The sentence never says why: a sheet is read by others.</summary>
/// <param name="Item">Its name.</param>
/// <param name="Instead">Name of what is shown in its place; null for nothing.</param>
public sealed record GivesWayAsAgreed(string Item, string? Instead) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Instead is null
        ? $"{Item} is not asked, as agreed; nothing is asked in its place."
        : $"{Item} is not asked, as agreed; {Instead} is shown in its place.";
}

/// <summary>A kept pass.</summary>
/// <param name="Item">Its name.</param>
/// <param name="Until">Last day.</param>
/// <param name="Holds">It still holds on the day of the test.</param>
public sealed record PassKept(string Item, DateOnly Until, bool Holds) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Holds
        ? $"{Item} is kept until {Until.Full()} and is not shown again."
        : $"{Item} was kept until {Until.Full()} and is shown again.";
}

/// <summary>A choice has fewer to choose from.</summary>
/// <param name="Title">The line.</param>
/// <param name="Count">How many were asked.</param>
/// <param name="Of">Of how many.</param>
/// <param name="NowCount">How many are asked of this child.</param>
/// <param name="NowOf">Of how many.</param>
public sealed record FewerToChooseFrom(string Title, int Count, int Of, int NowCount, int NowOf) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => NowOf == 0
        ? $"Nothing is left of a choice of {Count} of {Of}: the line is not asked."
        : $"{Title}: {NowCount} of {NowOf} instead of {Count} of {Of}.";
}

/// <summary>How far the choice from a pool has got.</summary>
/// <param name="Title">The line.</param>
/// <param name="Count">How many are to be chosen.</param>
/// <param name="Made">How many are.</param>
/// <param name="By">Who chooses.</param>
public sealed record ChoiceFromPool(string Title, int Count, int Made, Chooser By) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var who = By == Chooser.Child ? "the child" : "the instructor";
            return Made >= Count
                ? $"{Title}: {Words.Count(Made, "item")} noted as chosen by {who}; {Words.Count(Count, "item")} asked."
                : $"{Title}: {who} chooses {Count}, {(Made == 0 ? "none is" : $"{Made} {Words.Is(Made)}")} noted yet; until then any {Count} count.";
        }
    }
}

/// <summary>A choice that cannot stand.</summary>
/// <param name="Item">Name or key of what was chosen.</param>
/// <param name="Title">The line.</param>
public sealed record ChoiceDoesNotStand(string Item, string Title) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"{Item} was noted as chosen, but it is not among what may be chosen for this line: {Title}.";
}

/// <summary>A share of a later rank.</summary>
/// <param name="Rank">Name of that rank.</param>
/// <param name="Percent">The share.</param>
/// <param name="Asked">How many things that rank asks, falls apart.</param>
/// <param name="Count">How many of them are enough.</param>
/// <param name="Falls">How many falls are asked in full.</param>
public sealed record ShareReckoned(string Rank, int Percent, int Asked, int Count, int Falls) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"{Percent} % of the {Asked} that {Rank} asks, rounded up: {Count}{(Falls == 0 ? "" : $"; its {Words.Count(Falls, "fall")} in full")}.";
}

/// <summary>A draw.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Count">How many were drawn.</param>
/// <param name="Of">Of how many.</param>
public sealed record DrawnByLot(int Number, int Count, int Of) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"{Count} of {Of} drawn by lot with number {Number}; the same number draws the same again.";
}

/// <summary>What was shown at an earlier rank, for "the other one".</summary>
/// <param name="Rank">Name of that rank.</param>
/// <param name="Shown">Names of what was shown.</param>
/// <param name="Count">How many are asked now.</param>
/// <param name="Of">Of how many.</param>
public sealed record ShownBefore(string Rank, IReadOnlyList<string> Shown, int Count, int Of) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            if (Shown.Count == 0)
                return $"What was shown for {Rank} is not known: {Count} of the {Of} {Words.Is(Count)} asked, whichever.";
            var shown = $"Shown for {Rank}: {Words.List(Shown)}";
            return Of == 0 ? $"{shown}; nothing is left of it." : $"{shown}; {(Count == Of ? $"the other {Count}" : $"{Count} of the other {Of}")} {Words.Is(Count)} asked.";
        }
    }
}

/// <summary>What is asked again from the ranks below.</summary>
/// <param name="Always">Lines that are asked at every test.</param>
/// <param name="Stays">Lines that stay because this child was asked before.</param>
public sealed record AskedAgain(int Always, int Stays) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Stays == 0
        ? $"{Words.Count(Always, "line")} from ranks below {Words.Is(Always)} asked at every test."
        : $"{Words.Count(Always, "line")} from ranks below {Words.Is(Always)} asked at every test, and {Words.Count(Stays, "line")} {(Stays == 1 ? "stays" : "stay")} from what this child was asked before.";
}

/// <summary>On the copy on the wall: what stays with a child who was asked it.</summary>
/// <param name="Lines">How many lines.</param>
public sealed record OnceAskedStaysOnTheWall(int Lines) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"{Words.Count(Lines, "line")} of the ranks below {(Lines == 1 ? "stays" : "stay")} with each child who was asked {(Lines == 1 ? "it" : "them")}; the child's own sheet has {(Lines == 1 ? "it" : "them")}.";
}
