using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Keikocho.Core.Kernel;
using Keikocho.Core.Readiness;

namespace Keikocho.App.PromotionTests;

/// <summary>One child as the list was closed.</summary>
/// <param name="Person">Who, by id: the name stays where it can be erased.</param>
/// <param name="Verdict">The verdict that held.</param>
/// <param name="Reckoned">What the sum said by itself.</param>
/// <param name="Rank">Name of the rank that was tested for.</param>
/// <param name="Time">Time and papers.</param>
/// <param name="Items">The items.</param>
public sealed record KeptChild(Guid Person, ReadyWord Verdict, ReadyWord Reckoned, string Rank, string Time, string Items);

/// <summary>A decision after the list was closed.</summary>
/// <param name="Person">About whom.</param>
/// <param name="OnIt">On the list from now on, or off it.</param>
/// <param name="Verdict">The verdict that was decided on.</param>
/// <param name="On">The day.</param>
/// <param name="By">The instructor.</param>
public sealed record KeptDecision(Guid Person, bool OnIt, ReadyWord Verdict, DateOnly On, Guid By);

/// <summary>A closed list, as it is kept.</summary>
/// <param name="TestOn">The day of the test.</param>
/// <param name="AsOf">The evening that it was reckoned after.</param>
/// <param name="Edition">The edition.</param>
/// <param name="Children">Everybody who was reckoned, in register order.</param>
/// <param name="Settings">The settings used.</param>
/// <param name="Decisions">What was decided since, oldest first.</param>
public sealed record KeptList(
    DateOnly TestOn, DateOnly AsOf, string Edition, ImmutableArray<KeptChild> Children, ImmutableArray<SettingUsed> Settings, ImmutableArray<KeptDecision> Decisions)
{
    /// <summary>Version of the sum and of the form in which a list is kept.</summary>
    public const string SumVersion = "put-forward-list 1";

    /// <summary>The list as it stands.</summary>
    public static KeptList Of(TestList list)
    {
        ArgumentNullException.ThrowIfNull(list);
        return new KeptList(
            list.TestOn,
            list.AsOf,
            list.Edition?.Name ?? "",
            [.. list.Children.Select(c => new KeptChild(c.Person.Id, c.Answer.Verdict, c.Answer.Reckoned, c.Target?.Name ?? "", c.Answer.TimeSaid, c.Answer.ItemsSaid))],
            [.. list.Children.SelectMany(c => c.Answer.Settings).DistinctBy(s => (s.Key, s.Value))],
            []);
    }

    /// <summary>SHA-256 over every question of a list, child after child in register order.</summary>
    public static byte[] HashOf(TestList list)
    {
        ArgumentNullException.ThrowIfNull(list);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var child in list.Children)
        {
            hash.AppendData(Encoding.UTF8.GetBytes(child.Person.Id.ToString("D")));
            hash.AppendData(Encoding.UTF8.GetBytes(SumJson.Write(child.Parts)));
        }

        return hash.GetHashAndReset();
    }

    /// <summary>Whether a child is on it: put forward when it was closed, unless something else was decided since.</summary>
    public bool IsOn(Guid person) => LastOf(person)?.OnIt ?? Children.Any(c => c.Person == person && c.Verdict == ReadyWord.PutForward);

    /// <summary>The newest decision about a child; null for none.</summary>
    public KeptDecision? LastOf(Guid person) => Decisions.LastOrDefault(d => d.Person == person);

    /// <summary>Where a child stands whose verdict is now another; what was decided about this verdict already is not asked again.</summary>
    public ListStanding StandingOf(Guid person, ReadyWord verdict)
    {
        var standing = PutForwardList.Of(verdict, true, IsOn(person));
        if (standing is not (ListStanding.LateAdditionToDecide or ListStanding.NoLongerReadyToDecide) || LastOf(person) is not { } last || last.Verdict != verdict) return standing;
        return last.OnIt ? ListStanding.OnIt : ListStanding.NotOnIt;
    }
}
