using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>How often a word is asked again, and how many on one evening.</summary>
/// <param name="Ask">So many words on one evening. Proposed 5 (ours, no source).</param>
public sealed record WordsDueRule(int Ask = 5)
{
    private static readonly WholeNumberSetting Words = new("words.ask", "Words asked of one end on one evening", 5, "words", 1, 20, Setting.Ours);

    /// <summary>Classes from one asking to the next, by step: a right answer goes one step up, a wrong one back to the first.</summary>
    public static IReadOnlyList<int> Gaps { get; } = [1, 2, 4, 8];

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Words];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() => [Words.Use(Ask)];

    internal void Guard() => Words.Guard(Ask, nameof(Ask));

    /// <summary>The step after some answers, oldest first: nobody is asked only what they know, and what is known is asked more seldom.</summary>
    public static int StepAfter(IEnumerable<bool> rights)
    {
        ArgumentNullException.ThrowIfNull(rights);
        var step = 0;
        foreach (var right in rights)
            step = right ? Math.Min(step + 1, Gaps.Count - 1) : 0;
        return step;
    }
}

/// <summary>A word or a question.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Name">As it is asked.</param>
/// <param name="Safety">A word that stops everything, or the tap.</param>
public sealed record DueWord(string Key, string Name, bool Safety = false);

/// <summary>Where one child stands with one word.</summary>
/// <param name="Word">Key of the word.</param>
/// <param name="ClassesAgo">Last asked so many of the child's own classes ago; 1 for the last one.</param>
/// <param name="Step">0 to 3.</param>
public sealed record AskedBefore(string Word, int ClassesAgo, int Step);

/// <summary>A child that may be asked.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Asked">Words that it was asked before; one that is not here was never asked.</param>
public sealed record WordChild(string Key, IReadOnlyList<AskedBefore> Asked);

/// <summary>The question: which words are due at one end.</summary>
/// <param name="Words">The words of this end, in the order of the list.</param>
/// <param name="Children">Those present, in register order.</param>
/// <param name="Rule">The rule.</param>
public sealed record WordsDueSnapshot(IReadOnlyList<DueWord> Words, IReadOnlyList<WordChild> Children, WordsDueRule Rule);

/// <summary>A word that is asked tonight.</summary>
/// <param name="Key">The word.</param>
/// <param name="Name">As it is asked.</param>
/// <param name="DueFor">Keys of the children for whom it is due, in register order.</param>
/// <param name="Overdue">Classes over, all of them together.</param>
/// <param name="Because">Why.</param>
public sealed record WordToAsk(string Key, string Name, IReadOnlyList<string> DueFor, int Overdue, Reason Because);

/// <summary>The words of tonight.</summary>
/// <param name="Words">The first to ask first; fewer than asked for where fewer are due.</param>
/// <param name="Settings">The settings used.</param>
public sealed record WordsDueAnswer(IReadOnlyList<WordToAsk> Words, IReadOnlyList<SettingUsed> Settings);

/// <summary>A word is due for some of those present.</summary>
/// <param name="Name">The word.</param>
/// <param name="Children">For so many.</param>
/// <param name="Of">Of so many present.</param>
/// <param name="Overdue">Classes over, together.</param>
/// <param name="NeverAsked">How many of them were never asked.</param>
/// <param name="Safety">A safety word.</param>
public sealed record WordIsDue(string Name, int Children, int Of, int Overdue, int NeverAsked, bool Safety) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"{Name} is due for {Children} of {Words.Count(Of, "child", "children")} here"
        + (NeverAsked > 0 ? $", {NeverAsked} of them never asked" : "")
        + (Overdue > 0 ? $", {Words.Count(Overdue, "class", "classes")} overdue together" : "")
        + (Safety ? "; it is a safety word" : "") + ".";
}
