using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Syllabus;

/// <summary>What changed in one rank.</summary>
internal static class ChangesOfRank
{
    public static IEnumerable<EditionChange> Between(PreparedEdition old, LadderRank before, PreparedEdition now, LadderRank rank)
    {
        var name = rank.Name;
        if (before.Name != name)
            yield return new(name, $"\"{before.Name}\" is now \"{name}\".");
        foreach (var sentence in Looks(before, rank).Concat(Times(before.Minima, rank.Minima)).Concat(Lines(old, before, now, rank)))
            yield return new(name, $"{name}: {sentence}.");
    }

    private static IEnumerable<string> Looks(LadderRank before, LadderRank rank)
    {
        if (before.ShortName != rank.ShortName)
            yield return $"the short name is {Quoted(rank.ShortName)} instead of {Quoted(before.ShortName)}";
        if (before.Cloth != rank.Cloth)
            yield return $"the cloth is {rank.Cloth ?? "of no set colour"} instead of {before.Cloth ?? "of no set colour"}";
        if (before.Tips != rank.Tips)
            yield return $"{Words.Count(rank.Tips, "tip")} instead of {Text(before.Tips)}";
        if (before.Given != rank.Given)
            yield return $"it is given at {rank.Given ?? "any test"} instead of {before.Given ?? "any test"}";
        if (before.FirstCourse != rank.FirstCourse)
            yield return rank.FirstCourse ? "it now ends the first course" : "it no longer ends the first course";
    }

    private static IEnumerable<string> Times(Minima before, Minima now)
    {
        foreach (var (what, was, figure) in new[]
        {
            ("least lessons", before.Lessons, now.Lessons), ("least weeks", before.Weeks, now.Weeks), ("least months", before.Months, now.Months),
            ("least age", before.Age ?? 0, now.Age ?? 0), ("lessons that count in a day", before.LessonsADay, now.LessonsADay),
            ("shortest lesson in minutes", before.ShortestLessonMinutes, now.ShortestLessonMinutes),
            ("largest reduction in per cent", before.MostReductionPercent, now.MostReductionPercent),
        })
        {
            if (was != figure)
                yield return $"{what} {Figure(figure)} instead of {Figure(was)}";
        }

        if (before.AgeBy != now.AgeBy)
            yield return $"the age is reckoned by {(now.AgeBy == AgeBasis.Birthday ? "the birthday instead of the calendar year" : "the calendar year instead of the birthday")}";
        if (before.CountedOverTwoRanks != now.CountedOverTwoRanks)
            yield return now.CountedOverTwoRanks ? "lessons now count over two ranks" : "lessons now count over one rank";
        if (before.ExaminerIsNotTheCoach != now.ExaminerIsNotTheCoach)
            yield return now.ExaminerIsNotTheCoach ? "the coach may no longer examine" : "the coach may now examine";
        var (ages, others) = (OtherAges(before), OtherAges(now));
        if (ages != others)
            yield return $"for some ages {others} instead of {ages}";
        if (before.FastTrack != now.FastTrack)
            yield return $"the fast track is {Fast(now.FastTrack)} instead of {Fast(before.FastTrack)}";
    }

    private static IEnumerable<string> Lines(PreparedEdition old, LadderRank before, PreparedEdition now, LadderRank rank)
    {
        var gone = before.Requirements.Where(r => rank.Requirements.All(n => n.Key != r.Key)).ToList();
        var fresh = rank.Requirements.Where(r => before.Requirements.All(o => o.Key != r.Key)).ToList();
        // Only the key is another: the same line.
        var same = gone.Select(g => (g, f: fresh.FirstOrDefault(f => Content(f) == Content(g)))).Where(p => p.f is not null).DistinctBy(p => p.f!.Key).ToList();
        foreach (var line in gone.Except(same.Select(p => p.g)))
            yield return $"{Title(old, before, line)} was dropped";
        foreach (var line in fresh.Except(same.Select(p => p.f!)))
            yield return $"{Title(now, rank, line)} was added";
        foreach (var line in rank.Requirements)
        {
            if (before.Requirements.FirstOrDefault(r => r.Key == line.Key) is not { } was)
                continue;
            foreach (var sentence in Line(old, before, was, now, rank, line))
                yield return sentence;
        }

        var keys = same.ToDictionary(p => p.g.Key, p => p.f!.Key, StringComparer.Ordinal);
        var order = before.Requirements.Select(r => keys.GetValueOrDefault(r.Key, r.Key)).ToList();
        var left = rank.Requirements.Where(r => order.Contains(r.Key)).Select(r => r.Key).ToList();
        if (!order.Where(left.Contains).SequenceEqual(left))
            yield return "the lines stand in another order";
    }

    private static IEnumerable<string> Line(PreparedEdition old, LadderRank before, Requirement was, PreparedEdition now, LadderRank rank, Requirement line)
    {
        var title = Title(now, rank, line);
        if (was.Ask is Ask.AllOf a && line.Ask is Ask.AllOf b)
        {
            foreach (var key in a.Items.Except(b.Items))
                yield return $"{old.Item(key).Name} was dropped";
            foreach (var key in b.Items.Except(a.Items))
                yield return $"{now.Item(key).Name} was added";
            if (a.Items.Order(StringComparer.Ordinal).SequenceEqual(b.Items.Order(StringComparer.Ordinal)) && !a.Items.SequenceEqual(b.Items))
                yield return $"the items of one line stand in another order, {title}";
        }
        else if (Shape(was.Ask) != Shape(line.Ask))
            yield return Made(now, rank, line) is var made && Made(old, before, was) is var once && made == once ? $"{title} is asked of other kinds" : $"{made} instead of {once}";

        if (was.Title != line.Title)
            yield return $"a line reads {Quoted(line.Title)} instead of {Quoted(was.Title)}";
        if (was.Condition != line.Condition)
            yield return $"{title}, with the condition {Quoted(line.Condition)} instead of {Quoted(was.Condition)}";
        if (was.Ages != line.Ages)
            yield return $"{title}, asked of {LineTitles.Ages(line.Ages) ?? "all ages"} instead of {LineTitles.Ages(was.Ages) ?? "all ages"}";
        if (was.Critical != line.Critical)
            yield return $"{title} is {(line.Critical ? "now" : "no longer")} critical";
        if (was.Carry != line.Carry)
            yield return $"{title} is asked {Said(line.Carry)} instead of {Said(was.Carry)}";
        if (was.Unit != line.Unit)
            yield return $"{title} is asked in {Term(now, line.Unit)} instead of {Term(old, was.Unit)}";
        if (was.AtOnce != line.AtOnce)
            yield return line.AtOnce ? $"{title} is asked at once, whatever edition is nearer" : $"{title} is no longer asked at once";
    }

    private static string Title(PreparedEdition edition, LadderRank rank, Requirement line) => line.Title ?? Made(edition, rank, line);

    private static string Made(PreparedEdition edition, LadderRank rank, Requirement line) =>
        LineTitles.Plain(edition, rank.Name, line with { Title = null });

    // All that a line says but its key.
    private static string Content(Requirement line) =>
        $"{Shape(line.Ask)}|{line.Title}|{line.Condition}|{line.Ages}|{line.Critical}|{line.Carry}|{line.Unit}|{line.AtOnce}";

    private static string Shape(Ask ask) => ask switch
    {
        Ask.AllOf all => $"all {string.Join(' ', all.Items)}",
        Ask.AnyOf any => $"any {any.Count} {string.Join(' ', any.Items)}",
        Ask.FromPool pool => $"pool {pool.Count} {pool.ChosenBy} {string.Join(' ', pool.Pool)} {Kinds(pool.Kinds)}",
        Ask.ShareOfRank share => $"share {share.Rank} {share.Percent} {Kinds(share.Kinds)}",
        Ask.DrawnFromEarlier drawn => $"drawn {drawn.Count} {string.Join(' ', drawn.Ranks)} {Kinds(drawn.Kinds)}",
        Ask.TheOther other => $"other {other.Rank} {other.Requirement}",
        _ => "",
    };

    private static string Kinds(IReadOnlyList<ItemKind>? kinds) => kinds is null ? "" : "of " + string.Join(' ', kinds);

    private static string OtherAges(Minima minima) => minima.ForAges is not { Count: > 0 } ages
        ? "no other figures"
        : string.Join("; ", ages.Select(a => $"{LineTitles.Ages(a.Ages) ?? "all ages"} "
            + Words.List([.. new[] { (a.Lessons, "lesson"), (a.Weeks, "week"), (a.Months, "month") }.Where(p => p.Item1 is not null).Select(p => Words.Count(p.Item1!.Value, p.Item2))])));

    private static string Fast(FastTrack? fast) => fast is null ? "for nobody" : $"from {fast.FromAge} years, {Words.Count(fast.MostRanks, "rank")} at each of the first {Words.Count(fast.FirstTests, "test")}";

    private static string Said(Carry carry) => carry switch
    {
        Carry.ThisTerm => "in its unit's term only",
        Carry.Always => "at every test from now on",
        Carry.OnceAskedStays => "so that it stays once it was asked",
        _ => "for this rank only",
    };

    private static string Term(PreparedEdition edition, string? unit) => unit is null ? "every term" : $"the term of {edition.Edition.Units[edition.Unit(unit)].Name}";

    private static string Figure(int number) => number == 0 ? "none" : Text(number);

    private static string Quoted(string? text) => text is null ? "none" : $"\"{text}\"";

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
