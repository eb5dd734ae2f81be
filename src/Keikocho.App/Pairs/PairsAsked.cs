using System.Globalization;
using Keikocho.App.Shared;
using Keikocho.App.Sightings;
using Keikocho.Core.Kernel;
using Keikocho.Core.Partners;
using Keikocho.Core.Safety;
using Microsoft.Extensions.Primitives;

namespace Keikocho.App.Pairs;

/// <summary>What the page of pairs was asked for, as its address and its forms say it.</summary>
/// <param name="LessonId">The lesson; null for tonight's.</param>
/// <param name="End">The end; null for the first that has anybody.</param>
/// <param name="Activity">The activity.</param>
/// <param name="Throw">The throw; null for ways and stage.</param>
/// <param name="Ways">Ways to fall; none for all.</param>
/// <param name="Stage">The stage; null for the highest.</param>
/// <param name="Adults">Adults who can partner; null for those proposed.</param>
/// <param name="Without">Children who sit this one out.</param>
/// <param name="ThrowsEach">Throws of each in a round.</param>
/// <param name="Sides">1 or 2.</param>
/// <param name="Rounds">Rounds.</param>
public sealed record PairsAsked(
    Guid? LessonId, MatEnd? End, PairsActivity Activity, string? Throw, IReadOnlyList<FallWay> Ways, int? Stage, IReadOnlyList<Guid>? Adults, IReadOnlyList<Guid> Without,
    int ThrowsEach, int Sides, int Rounds)
{
    /// <summary>So many throws at most in each of the drill's figures.</summary>
    public const int MostThrows = 50;

    /// <summary>Reads an address or a form; what cannot be read counts as not said.</summary>
    public static PairsAsked Read(Func<string, StringValues> field)
    {
        ArgumentNullException.ThrowIfNull(field);
        Guid? Id(string name) => Guid.TryParse(field(name), out var id) ? id : null;
        Guid[] Ids(string name) => [.. field(name).Select(v => Guid.TryParse(v, out var id) ? id : (Guid?)null).OfType<Guid>().Distinct()];
        int Number(string name, int otherwise, int most) => Typed.Whole(field(name)) is { } n && n >= 1 && n <= most ? n : otherwise;
        var activity = Enum.TryParse<PairsActivity>(field("activity"), ignoreCase: true, out var said) && Enum.IsDefined(said) ? said : PairsActivity.TurnIns;
        var technique = PairsDrill.Throws.FirstOrDefault(t => t == field("throw"));
        return new PairsAsked(
            Id("lesson"), GridAsked.Read(field("end")), activity, technique,
            [.. field("way").Select(FallForms.Way).OfType<FallWay>().Distinct()], FallForms.Stage(field("stage")),
            field("asked") == "yes" ? Ids("adult") : null, Ids("without"),
            Number("throws", 5, MostThrows), Number("sides", 1, 2), Number("rounds", 3, MostThrows));
    }

    /// <summary>What is drilled.</summary>
    public PairsDrill Drill => PairsDrill.Of(Activity, Throw, Ways, Stage);

    /// <summary>The fields of a form that asks the same.</summary>
    public IEnumerable<(string Name, string Value)> Fields()
    {
        if (LessonId is { } lesson) yield return ("lesson", lesson.ToString("D"));
        if (End is { } end) yield return ("end", GridAsked.Value(end));
        yield return ("activity", Activity.ToString());
        if (Throw is not null) yield return ("throw", Throw);
        foreach (var way in Ways) yield return ("way", FallForms.Value(way));
        if (Stage is { } stage) yield return ("stage", stage.ToString(CultureInfo.InvariantCulture));
        if (Adults is not null) yield return ("asked", "yes");
        foreach (var adult in Adults ?? []) yield return ("adult", adult.ToString("D"));
        foreach (var child in Without) yield return ("without", child.ToString("D"));
        yield return ("throws", ThrowsEach.ToString(CultureInfo.InvariantCulture));
        yield return ("sides", Sides.ToString(CultureInfo.InvariantCulture));
        yield return ("rounds", Rounds.ToString(CultureInfo.InvariantCulture));
    }

    /// <summary>The page that asks the same.</summary>
    public string Address() => $"{PairsAddress.Page}?{string.Join('&', Fields().Select(f => $"{f.Name}={Uri.EscapeDataString(f.Value)}"))}";
}
