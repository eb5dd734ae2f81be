using System.Collections.Immutable;

namespace Keikocho.App.Mat;

/// <summary>
/// What an instructor's tablet holds of each child beside the evening: what is still missing for the next test, and the ready phrases of
/// a note. It is fetched anew only when <see cref="At"/> has changed, and kept for when there is no network.
/// </summary>
/// <param name="At">Changes with what it rests on.</param>
/// <param name="Phrases">The ready phrases, in the order of their file.</param>
/// <param name="Lessons">By lesson of the evening.</param>
public sealed record MatLacks(string At, ImmutableArray<MatPhrase> Phrases, ImmutableArray<MatLessonLacks> Lessons);

/// <summary>A ready phrase: two lines.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Seen">What was seen.</param>
/// <param name="Next">What to work on next.</param>
public sealed record MatPhrase(string Key, string Seen, string Next);

/// <summary>The children of one lesson.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="Test">"Test on Saturday 5 December 2026", or that none is set.</param>
/// <param name="AsOf">Up to which evening everything is counted.</param>
/// <param name="Children">In register order.</param>
public sealed record MatLessonLacks(Guid Lesson, string Test, string AsOf, ImmutableArray<MatChildLacks> Children);

/// <summary>What one child still lacks for the next test, in plain words: no weight, no reason of a stand-down, no other child.</summary>
/// <param name="Child">Who.</param>
/// <param name="Rank">The rank that is tested for; empty where none is.</param>
/// <param name="Verdict">"Put forward", "If", "Not this time"; empty where there is nothing to be tested for.</param>
/// <param name="Says">What stands beside the verdict, in sentences: lessons, time, and what stands for now without its reason.</param>
/// <param name="Falls">Falls that are still missing, a phrase each.</param>
/// <param name="Items">Everything else that is still missing, a phrase each.</param>
public sealed record MatChildLacks(
    Guid Child, string Rank, string Verdict, ImmutableArray<string> Says, ImmutableArray<string> Falls, ImmutableArray<string> Items);
