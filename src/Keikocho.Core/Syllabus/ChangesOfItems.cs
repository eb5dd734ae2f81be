namespace Keikocho.Core.Syllabus;

/// <summary>What changed in the items and own techniques themselves; what is asked of whom stands with the ranks.</summary>
internal static class ChangesOfItems
{
    public static IEnumerable<string> Between(Edition older, Edition newer)
    {
        var named = newer.Items.ToDictionary(i => i.Key, i => i.Name, StringComparer.Ordinal);
        foreach (var item in newer.Items)
        {
            if (older.Items.FirstOrDefault(i => i.Key == item.Key) is not { } was)
            {
                yield return $"The item {item.Name} is new.";
                continue;
            }

            if (was.Name != item.Name)
                yield return $"\"{was.Name}\" is now \"{item.Name}\".";
            foreach (var what in Differences(was, item, named))
                yield return $"{item.Name}: {what}.";
        }

        foreach (var item in older.Items.Where(i => !named.ContainsKey(i.Key)))
            yield return $"The item {item.Name} is gone.";
        var (before, now) = (older.Techniques ?? [], newer.Techniques ?? []);
        foreach (var own in now.Except(before))
            yield return $"The club's own technique {own.Name} {(before.Any(b => b.Name == own.Name) ? "was changed" : "was added")}.";
        foreach (var own in before.Where(b => now.All(n => n.Name != b.Name)))
            yield return $"The club's own technique {own.Name} was dropped.";
    }

    private static IEnumerable<string> Differences(Item was, Item item, Dictionary<string, string> named)
    {
        if (was.Kind != item.Kind)
            yield return "it is now of another kind";
        if (was.Technique != item.Technique || was.Order != item.Order)
            yield return "it is now made from another technique";
        if (was.Fall != item.Fall)
            yield return "the fall that it asks is another";
        if (was.LookFor != item.LookFor)
            yield return item.LookFor is null ? "nothing is written any more of what we look for" : $"we now look for \"{item.LookFor}\"";
        if (was.Seconds != item.Seconds)
            yield return $"{Figure(item.Seconds, "seconds")} instead of {Figure(was.Seconds, "seconds")}";
        if (was.Times != item.Times)
            yield return $"{Figure(item.Times, "times")} instead of {Figure(was.Times, "times")}";
        if (was.Meaning != item.Meaning || was.Kana != item.Kana || was.Kanji != item.Kanji)
            yield return "meaning or script was mended";
        if (!(was.Answers ?? []).SequenceEqual(item.Answers ?? []))
            yield return $"accepted answers are now {string.Join(", ", (item.Answers ?? []).Select(a => $"\"{a}\"").DefaultIfEmpty("none"))}";
        if (was.Safety != item.Safety)
            yield return item.Safety ? "it is now a safety word" : "it is no longer a safety word";
        if (was.LoadsTheNeck != item.LoadsTheNeck)
            yield return item.LoadsTheNeck ? "it is now marked as loading the neck" : "it is no longer marked as loading the neck";
        if (was.Alternative != item.Alternative)
            yield return item.Alternative is { } other ? $"its alternative is now {named.GetValueOrDefault(other, other)}" : "it has no alternative any more";
        if (!(was.Covers ?? []).Order(StringComparer.Ordinal).SequenceEqual((item.Covers ?? []).Order(StringComparer.Ordinal)))
            yield return "the easier forms that it meets are others";
    }

    private static string Figure(int? number, string unit) => number is { } n ? $"{n} {unit}" : $"no set number of {unit}";
}
