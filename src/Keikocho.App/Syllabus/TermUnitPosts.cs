using Keikocho.App.Club;
using Keikocho.App.Shared;

namespace Keikocho.App.Syllabus;

/// <summary>Takes a term's unit.</summary>
internal static class TermUnitPosts
{
    public static async Task<IResult> SetAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var programme = Draft.DraftDesk.Chosen(club, sent.Id("programme"));
        var back = SyllabusAddress.Of(SyllabusAddress.Page, programme.Id, "units-part");
        if (club.Acting is not { } acting) return SyllabusPosts.NobodyActs(SyllabusAddress.Of(SyllabusAddress.Page, programme.Id));
        var term = club.Book.Terms.FirstOrDefault(t => t.Id == sent.Id("term"));
        var key = sent.Text("unit");
        var unit = (club.Book.EditionOn(programme.LadderId, term?.To ?? club.Today) ?? club.Book.NewestEdition(programme.LadderId))?.Edition.Units.FirstOrDefault(u => u.Key == key);
        if (term is null || (unit is null && key.Length > 0)) return SyllabusPosts.Gone(back);
        await club.House.Syllabus.SetUnitAsync(programme.Id, term.Id, unit?.Key, acting.Id, club.Device, cancel);
        return Redirects.SeeOther(back, new FlashMessage(unit is null ? $"{term.Name} has no unit." : $"{term.Name}: {unit.Name}."));
    }
}
