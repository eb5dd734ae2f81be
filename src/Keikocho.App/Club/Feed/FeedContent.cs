namespace Keikocho.App.Club.Feed;

/// <summary>All that the calendar feed holds; there is no place in it for a person.</summary>
/// <param name="Club">Name of the club.</param>
/// <param name="Lessons">Lessons that are held.</param>
/// <param name="Tests">Promotion tests.</param>
/// <param name="Closures">Closures.</param>
public sealed record FeedContent(
    string Club, IReadOnlyList<FeedLesson> Lessons, IReadOnlyList<FeedTest> Tests, IReadOnlyList<FeedClosure> Closures);

/// <summary>A lesson.</summary>
/// <param name="Id">The lesson; its event keeps this identity for ever.</param>
/// <param name="Programme">Name of the programme.</param>
/// <param name="Hall">Where; null where it has no name.</param>
/// <param name="Start">The bow, in UTC.</param>
/// <param name="End">The bow out, in UTC.</param>
public sealed record FeedLesson(Guid Id, string Programme, string? Hall, DateTimeOffset Start, DateTimeOffset End);

/// <summary>A promotion test.</summary>
/// <param name="Id">The test.</param>
/// <param name="Programme">Name of the programme.</param>
/// <param name="Date">Its day.</param>
public sealed record FeedTest(Guid Id, string Programme, DateOnly Date);

/// <summary>A closure.</summary>
/// <param name="Id">The closure.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Programme">Only this programme; null for all.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day, inclusive.</param>
public sealed record FeedClosure(Guid Id, string Name, string? Programme, DateOnly From, DateOnly To);
