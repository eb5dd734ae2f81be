using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>Tonight's few whom nobody has looked at for longest.</summary>
public static class LookAt
{
    /// <summary>Chooses them: longest first, then nearest test, then register order.</summary>
    /// <exception cref="ArgumentException">A child twice, or a figure out of range.</exception>
    public static LookAtAnswer Choose(LookAtSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(snapshot.Rule);
        snapshot.Rule.Guard();
        NoGaps.In(snapshot.Children, "children");
        if (snapshot.Children.GroupBy(c => c.Key, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new ArgumentException($"The child {twice.Key} is there twice; take one out.", nameof(snapshot));
        if (snapshot.Children.FirstOrDefault(c => c.Evenings < 0 || c.LessonsToTest < 0) is { } wrong)
            throw new ArgumentException($"{wrong.Name}: evenings and lessons are counted from 0.", nameof(snapshot));
        var chosen = snapshot.Children.Where(c => c.Evenings > snapshot.Rule.MoreThan)
            .OrderByDescending(c => c.Evenings).ThenBy(c => c.LessonsToTest ?? int.MaxValue).Take(snapshot.Rule.Names).ToArray();
        var keys = chosen.Select(c => c.Key).ToHashSet(StringComparer.Ordinal);
        return new LookAtAnswer(
            [.. chosen.Select(c => c.Key)],
            [.. snapshot.Children.Where(c => keys.Contains(c.Key)).Select(c => c.Key)],
            chosen.Length == 0 ? [new EverybodyLookedAt(snapshot.Rule.MoreThan)] : [.. chosen.Select(c => new NotLookedAt(c.Name, c.Evenings, c.LessonsToTest))],
            snapshot.Rule.Used());
    }
}

/// <summary>Judges the list by counting for each child how many come before it.</summary>
public static class LookAtCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(LookAtSnapshot question, LookAtAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        var children = question.Children;
        for (var i = 0; i < children.Count; i++)
        {
            var (own, before) = (children[i], 0);
            for (var j = 0; j < children.Count; j++)
            {
                var other = children[j];
                var nearer = (other.LessonsToTest ?? int.MaxValue).CompareTo(own.LessonsToTest ?? int.MaxValue);
                if (other.Evenings > own.Evenings || (other.Evenings == own.Evenings && (nearer < 0 || (nearer == 0 && j < i)))) before++;
            }

            var place = own.Evenings > question.Rule.MoreThan && before < question.Rule.Names ? before : -1;
            if (answer.Chosen.ToList().IndexOf(own.Key) != place)
                objections.Add($"{own.Name} has another place in the list.");
        }

        if (!answer.InRegisterOrder.SequenceEqual(children.Select(c => c.Key).Where(answer.Chosen.Contains)))
            objections.Add("The list for pages is not in register order.");
        return objections;
    }
}
