using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json;
using Keikocho.App.Club;
using Keikocho.Core.Kernel;
using Keikocho.Core.Partners;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;

namespace Keikocho.App.Pairs;

/// <summary>
/// What tablets get of pairs, made once for each evening, end, activity and set of children here, and kept until something that it rests
/// on changes: tablets ask every few seconds, and hundreds of repairs are behind one answer.
/// </summary>
public sealed class PairsInHand(Reckonings reckonings)
{
    private const int Most = 256;
    private readonly ConcurrentDictionary<(Guid Lesson, MatEnd End, PairsActivity Activity), (string Rests, MatPairs Pairs)> made = new();
    private readonly ConcurrentDictionary<(Guid Lesson, MatEnd End), PairsDrill> planned = new();
    private int makings;

    /// <summary>How many answers were made so far.</summary>
    public int Makings => makings;

    /// <summary>Remembers what is thrown at an end: the laptop said so when it put pairs to use. Without, tablets ask every way.</summary>
    public void Plan(Guid lesson, MatEnd end, PairsDrill drill)
    {
        if (planned.Count > Most) planned.Clear();
        planned[(lesson, end)] = drill;
    }

    /// <summary>The pairs of a lesson for its tablets: names only.</summary>
    public ImmutableArray<MatPairs> Of(OpenClub club, LessonRow lesson, IReadOnlyDictionary<Guid, ChildEvidence> evidence)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        var evening = PairsEvening.Of(club, lesson, reckonings, evidence);
        if (!evening.Children.Any(c => c.IsHere)) return [];
        List<string> adults = [.. evening.Adults.Where(a => a.IsFree).Select(a => a.Name)];
        List<string> toCome = [.. evening.Adults.Where(a => !a.IsFree).Select(a => a.Name)];
        var all = ImmutableArray.CreateBuilder<MatPairs>();
        foreach (var end in Enum.GetValues<MatEnd>())
        {
            if (!evening.At(end).Any()) continue;
            foreach (var (activity, word) in PairsDrill.All)
            {
                var drill = activity == PairsActivity.Throwing && planned.TryGetValue((lesson.Id, end), out var said) ? said : PairsDrill.Of(activity);
                all.Add(One(club, evening, end, drill, word, adults, toCome));
            }
        }

        return all.DrainToImmutable();
    }

    private MatPairs One(OpenClub club, PairsEvening evening, MatEnd end, PairsDrill drill, string word, List<string> adults, List<string> toCome)
    {
        var now = evening.Question(club, end, drill, c => c.IsHere, adults);
        var later = evening.Question(club, end, drill, c => !c.IsHere, adults).Children;
        var standing = StandingPairs.Of(club.Reading, evening.Lesson.Id, drill.Activity, evening.At(end).Select(c => c.PersonId).ToHashSet());
        var rests = Convert.ToHexString(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(new { now, later, adults, toCome, standing, drill.Name })));
        var key = (evening.Lesson.Id, end, drill.Activity);
        if (made.TryGetValue(key, out var known) && known.Rests == rests) return known.Pairs;
        Interlocked.Increment(ref makings);
        var pairs = Make(now, later, toCome, standing, end, drill, word);
        if (made.Count > Most) made.Clear();
        made[key] = (rests, pairs);
        return pairs;
    }

    private static MatPairs Make(PartnersQuestion now, IReadOnlyList<PartnersChild> later, List<string> toCome, StandingPairs? standing, MatEnd end, PairsDrill drill, string word)
    {
        // Who needs an adult is named to a tablet, why is the instructor's to see.
        var answer = PairsTonight.Make(now);
        var seated = Seated.Of(now, standing?.Groups, answer);
        var ahead = PairsAhead.Make(new AheadQuestion(seated.Question, [.. later, .. seated.Left], toCome, standing?.Groups));
        var register = ahead.Register.Select((m, place) => (m.Child, place)).ToDictionary(m => m.Child, m => m.place);
        ImmutableArray<MatGroupOf> Groups(IReadOnlyList<MatGroup> groups) => [.. groups.Select(g => new MatGroupOf([.. g.Members.Select(m => register[m.Child])], g.Adult))];
        var table = ahead.Tables[0].Table;
        var here = now.Children.Select(c => c.Child).ToHashSet();
        return new MatPairs(
            (int)end, (int)drill.Activity, word, drill.Name, drill.Planned is not null,
            [.. ahead.Register.Select(m => new MatPairsChild(m.Child.Value, m.Name, m.ToriOnly))],
            [.. ahead.Register.Where(m => here.Contains(m.Child)).Select(m => register[m.Child])],
            Groups(ahead.Groups),
            [.. ahead.Ahead.Where(a => a.Groups.Count > 0 && (a.Child is null || register.ContainsKey(a.Child.Value)))
                .Select(a => new MatAhead((int)a.Event, a.Child is { } child ? register[child] : -1, a.Child is null ? a.Name : "", Groups(a.Groups)))],
            table.May, table.Middle, table.Share, [.. now.Adults],
            [.. seated.Left.Select(c => register[c.Child])],
            answer.Help.OfType<NobodyIsThrown>().FirstOrDefault()?.Sentence);
    }
}
