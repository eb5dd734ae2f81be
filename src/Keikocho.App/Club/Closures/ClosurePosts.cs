using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;

namespace Keikocho.App.Club.Closures;

/// <summary>Takes closures. Where the register has marks, it asks lesson by lesson before anything is saved (statement 2).</summary>
internal static class ClosurePosts
{
    private const string Part = "closures-part";
    private const string Answer = "lesson-";
    private const int LongestDays = 370;

    /// <summary>"27 October 2026", or "24 October 2026 to 1 November 2026".</summary>
    public static string Days(DateOnly from, DateOnly to) => from == to ? from.Full() : $"{from.Full()} to {to.Full()}";

    public static async Task<IResult> AddAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        if (Read(club, sent) is not { } asked) return sent.Again();
        var answers = Answers(sent);
        HashSet<Guid> Said(string word) => [.. answers.Where(a => a.Value == word).Select(a => a.Key)];
        var held = Said("held");
        var outcome = await club.House.Calendar.AddClosureAsync(
            asked, held, Said("closed"), club.AttendanceRules, club.Acting?.Id, club.Device, cancel);
        if (outcome.Ask.Count > 0) return Ask(club, sent, asked, answers, outcome.Ask);
        if (!outcome.Saved)
            return Redirects.SeeOther(ClubAddress.At(Part), new FlashMessage("No closure was saved.", "Every lesson that it covers was held, and stays in every count."));
        var kept = held.Count == 0 ? "Lessons on those days are out of every count; no child has lost one by it."
            : $"Held after all: {Counted.Of(held.Count, "lesson")}, still in every count.";
        return Redirects.SeeOther(ClubAddress.At(Part), new FlashMessage($"{asked.Name} is saved.", kept));
    }

    public static async Task<IResult> RemoveAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        if (new SentForm(fields).Id("closure") is not { } id || club.Book.Closure(id) is not { } closure) return SentForm.Gone(Part);
        return await club.House.Calendar.RemoveClosureAsync(id, club.AttendanceRules, club.Acting?.Id, club.Device, cancel)
            ? Redirects.SeeOther(ClubAddress.At(Part), new FlashMessage($"{closure.Name} is removed.", "Its lessons count again, with the marks that were there all along."))
            : SentForm.Gone(Part);
    }

    private static NewClosure? Read(OpenClub club, SentForm sent)
    {
        var name = sent.Name("closure-name", "The closure has no name. “Half-term” or “Hall lost” will do.");
        var days = sent.Days("closure-from", "closure-to", LongestDays, "That closure is longer than a year. Type its last day.");
        var programme = sent.Id("closure-programme");
        if (sent.Text("closure-programme").Length > 0 && (programme is not { } id || club.Book.Programme(id) is null))
            sent.Refuse("closure-programme", "Choose a programme, or all of them.");
        if (days is { } span && club.Book.Closures.Any(c => c.From == span.From && c.To == span.To && c.ProgrammeId == programme && c.Name == name))
            sent.Refuse("closure-name", $"{name} is there already for these days.");
        return sent.IsTaken ? new NewClosure(name, days!.Value.From, days.Value.To, programme, null) : null;
    }

    private static Dictionary<Guid, string> Answers(SentForm sent) => sent.NamesFrom(Answer)
        .Select(name => (Lesson: Guid.TryParse(name[Answer.Length..], out var id) ? id : Guid.Empty, Word: sent.Text(name)))
        .Where(a => a.Lesson != Guid.Empty && a.Word is "held" or "closed")
        .ToDictionary(a => a.Lesson, a => a.Word);

    private static IResult Ask(
        OpenClub club, SentForm sent, NewClosure asked, Dictionary<Guid, string> answers, IReadOnlyList<MarkedLesson> unanswered)
    {
        var open = unanswered.Select(l => l.LessonId).ToHashSet();
        var ids = open.Concat(answers.Keys).Distinct().ToList();
        var here = AttendanceReader.HereAt(club.Db, ids);
        // A lesson of long ago may be older than the book; the store has said all that is needed of it.
        var lessons = club.Db.Lessons.Where(l => ids.Contains(l.Id)).ToList().OrderBy(l => l.Date).ThenBy(l => l.Start).ThenBy(l => l.Id)
            .Select(l => new AskedLesson(
                $"{Answer}{l.Id:N}",
                $"{l.Date.WithWeekday()}, {l.Start.Plain()}, {club.Book.Programme(l.ProgrammeId)!.Name}: {here.GetValueOrDefault(l.Id)} were here",
                $"{l.Date.WithWeekday()}, {club.Book.Programme(l.ProgrammeId)!.Name}: was it held, or closed?",
                answers.GetValueOrDefault(l.Id)))
            .ToList();
        var errors = sent.Text("asked").Length == 0
            ? []
            : lessons.Where(l => l.Answer is null).Select(l => new FieldError(l.Field, l.Question)).ToList();
        return OnePage.Of<ClosureQuestionPage>(new Dictionary<string, object?>
        {
            [nameof(ClosureQuestionPage.Asked)] = asked,
            [nameof(ClosureQuestionPage.Lessons)] = lessons,
            [nameof(ClosureQuestionPage.Errors)] = errors,
        });
    }
}
