namespace Keikocho.Core.Syllabus;

/// <summary>Something wrong in an edition.</summary>
/// <param name="Path">Where: "ranks[3].requirements[1].ask.items[0]", in the members of <see cref="Edition"/> with indexes from 0.</param>
/// <param name="Sentence">What is wrong and what to do, in one sentence.</param>
/// <param name="Blocks">False for a caution: it may be published as it is.</param>
public sealed record EditionFault(string Path, string Sentence, bool Blocks);

/// <summary>Whether an edition holds together: keys, counts, links, circles, falls before throws.</summary>
public static class CheckEdition
{
    /// <summary>Everything that is wrong, in the order of the edition; empty when it holds together.</summary>
    public static IReadOnlyList<EditionFault> Faults(Edition edition)
    {
        ArgumentNullException.ThrowIfNull(edition);
        var list = new FaultList(edition);
        list.Text("ladder", edition.Ladder, "The ladder has no name; give it one.");
        list.Text("name", edition.Name, "The edition has no name; sheets print it, so give it one.");
        FaultsOfRanks.Find(list);
        FaultsOfUnits.Find(list);
        FaultsOfItems.Find(list);
        return list.Faults;
    }
}
