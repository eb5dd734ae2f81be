using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Starter;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Syllabus.Draft;

/// <summary>Begins a draft: from the belts the club has, a sample ladder, a text, the newest edition, or nothing.</summary>
internal static class BeginPosts
{
    public static async Task<IResult> BeginAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var programme = DraftDesk.Chosen(club, sent.Id("programme"));
        var page = SyllabusAddress.Of(SyllabusAddress.Page, programme.Id);
        if (club.Acting is not { } acting) return SyllabusPosts.NobodyActs(page);
        var (from, slug) = RankPosts.Ordered(sent.Text("from"));
        var begun = from switch
        {
            "nothing" => (BeginDraft.FromNothing(programme.Name), "Begun with an empty ladder."),
            "belts" => BeginDraft.FromBelts(club.Book, programme) is { } own ? (own, "Begun from the belts that the club has.") : null,
            "edition" => club.Book.NewestEdition(programme.LadderId) is { } newest ? (BeginDraft.FromEdition(newest.Edition), $"Begun from {newest.Name}.") : null,
            "sample" => SampleLadders.All.FirstOrDefault(s => s.Slug == slug) is { } sample
                ? (BeginDraft.FromSample(sample.Edition, programme.Name, BeginDraft.NextName(club.Book.EditionsOf(programme.LadderId).Length)), $"Begun from the sample ladder {sample.Edition.Ladder}.") : null,
            "text" => OfText(sent, TextPosts.Typed(fields["text"])),
            _ => ((Edition, string)?)null,
        };
        if (!sent.IsTaken)
        {
            return OnePage.Of<SyllabusPage>(new Dictionary<string, object?>
            {
                [nameof(SyllabusPage.Programme)] = programme.Id,
                [nameof(SyllabusPage.Refused)] = sent.Kept(),
            });
        }

        if (begun is not var (edition, said)) return SyllabusPosts.Gone(page);
        return await club.House.Syllabus.StartAsync(programme.Id, edition, said, acting.Id, club.Device, cancel) switch
        {
            StartOutcome.Begun => Redirects.SeeOther(SyllabusAddress.Of(SyllabusAddress.Draft, programme.Id), new FlashMessage(said, "Nothing counts before it is published.")),
            StartOutcome.AlreadyThere => Redirects.SeeOther(SyllabusAddress.Of(SyllabusAddress.Draft, programme.Id), new FlashMessage("There is a draft already.", "This is how it stands. Throw it away to begin another.", NeedsALook: true)),
            _ => SyllabusPosts.Gone(SyllabusAddress.Page),
        };
    }

    private static (Edition, string)? OfText(SentForm sent, string text)
    {
        if (text.Trim().Length == 0)
        {
            sent.Refuse("text", "There is no text. Paste a ladder in the text format, or begin with something else.");
            return null;
        }

        switch (SyllabusText.Read(text, TextPosts.FileName))
        {
            case SyllabusReading.Read read: return (read.Edition with { From = null }, "Begun from a text.");
            case SyllabusReading.Faulty faulty:
                foreach (var fault in faulty.Faults) sent.Refuse("text", TextPosts.Sentence(fault));
                return null;
            default: return null;
        }
    }
}
