using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Keikocho.App.Club;
using Keikocho.App.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Partners;

namespace Keikocho.App.Pairs;

/// <summary>One way to place everybody that may be put to use.</summary>
/// <param name="Value">What the form sends.</param>
/// <param name="Heading">In words.</param>
/// <param name="Groups">In mat order.</param>
/// <param name="New">Those of them that did not stand before.</param>
/// <param name="Seen">What was seen of them: another one means that somebody came or left in between.</param>
public sealed record PairsOffer(string Value, string Heading, IReadOnlyList<MatGroup> Groups, ImmutableHashSet<string> New, string Seen);

/// <summary>Tonight's pairs of one end, for the adults who teach, on the laptop.</summary>
/// <param name="Asked">What was asked.</param>
/// <param name="Evening">The lesson.</param>
/// <param name="End">The end.</param>
/// <param name="Drill">What is done.</param>
/// <param name="Here">Names of those in it, with their ids, in register order.</param>
/// <param name="Out">Who sits out.</param>
/// <param name="Adults">Names of adults who can partner.</param>
/// <param name="Standing">The pairs that stand; null where none were put to use.</param>
/// <param name="Stands">They stand as they are: nobody came or left.</param>
/// <param name="Repairs">Ways to repair them; empty where nothing is to be repaired or nothing does.</param>
/// <param name="RepairSays">What the repair says in words.</param>
/// <param name="Offers">Ways to make them anew.</param>
/// <param name="Answer">The whole answer.</param>
/// <param name="Falls">The falls of the drill; null where nobody is thrown.</param>
/// <param name="NotPlaced">Who needs an adult, by the pairs that stand where some do.</param>
public sealed record PairsView(
    PairsAsked Asked, PairsEvening Evening, MatEnd End, PairsDrill Drill, ImmutableArray<(Guid Id, string Name)> Here, ImmutableArray<(Guid Id, string Name)> Out, IReadOnlyList<string> Adults,
    StandingPairs? Standing, bool Stands, ImmutableArray<PairsOffer> Repairs, IReadOnlyList<string> RepairSays, ImmutableArray<PairsOffer> Offers, PartnersAnswer Answer, FallsAnswer? Falls,
    IReadOnlyList<string> NotPlaced)
{
    /// <summary>Reads it; null where there is no such lesson.</summary>
    public static PairsView? Of(OpenClub club, Reckonings reckonings, PairsAsked asked)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(asked);
        if (EveningLesson.Choose(club.Book, club.Today, club.Clock.LocalTime, asked.LessonId) is not { ClosureId: null } lesson) return null;
        var evening = PairsEvening.Of(club, lesson, reckonings);
        var end = asked.End ?? evening.Children.Where(c => c.IsHere).Select(c => (MatEnd?)c.End).Min() ?? MatEnd.Beginners;
        var drill = asked.Drill;
        var standing = StandingPairs.Of(club.Reading, lesson.Id, drill.Activity, evening.At(end).Select(c => c.PersonId).ToHashSet());
        var chosen = asked.Adults?.ToHashSet() ?? evening.Adults.Where(a => a.IsFree).Select(a => a.PersonId).ToHashSet();
        // Who partners a child already is asked first: that pair stands.
        List<string> adults = [.. evening.Adults.Where(a => chosen.Contains(a.PersonId)).OrderBy(a => a.PersonId == standing?.Adult ? 0 : 1).Select(a => a.Name)];
        bool IsIn(PairsChild child) => child.IsHere && !asked.Without.Contains(child.PersonId);
        var question = evening.Question(club, end, drill, IsIn, adults);
        var answer = PairsTonight.Make(question);
        ImmutableArray<PairsOffer> offers = [.. answer.Offers.Select(o => Offer(o.Kind.ToString(), Heading(o.Kind), o.WorstFirst.Groups, []))];
        var repairs = ImmutableArray<PairsOffer>.Empty;
        IReadOnlyList<string> says = [];
        var stands = false;
        IReadOnlyList<string> left = [.. answer.Unplaced.Select(u => u.Name)];
        var shown = offers.FirstOrDefault()?.Groups ?? [];
        if (standing is not null)
        {
            var seated = Seated.Of(question, standing.Groups, answer);
            left = [.. seated.Left.Select(c => c.Name)];
            var repair = RepairPairs.Make(new RepairQuestion(seated.Question, standing.Groups));
            stands = repair.Offers.Count > 0 && repair.Offers[0] is { Changed: 0, New.Count: 0 };
            repairs = [.. repair.Offers.Select((o, i) => Offer($"repair-{i}", Heading(o.Kind), o.Arrangement.Groups, [.. o.New.Select(g => g.Line)]))];
            says = [.. repair.Reasons.Skip(1).Select(r => r.Sentence)];
            if (repairs.Length > 0) shown = repairs[0].Groups;
        }

        return new PairsView(
            asked with { LessonId = lesson.Id, End = end, Adults = asked.Adults is null ? null : [.. chosen] }, evening, end, drill,
            [.. evening.At(end).Where(IsIn).Select(c => (c.PersonId, c.Name))], [.. evening.At(end).Where(c => c.IsHere && !IsIn(c)).Select(c => (c.PersonId, c.Name))],
            adults, standing, stands, repairs, says, offers, answer, FallsOf(club, question, drill, asked, shown), left);
    }

    /// <summary>The activity throws, and no child here may be thrown; null where one may.</summary>
    public NobodyIsThrown? NobodyIsThrown => Answer.Help.OfType<NobodyIsThrown>().FirstOrDefault();

    /// <summary>The offer of a form; null where it is none, or another than was seen.</summary>
    public PairsOffer? Find(string? value, string? seen) => Repairs.Concat(Offers).FirstOrDefault(o => o.Value == value && o.Seen == seen);

    private static FallsAnswer? FallsOf(OpenClub club, PartnersQuestion question, PairsDrill drill, PairsAsked asked, IReadOnlyList<MatGroup> groups)
    {
        if (drill.Activity != PairsActivity.Throwing || groups.Count == 0) return null;
        var place = question.Children.ToDictionary(c => c.Child, c => c.Register);
        return FallsTonight.Reckon(new FallsQuestion(
            [new FallsDrill(drill.Name, asked.ThrowsEach, asked.Sides, asked.Rounds)],
            [.. groups.Select(g => new FallsGroup([.. g.Members.Select(m => new FallsChild(m.Child, m.Name, place[m.Child], m.ToriOnly))]))],
            ClubRules.Whole(club.Book, "falls.cap", question.Today, 20),
            ClubRules.YesNo(club.Book, "falls.adultThrows", question.Today, true)));
    }

    private static PairsOffer Offer(string value, string heading, IReadOnlyList<MatGroup> groups, ImmutableHashSet<string> fresh)
    {
        var text = string.Join(';', groups.Select(g => $"{string.Join(',', g.Members.Select(m => m.Child.Value.ToString("N")))} {g.Adult}"));
        return new PairsOffer(value, heading, groups, fresh, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..16]);
    }

    private static string Heading(OfferKind kind) => kind switch
    {
        OfferKind.Pairs => "Pairs",
        OfferKind.Adult => "Pairs, and one with an adult",
        OfferKind.Three => "Pairs and a three",
        OfferKind.Part => "As many as can be placed",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "There is no such way."),
    };
}
