using Keikocho.App.Club;
using Keikocho.App.Hall;
using Keikocho.App.Hosting;
using Keikocho.App.Register;
using Keikocho.App.Shared;
using Keikocho.Core.Evening;
using Keikocho.Store.Evening;
using Keikocho.Store.Hall;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Mvc;

namespace Keikocho.App.Mat;

/// <summary>What the tablet's page fetches and hands in.</summary>
public static class MatPosts
{
    /// <summary>The most marks of one request; a tablet with more sends several.</summary>
    public const int MostMarks = 200;

    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Teaching | Role.JuniorLeader, Device.Tablet);
        app.MapGet(MatAddress.Evening, Evening).WithMetadata(seen);
        app.MapGet(MatAddress.Lacks, Lacks).WithMetadata(new SeenByAttribute(Role.Teaching, Device.Tablet));
        app.MapGet(MatAddress.Token, Token).WithMetadata(seen, new AfterItsEveningAttribute());
        app.MapPost(MatAddress.Marks, TakeAsync).WithMetadata(seen, new AfterItsEveningAttribute());
    }

    private static IResult Evening(HttpContext http, OpenClub club, ReadMatEvening read, TabletsHeard heard, IAntiforgery tokens)
    {
        var seen = SeenAs.Of(http);
        if (seen.Join is { } join) heard.Note(join.DeviceId, join.Date, http.Request.Headers);
        return Results.Json(read.Of(club, seen, tokens.GetAndStoreTokens(http).RequestToken!), WebJson.Options);
    }

    private static IResult Lacks(HttpContext http, OpenClub club, LacksInHand lacks) =>
        SeenAs.Of(http).Join is { } join ? Results.Json(lacks.Of(club, join), WebJson.Options) : Results.NotFound();

    private static IResult Token(HttpContext http, IAntiforgery tokens) =>
        Results.Json(new { token = tokens.GetAndStoreTokens(http).RequestToken }, WebJson.Options);

    private static async Task<IResult> TakeAsync(HttpContext http, OpenClub club, TabletsHeard heard, [FromBody] HandIn handIn, CancellationToken cancel)
    {
        if (handIn.Marks.Length + handIn.Notes.Length > MostMarks) return Results.StatusCode(StatusCodes.Status413PayloadTooLarge);
        if (JoinReader.On(club.Reading, club.Device, handIn.Evening) is not { PutOutAt: null } join)
            return Results.Json(new { problem = "This tablet has not joined that evening." }, WebJson.Options, statusCode: StatusCodes.Status409Conflict);
        heard.Note(join.DeviceId, join.Date, http.Request.Headers);
        var taken = await club.House.HandIn.TakeAsync(join, [.. handIn.Marks.Select(m => m.Read())], [.. handIn.Notes.Select(n => n.Read())], club.Today, club.AttendanceRules, cancel);
        var answers = taken.Select(a => new HandInAnswer(a.Id, a.Fate != HandInFate.Refused, a.Why)).ToList();
        // Whose tiles changed: what the tablet shows is what the laptop holds. A tablet whose evening is over is told nothing of anybody.
        if (SeenAs.Of(http).Join is null) return Results.Json(new HandInDone(answers, [], null), WebJson.Options);
        var tiles = handIn.Marks.Where(m => m.Item is null && m.Kind is not MarkKind.Knock).Select(m => (m.Lesson, m.Person)).Distinct().GroupBy(m => m.Lesson)
            .Where(g => club.Book.Lesson(g.Key) is not null)
            .SelectMany(g =>
            {
                var view = RegisterView.Of(club, club.Book.Lesson(g.Key)!, afterwards: false);
                return g.Select(m => view.Tile(m.Person)).OfType<RegisterTile>().Select(t => new HandInTile(g.Key, t.PersonId, t.Mark, t.Words, StampSign.Of(t.Stamp)));
            });
        return Results.Json(new HandInDone(answers, [.. tiles], null), WebJson.Options);
    }
}

/// <summary>What a tablet hands in.</summary>
/// <param name="Evening">The date of the evening that it joined.</param>
/// <param name="Marks">In its own order.</param>
public sealed record HandIn(DateOnly Evening, HandInMark[] Marks)
{
    /// <summary>Notes by ready phrases, in its own order; a tablet that has none may leave them out.</summary>
    public HandInNote[] Notes { get; init; } = [];
}

/// <summary>One mark as a tablet writes it.</summary>
/// <param name="Id">Made on the tablet.</param>
/// <param name="Sequence">Its own count.</param>
/// <param name="Lesson">Which lesson.</param>
/// <param name="Person">Whom it speaks of.</param>
/// <param name="By">Who acted.</param>
/// <param name="MadeAt">Milliseconds since 1970 by the tablet's clock.</param>
/// <param name="Kind">What it says.</param>
/// <param name="At">Minutes since midnight at the club.</param>
/// <param name="Item">The item; the empty id for a fall.</param>
/// <param name="Code">The rest.</param>
/// <param name="Replaces">The mark it takes back.</param>
public sealed record HandInMark(
    Guid Id, int Sequence, Guid Lesson, Guid Person, Guid By, long MadeAt, MarkKind Kind, int? At = null, Guid? Item = null, int Code = 0, Guid? Replaces = null)
{
    private const int MinutesOfADay = 1440;

    internal static DateTimeOffset Instant(long madeAt) => DateTimeOffset.FromUnixTimeMilliseconds(Math.Clamp(madeAt, 0, 253_402_300_799_000));

    internal HandedMark Read() => new(
        Id, Sequence, Lesson, Person, By, Instant(MadeAt), Kind,
        At is { } minute and >= 0 and < MinutesOfADay ? new TimeOnly(minute / 60, minute % 60) : null, Item, Code, Replaces);
}

/// <summary>One note as a tablet writes it.</summary>
/// <param name="Id">Made on the tablet.</param>
/// <param name="Lesson">Which lesson.</param>
/// <param name="Person">The child.</param>
/// <param name="By">Who acted.</param>
/// <param name="MadeAt">Milliseconds since 1970 by the tablet's clock.</param>
/// <param name="Phrase">Key of the ready phrase.</param>
/// <param name="Replaces">The note that it takes back.</param>
public sealed record HandInNote(Guid Id, Guid Lesson, Guid Person, Guid By, long MadeAt, string? Phrase, Guid? Replaces = null)
{
    internal HandedNote Read() => new(Id, Lesson, Person, By, HandInMark.Instant(MadeAt), Phrase ?? "", Replaces);
}

/// <summary>What came of it.</summary>
/// <param name="Answers">A line a mark, in order.</param>
/// <param name="Tiles">What the register says now of those it speaks of.</param>
/// <param name="Problem">Why nothing was taken; null otherwise.</param>
public sealed record HandInDone(IReadOnlyList<HandInAnswer> Answers, IReadOnlyList<HandInTile> Tiles, string? Problem);

/// <summary>One mark's fate: taken, or refused for good with the reason.</summary>
public sealed record HandInAnswer(Guid Id, bool Taken, string? Why);

/// <summary>What the register says of one child or adult now.</summary>
public sealed record HandInTile(Guid Lesson, Guid Person, string Mark, string Words, string Sign);
