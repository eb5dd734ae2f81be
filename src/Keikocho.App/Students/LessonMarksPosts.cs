using Keikocho.App.Club;
using Keikocho.App.People;
using Keikocho.App.Shared;
using Microsoft.AspNetCore.Mvc;

namespace Keikocho.App.Students;

/// <summary>Takes the correction of one child's marks at one lesson.</summary>
public static class LessonMarksPosts
{
    /// <summary>Adds the endpoint.</summary>
    public static void Map(WebApplication app) =>
        app.MapPost(StudentAddress.LessonRoute, CorrectAsync).WithMetadata(new SeenByAttribute(Role.Instructor, Device.Laptop));

    private static async Task<IResult> CorrectAsync(Guid id, Guid lesson, OpenClub club, [FromForm] CorrectionFields form, CancellationToken cancel)
    {
        if (LessonMarksView.Of(club, id, lesson) is not { } view) return Results.NotFound();
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(StudentAddress.Lesson(id, lesson)));
        var (correction, errors) = form.Read(view);
        if (correction is null)
        {
            return OnePage.Of<LessonMarksBody>(new Dictionary<string, object?>
            {
                [nameof(LessonMarksBody.View)] = view,
                [nameof(LessonMarksBody.Errors)] = errors,
                [nameof(LessonMarksBody.Typed)] = form,
            });
        }

        var isCorrected = await club.House.Marks.CorrectAsync(
            form.Command ?? Guid.CreateVersion7(club.Clock.Now), lesson, id, correction.To, correction.At, club.Today, club.AttendanceRules, acting.Id, club.Device, cancel);
        if (!isCorrected) return Results.NotFound();
        return Redirects.SeeOther(StudentAddress.Lesson(id, lesson), new FlashMessage("Corrected.", "Every earlier mark is still listed below."));
    }
}
