using System.Collections.Immutable;
using Keikocho.App.People;
using Keikocho.Core.Kernel;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Promotion;

namespace Keikocho.App.Students;

/// <summary>One column of the path: a term, or the time before the first one shown.</summary>
/// <param name="Start">What is always shown of its name: "Aut".</param>
/// <param name="Rest">What is shown where there is room: "umn".</param>
/// <param name="Year">Second line: "2026"; empty where the name has none.</param>
public sealed record PathColumn(string Start, string Rest, string Year);

/// <summary>One belt on the path.</summary>
/// <param name="Belt">The belt.</param>
/// <param name="Words">Since when, and how the club knows.</param>
/// <param name="From">Start in percent of the span; null where the day is not known.</param>
/// <param name="To">End in percent of the span.</param>
/// <param name="IsHope">The next belt, not worn yet.</param>
public sealed record PathBelt(WornBelt Belt, string Words, double? From, double? To, bool IsHope);

/// <summary>Belts over time: each drawn as long as it was worn. Every column is one term, whatever its length.</summary>
/// <param name="Columns">The columns.</param>
/// <param name="Now">Today in percent of the span.</param>
/// <param name="Belts">The belts, oldest first, the next one last.</param>
public sealed record BeltPath(ImmutableArray<PathColumn> Columns, double Now, ImmutableArray<PathBelt> Belts)
{
    /// <summary>Terms that a path shows at most; what lies before them is one column.</summary>
    private const int MostTerms = 9;

    /// <summary>The path of one person on one programme's ladder; null when there is no term to draw it on.</summary>
    public static BeltPath? Of(ClubBook book, Guid person, ProgrammeRow programme, DateOnly joined, DateOnly today, DateOnly? testOn)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(programme);
        var awards = book.AwardsOf(person).Where(a => a.LadderId == programme.LadderId).ToList();
        var first = awards.Where(a => a.On is not null).Select(a => a.On!.Value).Append(joined).Min();
        var spans = SpansOf(book, first, today);
        if (spans.Count == 0) return null;
        var belts = new List<PathBelt>();
        if (WornBelt.StartOf(book, programme.LadderId) is { } start && awards.All(a => a.RankId != start.Id) && awards.All(a => a.On is null || a.On > joined))
            belts.Add(new PathBelt(WornBelt.Of(start), $"{joined.Full()}, joined", At(spans, joined), At(spans, awards.FirstOrDefault(a => a.On is not null)?.On ?? today), false));
        for (var i = 0; i < awards.Count; i++)
        {
            var next = awards.Skip(i + 1).FirstOrDefault(a => a.On is not null)?.On ?? today;
            double? from = awards[i].On is { } on ? At(spans, on) : null;
            belts.Add(new PathBelt(WornBelt.Of(book.Rank(awards[i].RankId)!), AwardWords.Of(awards[i]), from, from is null ? null : Math.Max(from.Value, At(spans, next)), false));
        }

        if (NextOf(book, person, programme) is { } hope)
        {
            var from = testOn is { } test ? At(spans, test) : At(spans, today);
            belts.Add(new PathBelt(hope, testOn is { } t ? $"not yet; next test {t.Full()}" : "not yet; no test is set", from, 100, true));
        }

        return new BeltPath([.. spans.Select(s => s.Column)], At(spans, today), [.. belts]);
    }

    /// <summary>The belt after the one that is worn; null at the top of the ladder or without one.</summary>
    public static WornBelt? NextOf(ClubBook book, Guid person, ProgrammeRow programme)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(programme);
        var worn = book.RankOf(person, programme.LadderId)?.Position ?? WornBelt.StartOf(book, programme.LadderId)?.Position ?? 0;
        return book.Ranks.FirstOrDefault(r => r.LadderId == programme.LadderId && r.Position > worn) is { } next ? WornBelt.Of(next) : null;
    }

    private static List<Span> SpansOf(ClubBook book, DateOnly first, DateOnly today)
    {
        // From the term of the first belt to the one after today's, so that there is room for what may come.
        var last = book.Terms.Count(t => t.From <= today);
        var terms = book.Terms.Take(last + 1).Where(t => t.To >= first).TakeLast(MostTerms).ToList();
        var spans = terms.Select(t => new Span(ColumnOf(t.Name), t.From, t.To)).ToList();
        if (spans.Count > 0 && first < spans[0].From) spans.Insert(0, new Span(new PathColumn("Ear", "lier", ""), first, spans[0].From.AddDays(-1)));
        // Where no term is set after today's, what comes has a column of its own.
        if (spans.Count > 0 && terms[^1].From <= today) spans.Add(new Span(new PathColumn("Later", "", ""), spans[^1].To.AddDays(1), Latest(spans[^1].To, today).AddDays(120)));
        return spans;
    }

    private static DateOnly Latest(DateOnly a, DateOnly b) => a > b ? a : b;

    /// <summary>A day in percent; days between two terms lie on the line between them.</summary>
    private static double At(List<Span> spans, DateOnly day)
    {
        var column = spans.FindIndex(s => day <= s.To);
        if (column < 0) return 100;
        var span = spans[column];
        var part = day <= span.From ? 0 : (double)(day.DayNumber - span.From.DayNumber) / (span.To.DayNumber - span.From.DayNumber + 1);
        return 100 * (column + part) / spans.Count;
    }

    private static PathColumn ColumnOf(string name)
    {
        var words = name.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var year = words.Length > 1 && words[^1].Any(char.IsAsciiDigit) ? words[^1] : "";
        var word = year.Length > 0 ? string.Join(' ', words[..^1]) : name;
        return word.Length > 3 ? new PathColumn(word[..3], word[3..], year) : new PathColumn(word, "", year);
    }

    private sealed record Span(PathColumn Column, DateOnly From, DateOnly To);
}

/// <summary>How the club knows of a rank, in words.</summary>
public static class AwardWords
{
    /// <summary>"8 December 2025, given here".</summary>
    public static string Of(AwardRow award)
    {
        ArgumentNullException.ThrowIfNull(award);
        var how = award.Source switch
        {
            AwardSource.Imported => "from the club’s own list",
            AwardSource.Promoted => "given here",
            AwardSource.Transferred => "brought from another club",
            _ => throw new ArgumentOutOfRangeException(nameof(award), award.Source, "There is no such source."),
        };
        return award.On is { } on ? $"{on.Full()}, {how}" : $"day not known, {how}";
    }
}
