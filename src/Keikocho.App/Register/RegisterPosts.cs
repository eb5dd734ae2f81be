using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Microsoft.AspNetCore.Mvc;

namespace Keikocho.App.Register;

/// <summary>What the register's form posts: one tap, undo, the rest, a new child.</summary>
public static class RegisterPosts
{
    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Teaching | Role.JuniorLeader, Device.Laptop | Device.Tablet);
        app.MapPost(RegisterAddress.Mark, MarkAsync).WithMetadata(seen);
        app.MapPost(RegisterAddress.Undo, UndoAsync).WithMetadata(seen);
        app.MapPost(RegisterAddress.Rest, RestAsync).WithMetadata(seen);
        app.MapPost(RegisterAddress.New, NewAsync).WithMetadata(seen);
    }

    private static async Task<IResult> MarkAsync(HttpContext http, OpenClub club, [FromForm] TapForm form, CancellationToken cancel)
    {
        if (Check(club, form.Lesson) is not { } lesson) return Gone();
        if (club.Acting is not { } acting) return NobodyActs(form);
        var (person, kind, at) = form.Read(lesson, club.Today, club.Clock.LocalTime);
        if (person is not { } who) return Results.BadRequest();
        if (lesson.Date > club.Today && kind is MarkKind.Present or MarkKind.Left) return NotYet(lesson);
        // A page holds one id for all its buttons: gone back to, it would send the id of a mark that is stored about somebody else.
        var command = AnotherId.Of(form.Command ?? Guid.CreateVersion7(club.Clock.Now), $"{who:D} {(form.Bow is null ? kind : "bow")}");
        if (form.Bow is not null)
        {
            var isStored = await club.House.Marks.CorrectAsync(
                command, lesson.Id, who, MarkKind.Present, null, club.Today, club.AttendanceRules, acting.Id, club.Device, cancel);
            if (!isStored) return Gone();
        }
        else
        {
            var tap = new Tap(command, club.Device, form.Sequence, lesson.Id, who, acting.Id, club.Clock.Now, kind, at);
            if (await club.House.Marks.TapAsync(tap, club.Today, club.AttendanceRules, cancel) == TapOutcome.Unknown) return Gone();
        }

        return Answer(http, club, lesson, form.IsAfterwards, [who], null);
    }

    private static async Task<IResult> UndoAsync(HttpContext http, OpenClub club, [FromForm] TapForm form, CancellationToken cancel)
    {
        if (Check(club, form.Lesson) is not { } lesson) return Gone();
        if (club.Acting is not { } acting) return NobodyActs(form);
        var id = AnotherId.Of(form.Command ?? Guid.CreateVersion7(club.Clock.Now), "undo");
        var people = await club.House.Marks.UndoAsync(id, lesson.Id, club.Today, club.AttendanceRules, acting.Id, club.Device, cancel);
        var said = people.Count switch
        {
            0 => "Nothing to undo on this device.",
            1 => $"Taken back: {club.Book.Person(people[0])?.CallName}.",
            _ => $"Taken back: {people.Count} marks.",
        };
        return Answer(http, club, lesson, form.IsAfterwards, people, said);
    }

    private static async Task<IResult> RestAsync(HttpContext http, OpenClub club, [FromForm] TapForm form, CancellationToken cancel)
    {
        if (Check(club, form.Lesson) is not { } lesson) return Gone();
        if (club.Acting is not { } acting) return NobodyActs(form);
        if (lesson.Date > club.Today) return NotYet(lesson);
        var register = club.Book.RegisterOf(lesson.ProgrammeId, lesson.Date).Select(e => e.PersonId).Distinct().ToList();
        var marked = await club.House.Marks.RestAbsentAsync(lesson.Id, register, club.Today, club.AttendanceRules, acting.Id, club.Device, cancel);
        var said = marked == 0 ? "Everybody is marked already." : $"{marked} marked absent. Undo takes all of them back.";
        return Answer(http, club, lesson, form.IsAfterwards, register, said);
    }

    private static async Task<IResult> NewAsync(OpenClub club, [FromForm] NewTonightFields form, CancellationToken cancel)
    {
        if (Check(club, form.Lesson) is not { } lesson) return Gone();
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(RegisterAddress.Of(lesson.Id)));
        if (lesson.Date > club.Today) return NotYet(lesson);
        var given = form.Given?.Trim() ?? "";
        if (given.Length == 0 || form.Person is not { } person)
        {
            return OnePage.Of<NewTonightPage>(new Dictionary<string, object?>
            {
                [nameof(NewTonightPage.Lesson)] = lesson.Id,
                [nameof(NewTonightPage.Typed)] = form,
                [nameof(NewTonightPage.Errors)] = new List<FieldError> { new("given", "The first name is missing. Type what the child is called.") },
            });
        }

        var at = form.Afterwards == "yes" || lesson.Date != club.Today || club.Clock.LocalTime > lesson.End ? (TimeOnly?)null : club.Clock.LocalTime;
        var isAdded = await club.House.People.AddNewTonightAsync(
            new NewTonight(person, given, form.Initial ?? "", form.Phone ?? "", lesson.Id, at), club.AttendanceRules, acting.Id, club.Device, cancel);
        if (!isAdded) return Gone();
        return Redirects.SeeOther(
            RegisterAddress.Of(lesson.Id, form.Afterwards == "yes"),
            new FlashMessage($"{given} is on the register and marked present.", "No falls tonight before an adult has seen them; the birth date can wait."));
    }

    /// <summary>A script gets the tiles that changed and the counts; a form goes back to the page.</summary>
    private static IResult Answer(HttpContext http, OpenClub club, LessonRow lesson, bool afterwards, IReadOnlyList<Guid> people, string? said)
    {
        if (!http.Request.Headers.Accept.ToString().Contains("application/json", StringComparison.OrdinalIgnoreCase))
            return Redirects.SeeOther(RegisterAddress.Of(lesson.Id, afterwards), said is null ? null : new FlashMessage(said));
        var view = RegisterView.Of(club, lesson, afterwards);
        var tiles = people.Select(view.Tile).OfType<RegisterTile>().Select(t => new TileAnswer(t.PersonId, t.Name, t.Mark, t.Words, StampSign.Of(t.Stamp)));
        return Results.Json(new TapAnswer([.. tiles], view.Tally, said));
    }

    private static LessonRow? Check(OpenClub club, Guid lesson) => club.Book.Lesson(lesson);

    private static IResult Gone() =>
        Redirects.SeeOther(RegisterAddress.Page, new FlashMessage("Not stored.", "That lesson or child is not in this club’s file any more. Here is tonight’s register.", NeedsALook: true));

    private static IResult NotYet(LessonRow lesson) => Redirects.SeeOther(
        RegisterAddress.Of(lesson.Id),
        new FlashMessage(
            "Not stored.",
            $"The lesson of {lesson.Date.WithWeekday()} is still to come: until then only absent and “absent, told us” can be marked.",
            NeedsALook: true));

    private static IResult NobodyActs(TapForm form) => Redirects.SeeOther(ActingAddress.From(RegisterAddress.Of(form.Lesson, form.IsAfterwards)));
}

/// <summary>One tap as the form sends it: exactly one of the names of the buttons has a person in it.</summary>
public sealed class TapForm
{
    /// <summary>Which lesson.</summary>
    public Guid Lesson { get; set; }
    /// <summary>Id of the mark, made with the form or by the script.</summary>
    public Guid? Command { get; set; }
    /// <summary>The device's own count, from a script.</summary>
    public int? Sequence { get; set; }
    /// <summary>"yes" when it is filled in as from the bow.</summary>
    public string? Afterwards { get; set; }
    /// <summary>Who is here.</summary>
    public Guid? Present { get; set; }
    /// <summary>Who leaves now.</summary>
    public Guid? Left { get; set; }
    /// <summary>Who is absent and told us.</summary>
    public Guid? Told { get; set; }
    /// <summary>Who is absent.</summary>
    public Guid? Absent { get; set; }
    /// <summary>Who was here from the bow, whatever was marked before.</summary>
    public Guid? Bow { get; set; }

    /// <summary>An adult without a tile, chosen from the list.</summary>
    public Guid? Another { get; set; }
    /// <summary>"another" when the list's own button was pressed.</summary>
    public string? Adult { get; set; }

    /// <summary>Filled in as from the bow.</summary>
    public bool IsAfterwards => Afterwards == "yes";

    internal (Guid? Person, MarkKind Kind, TimeOnly? At) Read(LessonRow lesson, DateOnly today, TimeOnly now)
    {
        // The clock speaks only while the lesson is on and nobody said "afterwards".
        var clock = IsAfterwards || lesson.Date != today || now > lesson.End ? (TimeOnly?)null : now;
        return this switch
        {
            { Present: { } p } => (p, MarkKind.Present, clock),
            { Left: { } p } => (p, MarkKind.Left, clock),
            { Told: { } p } => (p, MarkKind.Excused, null),
            { Absent: { } p } => (p, MarkKind.Absent, null),
            { Adult: "another", Another: { } p } => (p, MarkKind.Present, clock),
            { Bow: { } p } => (p, MarkKind.Present, null),
            _ => (null, MarkKind.Present, null),
        };
    }
}

/// <summary>New tonight as the form sends it.</summary>
public sealed class NewTonightFields
{
    /// <summary>Which lesson.</summary>
    public Guid Lesson { get; set; }
    /// <summary>Id of the child, made with the form.</summary>
    public Guid? Person { get; set; }
    /// <summary>First name.</summary>
    public string? Given { get; set; }
    /// <summary>Family name or initial.</summary>
    public string? Initial { get; set; }
    /// <summary>An adult's phone.</summary>
    public string? Phone { get; set; }
    /// <summary>"yes" when it is filled in as from the bow.</summary>
    public string? Afterwards { get; set; }
}

/// <summary>What a script gets: the tiles that changed, the counts, and a sentence to say.</summary>
public sealed record TapAnswer(IReadOnlyList<TileAnswer> Tiles, RegisterTally Tally, string? Said);

/// <summary>One tile that changed.</summary>
public sealed record TileAnswer(Guid Person, string Name, string Mark, string Words, string Sign);

/// <summary>The sign of a stamp, for the script.</summary>
public static class StampSign
{
    /// <summary>The sign; empty for none.</summary>
    public static string Of(StampKind kind) => kind switch
    {
        StampKind.Present => "出",
        StampKind.Late => "遅",
        StampKind.LeftEarly => "早",
        StampKind.Told => "届",
        StampKind.Absent => "欠",
        StampKind.None => "",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "There is no such stamp."),
    };
}
