using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Kernel;
using Keikocho.Core.Readiness;
using Keikocho.Store.Promotion;
using Microsoft.AspNetCore.Mvc;

namespace Keikocho.App.PromotionTests;

/// <summary>What the form of a decided verdict holds.</summary>
public sealed class OverruleFields
{
    /// <summary>Made with the form.</summary>
    public Guid? Command { get; set; }

    /// <summary>What holds instead.</summary>
    public string? Verdict { get; set; }

    /// <summary>The reason.</summary>
    public string? Reason { get; set; }
}

/// <summary>What the pages of a promotion test post.</summary>
public static class TestPosts
{
    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Instructor, Device.Laptop);
        app.MapPost($"{TestAddress.ChildRoute}/overrule", OverruleAsync).WithMetadata(seen);
        app.MapPost($"{TestAddress.ChildRoute}/take-back", TakeBackAsync).WithMetadata(seen);
        app.MapPost($"{TestAddress.TestRoute}/close", CloseAsync).WithMetadata(seen);
        app.MapPost($"{TestAddress.TestRoute}/decide", DecideAsync).WithMetadata(seen);
    }

    private static async Task<IResult> OverruleAsync(Guid id, Guid person, OpenClub club, TestReckoning tests, [FromForm] OverruleFields form, CancellationToken cancel)
    {
        if (TestChildView.Of(club, tests, id, person) is not { Child.Target: not null } view) return Gone();
        if (!club.InstructorActs) return NotAnInstructor(TestAddress.Child(id, person));
        var errors = new List<FieldError>();
        ReadyWord? to = form.Verdict switch { "1" => ReadyWord.PutForward, "2" => ReadyWord.If, "3" => ReadyWord.NotThisTime, _ => null };
        if (to is null) errors.Add(new("verdict", "Choose what holds instead."));
        var why = form.Reason?.Trim() ?? "";
        if (why.Length == 0) errors.Add(new("reason", "The reason is missing: a decision against the sum needs one."));
        else if (why.Length > 300) errors.Add(new("reason", "That is longer than 300 characters. Say it shorter."));
        if (errors.Count == 0)
        {
            // The sum itself says whether a safety gate stands against it.
            var asked = ReckonReadiness.Reckon(view.Child.Parts with { Overrule = new Overrule(to!.Value, club.Acting!.FullName, club.Today, why) });
            if (asked.OverruleRefused is { } refused) errors.Add(new("verdict", refused));
        }

        if (errors.Count > 0)
        {
            return OnePage.Of<TestChildBody>(new Dictionary<string, object?>
            {
                [nameof(TestChildBody.View)] = view,
                [nameof(TestChildBody.Errors)] = errors,
                [nameof(TestChildBody.Sent)] = form,
            });
        }

        var outcome = await club.House.Promotion.OverruleAsync(
            form.Command ?? Guid.CreateVersion7(club.Clock.Now), id, person, (int)to!.Value, why, club.Acting!.Id, club.Device, cancel);
        return Done(TestAddress.Child(id, person), outcome, $"{view.Child.Person.CallName}: {VerdictWords.Of(to.Value)}, as decided.", "The sum’s own word and the reason stay beside it.");
    }

    private static async Task<IResult> TakeBackAsync(Guid id, Guid person, OpenClub club, [FromForm] OverruleFields form, CancellationToken cancel)
    {
        if (club.Book.Tests.All(t => t.Id != id) || club.Book.Person(person) is not { IsErased: false } child) return Gone();
        if (!club.InstructorActs) return NotAnInstructor(TestAddress.Child(id, person));
        var outcome = await club.House.Promotion.OverruleAsync(
            form.Command ?? Guid.CreateVersion7(club.Clock.Now), id, person, 0, null, club.Acting!.Id, club.Device, cancel);
        return Done(TestAddress.Child(id, person), outcome, $"{child.CallName}: the decision is taken back.", "What the sum says holds again; the decision stays in the history.");
    }

    private static async Task<IResult> CloseAsync(Guid id, HttpContext http, OpenClub club, TestReckoning tests, CancellationToken cancel)
    {
        var form = await http.Request.ReadFormAsync(cancel);
        if (club.Book.Tests.FirstOrDefault(t => t.Id == id && t.Date >= club.Today) is not { } test) return Gone();
        if (!club.InstructorActs) return NotAnInstructor(TestAddress.Of(id));
        if (!Guid.TryParse(form["command"], out var command)) return Results.BadRequest();
        var list = tests.Of(club, test);
        if (list.Edition is null)
            return Redirects.SeeOther(TestAddress.Of(id), new FlashMessage("Nothing was closed.", "No syllabus holds on the day of this test, so nobody can be put forward yet.", NeedsALook: true));
        var outcome = await club.House.Promotion.CloseListAsync(
            command, id, KeptList.HashOf(list), KeptList.SumVersion, SumJson.Write(KeptList.Of(list)), club.Acting!.Id, club.Device, cancel);
        var number = list.Children.Count(c => c.Answer.Verdict == ReadyWord.PutForward);
        return Done(TestAddress.Of(id), outcome, $"The list is closed with {Counted.Of(number, "child", "children")}.", "Who becomes ready now is a late addition to decide.");
    }

    private static async Task<IResult> DecideAsync(Guid id, HttpContext http, OpenClub club, TestReckoning tests, CancellationToken cancel)
    {
        var form = await http.Request.ReadFormAsync(cancel);
        if (TestView.Of(club, tests, id) is not { Kept: { } kept } view) return Gone();
        if (!club.InstructorActs) return NotAnInstructor(TestAddress.Of(id));
        if (!Guid.TryParse(form["command"], out var command) || !Guid.TryParse(form["person"], out var person) || !Guid.TryParse(form["basis"], out var basis) || form["on"].ToString() is not ("yes" or "no"))
            return Results.BadRequest();
        if (view.ToDecide.FirstOrDefault(l => l.PersonId == person) is not { } line) return Done(TestAddress.Of(id), TestOutcome.TooLate, "", "");
        var isOn = form["on"] == "yes";
        var decided = kept with { Decisions = [.. kept.Decisions, new KeptDecision(person, isOn, line.Verdict, club.Today, club.Acting!.Id)] };
        var outcome = await club.House.Promotion.DecideAsync(command, id, basis, SumJson.Write(decided), club.Acting!.Id, club.Device, cancel);
        return Done(TestAddress.Of(id), outcome, $"{line.Name} is {(isOn ? "on the list" : "not on the list")}.", "The list as it was closed is kept beside it.");
    }

    private static IResult Done(string address, TestOutcome outcome, string title, string more) => Redirects.SeeOther(address, outcome switch
    {
        TestOutcome.Stored => new FlashMessage(title, more),
        TestOutcome.AlreadyStored => new FlashMessage("Nothing was changed.", "It stands so already."),
        TestOutcome.TooLate => new FlashMessage("Nothing was changed.", "The results are locked, or somebody decided elsewhere meanwhile. Look at the page and try once more.", NeedsALook: true),
        TestOutcome.NotSaid => new FlashMessage("Nothing was changed.", "A decision against the sum needs a reason.", NeedsALook: true),
        _ => new FlashMessage("Nothing was changed.", "There is no such decision, test or child any more. Look at the page.", NeedsALook: true),
    });

    private static IResult Gone() => Redirects.SeeOther(TestAddress.Page, new FlashMessage("Nothing was changed.", "That test is over or removed, or the child is not on its register any more.", NeedsALook: true));

    private static IResult NotAnInstructor(string address) =>
        Redirects.SeeOther(address, new FlashMessage("Nothing was changed.", "An instructor decides this. Choose who holds this device, or ask one.", NeedsALook: true));
}
