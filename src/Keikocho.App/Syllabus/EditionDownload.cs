using System.Text;
using Keikocho.App.Club;
using Keikocho.App.Syllabus.Edits;
using Keikocho.Store.Starter;

namespace Keikocho.App.Syllabus;

/// <summary>A published edition as a text that another club, or another program, can read.</summary>
internal static class EditionDownload
{
    public static IResult Read(Guid id, OpenClub club, HttpContext http)
    {
        var edition = club.Book.Programmes.SelectMany(p => club.Book.EditionsOf(p.LadderId)).FirstOrDefault(e => e.Id == id);
        if (edition is null) return Results.NotFound();
        // The file's name holds the ladder's and the edition's own words, as far as they are plain letters.
        http.Response.Headers.ContentDisposition = $"attachment; filename=\"{EditionKeys.Make($"{edition.Edition.Ladder} {edition.Name}", [])}.toml\"";
        return Results.Text(SyllabusText.Write(edition.Edition), "text/plain", Encoding.UTF8);
    }
}
