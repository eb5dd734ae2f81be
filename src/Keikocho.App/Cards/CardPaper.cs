using Keikocho.App.Club;
using Keikocho.App.Evening;
using Keikocho.App.Papers;
using Keikocho.App.Shared;
using Keikocho.Core.Kernel;
using Keikocho.Paper.Cards;
using Keikocho.Store.Calendar;

namespace Keikocho.App.Cards;

/// <summary>The cards on paper.</summary>
public static class CardPaper
{
    /// <summary>Both cards of a lesson as a PDF.</summary>
    internal static IResult Answer(OpenClub club, ReadCards read, HttpContext http, string? lesson, string? plan, string? paper)
    {
        var chosen = Guid.TryParse(lesson, out var id) ? club.Book.Lesson(id) : EveningLesson.Choose(club.Book, club.Today, club.Clock.LocalTime, null);
        if (chosen is not { ClosureId: null } some || read.Of(club, some, CardsAddress.ReadPlan(plan)) is not { Cards.Length: > 0 } cards || PaperEndpoints.Size(club, paper) is not { } size)
            return Redirects.SeeOther(CardsAddress.Page, new FlashMessage("No paper.", "That lesson was closed, or is not on the calendar, or that paper is neither A4 nor US Letter.", NeedsALook: true));
        return PaperEndpoints.Pdf(http, EndCardPaper.Draw([.. cards.Cards.Select(c => Of(club, some, cards, c))], size), $"cards-{some.Date.Iso()}.pdf");
    }

    /// <summary>What the paper of one card shows.</summary>
    public static EndCardContent Of(OpenClub club, LessonRow lesson, EveningCards cards, CardView card)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        ArgumentNullException.ThrowIfNull(cards);
        ArgumentNullException.ThrowIfNull(card);
        var programme = club.Book.Programme(lesson.ProgrammeId)!;
        var edition = club.Book.EditionOn(programme.LadderId, lesson.Date)?.Edition;
        return new EndCardContent(
            club.Book.Club.Name, card.Heading, lesson.Date, lesson.Start, lesson.End, edition is null ? null : $"{edition.Ladder}, {edition.Name}",
            card.Lead, card.Drills, card.Unit, card.Empty,
            [.. card.Parts.Select(p => new CardPaperPart(p.From, p.Minutes, p.Title, [.. Lines(card, p)]))],
            card.Falls,
            [.. card.Children.Select(c => new CardPaperChild(c.Name, c.Rank?.Name ?? "no rank recorded", c.Mark, c.Role))],
            string.Join(", ", card.LookAt), string.Join(", ", card.Words.Select(w => w.Answer is null ? w.Name : $"{w.Name} ({w.Answer})")), card.PlanB, cards.FirstAider);
    }

    private static IEnumerable<string> Lines(CardView card, CardPartView part)
    {
        if (part.Item is not { } item)
        {
            yield return part.Does;
            if (part.Games.Length > 0) yield return $"Games: {string.Join(", ", part.Games)}.";
            yield break;
        }

        var told = string.Join(" ", new[]
        {
            card.End == MatEnd.Main ? $"{item.Showing}." : null,
            item.Cue is null ? null : $"Look for: {Sentence(item.Cue)}",
            item.Fault is null ? null : $"Common fault: {Sentence(item.Fault)}",
        }.OfType<string>());
        if (told.Length > 0) yield return told;
        if (item.Easier is not null || item.Harder is not null)
            yield return string.Join(" ", new[] { item.Easier is null ? null : $"Easier: {item.Easier}", item.Harder is null ? null : $"Harder: {item.Harder}" }.OfType<string>());
        foreach (var role in part.Roles) yield return $"{char.ToUpperInvariant(role.Role[0])}{role.Role[1..]}: {string.Join(", ", role.Names)}.";
    }

    private static string Sentence(string words) => words[^1] is '.' or '!' or '?' ? words : words + ".";
}
