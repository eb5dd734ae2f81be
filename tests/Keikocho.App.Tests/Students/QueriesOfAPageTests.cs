using System.Collections.Concurrent;
using System.Data.Common;
using System.Diagnostics;
using System.Net;
using Keikocho.Core.Evening;
using Keikocho.Store.Book;
using Keikocho.Store.Engines;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Keikocho.App.Tests.Students;

/// <summary>
/// An everyday page asks the database at most four times, however many children there are; pairs and the closing of an evening, which no
/// tablet waits for, eight and eleven times. A child’s page asks for the club, what was seen, the marks behind it, the next test and knocks before it,
/// the child’s file, notes from the mat and whether there are care notes; once the evening is over, also whether it has new marks.
/// </summary>
public sealed class QueriesOfAPageTests
{
    private const int Most = 4, OfAChild = 8, OfAnEvening = 8, OfTheClose = 11;

    [Fact]
    public async Task Pages_of_forty_children_ask_few_questions()
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T16:40");
        Guid child = default;
        for (var i = 0; i < 40; i++) child = await club.JoinAsync($"Child{i}", "Hollis", SpringClub.FirstLesson);
        var lesson = club.Lesson(5, 14).Id;
        await club.MarkAsync(child, new DateOnly(2026, 5, 14), MarkKind.Present);
        var test = PromotionTests.TestDesk.Address(club);
        using var asked = new Asked(club.Folder);
        foreach (var address in new[] { "/students", "/students?search=child3", $"/students/{child}", $"/students/{child}/lessons/{lesson}", "/register", "/roll", "/tonight", "/cards", "/pairs", "/close", "/knocks", "/sightings", "/sightings/falls", "/mat-plan", "/papers", "/promotion-tests", test, $"{test}/children/{child}", "/syllabus", "/syllabus/draft", "/syllabus/draft/text" })
        {
            // What is kept between pages is read once; a tap of tonight leaves it alone.
            using var first = await club.Browser.GetAsync(address, SpringClub.Stop);
            // Tonight has no address before its page is there.
            if (address == "/tonight" && first.StatusCode == HttpStatusCode.NotFound) continue;
            Assert.Equal(HttpStatusCode.OK, first.StatusCode);
            await club.MarkAsync(child, new DateOnly(2026, 5, 14), MarkKind.Present, new TimeOnly(17, 41));
            asked.Clear();
            using var second = await club.Browser.GetAsync(address, SpringClub.Stop);
            var most = address == $"/students/{child}" ? OfAChild : address is "/pairs" ? OfAnEvening : address is "/close" ? OfTheClose : Most;
            Assert.True(asked.Count >= 1 && asked.Count <= most, $"{address} asked {asked.Count} questions; {most} are allowed.");
        }
    }

    [Fact]
    public async Task The_count_sees_every_question()
    {
        await using var club = await SpringClub.StartAsync();
        using var asked = new Asked(club.Folder);
        using var db = club.Db();
        _ = db.People.Count();
        _ = db.Lessons.Count();
        Assert.Equal(2, asked.Count);
        using var reading = club.Reading();
        Assert.NotNull(BookStore.ReadRevisions(reading, Guid.Empty));
        Assert.Equal(3, asked.Count);
    }

    /// <summary>Counts the commands on one file, whatever other tests run beside.</summary>
    private sealed class Asked : IObserver<DiagnosticListener>, IObserver<KeyValuePair<string, object?>>, IDisposable
    {
        private readonly string folder;
        private readonly IDisposable all;
        private readonly ConcurrentBag<IDisposable> subscriptions = [];
        private int count;

        public Asked(string folder)
        {
            this.folder = folder;
            all = DiagnosticListener.AllListeners.Subscribe(this);
        }

        public int Count => Volatile.Read(ref count);

        public void Clear() => Volatile.Write(ref count, 0);

        public void OnNext(DiagnosticListener value)
        {
            if (value.Name is "Microsoft.EntityFrameworkCore" or ReadSession.ListenerName) subscriptions.Add(value.Subscribe(this));
        }

        public void OnNext(KeyValuePair<string, object?> value)
        {
            var command = value.Value switch
            {
                CommandExecutedEventData data when value.Key == RelationalEventId.CommandExecuted.Name => data.Command,
                DbCommand sent when value.Key == ReadSession.Sent => sent,
                _ => null,
            };
            if (command?.Connection!.ConnectionString.Contains(folder, StringComparison.Ordinal) == true) Interlocked.Increment(ref count);
        }

        public void OnCompleted()
        {
        }

        public void OnError(Exception error) => throw new InvalidOperationException("The listener of the database failed.", error);

        public void Dispose()
        {
            all.Dispose();
            foreach (var subscription in subscriptions) subscription.Dispose();
        }
    }
}
