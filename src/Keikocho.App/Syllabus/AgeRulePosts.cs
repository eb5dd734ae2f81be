using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.Core.Intake;
using Keikocho.Core.Syllabus;

namespace Keikocho.App.Syllabus;

/// <summary>Takes an age rule that the club enters from its body, or one to take out.</summary>
internal static class AgeRulePosts
{
    public static async Task<IResult> AddAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var programme = Draft.DraftDesk.Chosen(club, sent.Id("programme"));
        if (club.Acting is not { } acting) return SyllabusPosts.NobodyActs(SyllabusAddress.Of(SyllabusAddress.Page, programme.Id));
        var name = sent.Name("rule-name", "The rule has no name. “No neck grips” will do.");
        var below = sent.WholeIfAny("rule-age", 3, 30, "Below which age");
        if (below is null && sent.Text("rule-age").Length == 0) sent.Refuse("rule-age", "Type the age from which it is allowed.");
        var source = sent.Name("rule-source", "Say where the rule stands: body, document, page.");
        var day = sent.DayIfAny("rule-on");
        if (sent.Text("rule-on").Length == 0) sent.Refuse("rule-on", "Type the date of the source, so that somebody can see whether it is still the newest.");
        var kinds = fields["rule-kinds"].Select(k => Enum.TryParse<ItemKind>(k, out var kind) && Enum.IsDefined(kind) ? kind : (ItemKind?)null).OfType<ItemKind>().Distinct().ToList();
        var (items, techniques) = Named(club, sent.Text("rule-names"));
        if (kinds.Count == 0 && items.Count == 0 && techniques.Count == 0) sent.Refuse("rule-names", "Say what is not allowed: names, one a line, or whole kinds below.");
        if (!sent.IsTaken)
        {
            return OnePage.Of<SyllabusPage>(new Dictionary<string, object?>
            {
                [nameof(SyllabusPage.Programme)] = programme.Id,
                [nameof(SyllabusPage.Refused)] = sent.Kept(),
            });
        }

        var by = sent.Text("rule-by") == nameof(AgeBasis.CalendarYear) ? AgeBasis.CalendarYear : AgeBasis.Birthday;
        await club.House.Syllabus.AddAgeRuleAsync(new AgeRule(name, below!.Value, by, items, techniques, kinds, source, day!.Value), acting.Id, club.Device, cancel);
        return Redirects.SeeOther(Back(programme.Id), new FlashMessage($"The rule “{name}” is entered.", "It goes before every ladder."));
    }

    public static async Task<IResult> EndAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var programme = Draft.DraftDesk.Chosen(club, sent.Id("programme"));
        if (club.Acting is not { } acting) return SyllabusPosts.NobodyActs(SyllabusAddress.Of(SyllabusAddress.Page, programme.Id));
        return sent.Id("rule") is { } rule && await club.House.Syllabus.EndAgeRuleAsync(rule, acting.Id, club.Device, cancel)
            ? Redirects.SeeOther(Back(programme.Id), new FlashMessage("The rule is taken out.", "That it held, and from when to when, stays on record."))
            : SyllabusPosts.Gone(Back(programme.Id));
    }

    private static string Back(Guid programme) => SyllabusAddress.Of(SyllabusAddress.Page, programme, "ages-part");

    // A name that an edition has is that item; any other is a technique, in whatever spelling.
    private static (List<string> Items, List<string> Techniques) Named(OpenClub club, string text)
    {
        var known = club.Book.Programmes.SelectMany(p => club.Book.EditionsOf(p.LadderId)).SelectMany(e => e.Edition.Items).ToList();
        var (items, techniques) = (new List<string>(), new List<string>());
        foreach (var name in text.Split('\n').Select(n => n.Trim()).Where(n => n.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase))
        {
            // A plain technique bars every form of it; only a form with more to its name is one item.
            if (known.FirstOrDefault(i => NameFold.Fold(i.Name) == NameFold.Fold(name)) is { } item && (item.Technique is null || NameFold.Fold(item.Technique) != NameFold.Fold(name)))
                items.Add(item.Key);
            else techniques.Add(name);
        }

        return ([.. items.Distinct()], techniques);
    }
}
