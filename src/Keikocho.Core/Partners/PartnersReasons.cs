using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Partners;

/// <summary>The rule in one sentence.</summary>
/// <param name="Activity">What is done.</param>
/// <param name="Rule">The rule.</param>
public sealed record PairsFollow(PartnersActivity Activity, PartnersRule Rule) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Activity.Thrown
        ? $"For {Activity.Name} two are at most {Activity.SizeLimit} % apart in size and {Words.Count(Rule.AgeLimit, "year")} in age; one of them may be thrown, at most one is a newcomer, siblings work with others."
        : $"For {Activity.Name} two are at most {Activity.SizeLimit} % apart in size, and at most one is a newcomer.";
}

/// <summary>How many pairs the gates leave.</summary>
/// <param name="Possible">Pairs that there could be.</param>
/// <param name="Allowed">Pairs that pass every gate.</param>
/// <param name="Barred">How many each gate bars; a pair may be barred by several.</param>
public sealed record PairsBarred(int Possible, int Allowed, IReadOnlyList<(LinkBars Bar, int Pairs)> Barred) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Barred.Count == 0
        ? $"No gate bars any of the {Words.Count(Possible, "possible pair")}."
        : $"{Allowed.ToString(CultureInfo.InvariantCulture)} of {Words.Count(Possible, "possible pair")} pass{(Allowed == 1 ? "es" : "")} every gate; the gates bar {Words.List([.. Barred.Select(b => $"{b.Pairs.ToString(CultureInfo.InvariantCulture)} ({BarWords.Of(b.Bar)})")])}, a pair at times more than once.";
}

/// <summary>Bars in words. None says how big anybody is.</summary>
internal static class BarWords
{
    public static readonly LinkBars[] All =
        [LinkBars.NeitherMayFall, LinkBars.Size, LinkBars.Age, LinkBars.AgeUnknown, LinkBars.KeptApart, LinkBars.Newcomers, LinkBars.Siblings];

    public static string Of(LinkBars bar) => bar switch
    {
        LinkBars.NeitherMayFall => "neither may be thrown",
        LinkBars.Size => "size gap above the limit",
        LinkBars.Age => "too far apart in age",
        LinkBars.AgeUnknown => "age not known",
        LinkBars.KeptApart => "to be kept apart",
        LinkBars.Newcomers => "both newcomers",
        _ => "siblings",
    };
}

/// <summary>What makes this arrangement the best.</summary>
/// <param name="Worst">The dearest pair.</param>
/// <param name="Total">All pairs.</param>
/// <param name="BySum">All pairs where only the sum counts.</param>
public sealed record BestByWorst(int Worst, int Total, int BySum) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
            var sum = BySum == Total ? "and no arrangement has a lower sum" : $"and none that is as good there has a lower sum; where only the sum counts it is {Text(BySum)}";
            return $"The dearest pair costs {Text(Worst)}, all together {Text(Total)}: in no arrangement is the dearest pair cheaper, {sum}.";
        }
    }
}

/// <summary>Children without a size.</summary>
/// <param name="Names">Who.</param>
/// <param name="Everybody">Nobody here has one.</param>
/// <param name="Years">The stricter age limit.</param>
public sealed record NoSizeHeld(IReadOnlyList<string> Names, bool Everybody, int Years) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"No size is held of {(Everybody ? "anybody here" : Words.List(Names))}: paired by age, at most {Words.Count(Years, "year")} apart, and by rank; look at the pairs before they begin.";
}

/// <summary>A size that is old.</summary>
/// <param name="Name">Whose.</param>
/// <param name="On">When it was taken; null where the day is not known.</param>
/// <param name="Months">Old after so many months.</param>
public sealed record SizeIsOld(string Name, DateOnly? On, int Months) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => On is { } day
        ? $"The size of {Name} was taken on {day.Full()}, more than {Words.Count(Months, "month")} ago: take it again, children grow."
        : $"Nobody noted when the size of {Name} was taken: take it again, children grow.";
}

/// <summary>An adult takes the odd child.</summary>
/// <param name="Name">The child.</param>
/// <param name="Adult">The adult.</param>
public sealed record AdultTakesOne(string Name, string Adult) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"{Adult} takes {Name}: without {Name} the others pair best.";
}

/// <summary>A three.</summary>
/// <param name="Middle">Who works with both.</param>
/// <param name="One">Outer child.</param>
/// <param name="Other">Outer child.</param>
/// <param name="Thrown">Whether somebody is thrown.</param>
public sealed record ThreeWithMiddle(string Middle, string One, string Other, bool Thrown) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Thrown
        ? $"The three is {One}, {Middle} and {Other} with {Middle} in the middle: {One} and {Other} do not throw each other, and {Middle} falls for two."
        : $"The three is {One}, {Middle} and {Other} with {Middle} in the middle: {One} and {Other} do not work with each other.";
}

/// <summary>Two who were asked for together.</summary>
/// <param name="One">The one.</param>
/// <param name="Other">The other.</param>
/// <param name="Are">They are.</param>
public sealed record AskedForTogether(string One, string Other, bool Are) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Are
        ? $"{One} and {Other} work together, as was asked."
        : $"{One} and {Other} were asked for together, but a gate forbids it or somebody else would be left over.";
}

/// <summary>Together again.</summary>
/// <param name="One">The one.</param>
/// <param name="Other">The other.</param>
public sealed record TogetherAgain(string One, string Other) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"{One} and {Other} were together last class too: every other way is dearer.";
}

/// <summary>Somebody who is not thrown.</summary>
/// <param name="Names">Who.</param>
public sealed record TorisOnly(IReadOnlyList<string> Names) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"Tori only: {Words.List(Names)}.";
}

/// <summary>Nobody, or only some who are taken, may work with a child.</summary>
/// <param name="Name">The child.</param>
/// <param name="Others">How many others there are.</param>
/// <param name="Barred">How many of them each gate bars.</param>
/// <param name="MayWith">Those that no gate bars, in register order.</param>
public sealed record CannotBePlaced(string Name, int Others, IReadOnlyList<(LinkBars Bar, int Pairs)> Barred, IReadOnlyList<string> MayWith) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var gates = Barred.Count == 0 ? "" : $": {Words.List([.. Barred.Select(b => $"{b.Pairs.ToString(CultureInfo.InvariantCulture)} {BarWords.Of(b.Bar)}")])}";
            return Others == 0 ? $"{Name} is alone here."
                : MayWith.Count == 0 ? $"{Name} may work with none of the {Words.Count(Others, "other")}{gates}."
                : $"{Name} may work only with {Words.List(MayWith)}, and the others cannot spare one of them{gates}.";
        }
    }
}

/// <summary>Why there are too few partners.</summary>
/// <param name="Wanted">Who is wanted as a partner by more than there are.</param>
/// <param name="Groups">Groups that each need one of them.</param>
/// <param name="LeftOver">How many are left over at the least.</param>
public sealed record TooFewPartners(IReadOnlyList<string> Wanted, IReadOnlyList<IReadOnlyList<string>> Groups, int LeftOver) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var groups = string.Join("; ", Groups.Select(Words.List));
            return Wanted.Count == 0
                ? $"Each of these groups may work only among itself and is odd in number, so {Words.Count(LeftOver, "child is", "children are")} left over: {groups}."
                : $"Each of these groups needs {Words.List(Wanted)} for one of its own, and there {(Wanted.Count == 1 ? "is one" : $"are {Wanted.Count.ToString(CultureInfo.InvariantCulture)}")}, so {Words.Count(LeftOver, "child is", "children are")} left over: {groups}.";
        }
    }
}

/// <summary>Another activity places everybody.</summary>
/// <param name="Activity">Which.</param>
/// <param name="Kind">How.</param>
public sealed record AnotherActivity(PartnersActivity Activity, OfferKind Kind) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"With {Activity.Name} (at most {Activity.SizeLimit} % apart in size) everybody has a place{(Kind == OfferKind.Three ? ", with one three" : Kind == OfferKind.Adult ? ", one child with an adult" : "")}.";
}

/// <summary>Another activity does not.</summary>
/// <param name="Activity">Which.</param>
/// <param name="Left">Who is left over.</param>
public sealed record AnotherActivityFallsShort(PartnersActivity Activity, IReadOnlyList<string> Left) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"With {Activity.Name} (at most {Activity.SizeLimit} % apart in size) {Words.List(Left)} {Words.Is(Left.Count)} still left over.";
}

/// <summary>The activity throws, and nobody here may be thrown.</summary>
/// <param name="Activity">Which.</param>
/// <param name="Instead">Other activities, and who would be left over in each.</param>
public sealed record NobodyIsThrown(PartnersActivity Activity, IReadOnlyList<(PartnersActivity Activity, IReadOnlyList<string> Left)> Instead) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            static string All(IReadOnlyList<string> left) => left.Count == 0 ? "everybody" : $"all but {Words.List(left)}";
            // Activities that place the same children are named together, in the order in which they were asked.
            var ways = Instead.GroupBy(i => All(i.Left), StringComparer.Ordinal).Select((g, i) => $"{(i == 0 ? "In" : "in")} {Words.List([.. g.Select(way => way.Activity.Name)])}{(i == 0 ? " there is a place" : "")} for {g.Key}");
            var says = string.Join(", ", ways);
            return $"Nobody here may be thrown tonight: for {Activity.Name} no fall gate is open.{(says.Length > 0 ? $" {says}." : "")}";
        }
    }
}

/// <summary>Adults as partners place everybody.</summary>
/// <param name="Names">Who would work with an adult.</param>
public sealed record AdultsWouldHelp(IReadOnlyList<string> Names) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"With {(Names.Count == 1 ? "an adult" : $"{Names.Count.ToString(CultureInfo.InvariantCulture)} adults")} as partner{(Names.Count == 1 ? "" : "s")} for {Words.List(Names)} everybody has a place.";
}
