using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;
using Keikocho.Store.Promotion;
using Keikocho.Store.Safety;
using Keikocho.Store.Syllabus;

namespace Keikocho.Store.Demo;

/// <summary>What concerns single children of the small demo: stand-downs, an agreed way of showing, choices from pools, one verdict set by hand.</summary>
internal sealed class DemoCare
{
    private readonly DemoMaking making;
    private readonly DemoCast cast;
    private readonly DemoSyllabus syllabus;

    public DemoCare(DemoMaking making, DemoCast cast, DemoSyllabus syllabus, DemoAwards awards, DemoKnocks knocks)
    {
        this.making = making;
        this.cast = cast;
        this.syllabus = syllabus;
        Choose(awards);
        if (making.Size == DemoSize.Large) return;
        var today = making.Today;
        StandDown(0, "Noah", StandDownScope.NoFalls, today.AddDays(-10), today.AddDays(12), "the family, in writing");
        StandDown(1, "Mei", StandDownScope.NoContact, today.AddDays(-25), today.AddDays(-4), "the family, in writing");
        var lifted = StandDown(2, "Kacper", StandDownScope.NoFalls, today.AddDays(-62), today.AddDays(-48), "the family, in writing");
        (lifted.LiftedOn, lifted.LiftedById, lifted.LiftedWhy, lifted.LiftEnteredOn) =
            (today.AddDays(-46), cast.Head.Id, Seal.Close("The family wrote that he may fall again; falls were shown again from the ground up."), today.AddDays(-46));
        StandDowns.AddRange(knocks.StandDowns);
        Ways.Add(new AdaptationRow
        {
            Club = 1,
            Id = making.Ids.Of(DemoPart.AgreedWay, LondonTime.At(today.AddDays(-40), 20 * 60), 0),
            PersonId = cast.Stays.First(s => Seal.Open(s.Person.Family) == AgreedWay).Person.Id,
            ItemId = syllabus.ItemIds["tying-the-belt"],
            Wording = Seal.Close("An adult holds one end while he ties the knot"),
            AgreedOn = today.AddDays(-40),
            ById = cast.Head.Id,
        });
        var decidedAt = LondonTime.At(today.AddDays(-1), 20 * 60);
        Overrules.Add(new OverruleRow
        {
            Club = 1,
            Id = making.Ids.Of(DemoPart.Overrule, decidedAt, 0),
            TestId = awards.Tests.First(t => t.ProgrammeId == making.ProgrammeRows[0].Id && t.Date >= today).Id,
            PersonId = Child(Waits).Id,
            Verdict = (int)Core.Readiness.ReadyWord.NotThisTime,
            Why = Seal.Close("She asked to wait and take the next test together with her brother."),
            ById = cast.Head.Id,
            MadeAt = decidedAt,
        });
    }

    /// <summary>Has shown everything and asked to wait.</summary>
    public const string Waits = "Lily";
    private const string AgreedWay = "Koller", DoesNotFall = "Freya";
    private static readonly string[] TouchedLately = ["Jack", "Alice", "Oscar"];

    public List<StandDownRow> StandDowns { get; } = [];
    public List<AdaptationRow> Ways { get; } = [];
    public List<ChosenItemRow> Choices { get; } = [];
    public List<OverruleRow> Overrules { get; } = [];

    /// <summary>What the demo promises of a child's falls.</summary>
    public FallPart PartOf(PersonRow person) => making.Size == DemoSize.Large ? FallPart.Ordinary : Seal.Open(person.Given) switch
    {
        DoesNotFall => FallPart.DoesNotFall,
        var given when TouchedLately.Contains(given) => FallPart.TouchedLately,
        _ => FallPart.Ordinary,
    };

    /// <summary>Whether this child has shown everything, whatever the lot says.</summary>
    public bool IsDone(PersonRow person) => making.Size == DemoSize.Small && Seal.Open(person.Given) == Waits;

    /// <summary>The choices of a child as a sheet takes them.</summary>
    public IReadOnlyList<ChosenItems> ChoicesOf(Guid person) =>
        [.. Choices.Where(c => c.PersonId == person).GroupBy(c => c.Requirement).Select(g => new ChosenItems(g.Key, [.. g.Select(c => KeyOf(c.ItemId))]))];

    private string KeyOf(Guid item) => syllabus.Items.First(i => i.Id == item).Key;

    private PersonRow Child(string given) => cast.Stays.First(s => s.To is null && Seal.Open(s.Person.Given) == given).Person;

    private StandDownRow StandDown(int number, string given, StandDownScope scope, DateOnly from, DateOnly review, string word)
    {
        var madeAt = LondonTime.At(from, 19 * 60);
        var row = new StandDownRow
        {
            Club = 1,
            Id = making.Ids.Of(DemoPart.StandDown, madeAt, number),
            PersonId = Child(given).Id,
            Scope = (int)scope,
            From = from,
            ReviewOn = review,
            WhoseWord = Seal.Close(word),
            ById = cast.Head.Id,
            MadeAt = madeAt,
        };
        StandDowns.Add(row);
        return row;
    }

    /// <summary>Whoever works on a rank with a pool has chosen in the third week of the term.</summary>
    private void Choose(DemoAwards awards)
    {
        var madeAt = LondonTime.At(making.Terms[^1].From.AddDays(21), 20 * 60);
        var edition = syllabus.On(making.Today).Edition;
        foreach (var person in cast.Stays.Where(s => s.To is null).Select(s => s.Person).Distinct())
        {
            var next = awards.StepOn(person.Id, making.Today) + 1;
            if (next >= edition.Ranks.Count) continue;
            foreach (var requirement in edition.Ranks[next].Requirements)
            {
                if (requirement.Ask is not Ask.FromPool pool) continue;
                var from = pool.Pool.Count > 0 ? pool.Pool : ["tai-otoshi-both-sides", "ushiro-kesa-gatame", "turnover-from-below"];
                foreach (var key in from.Take(pool.Count))
                    Choices.Add(new ChosenItemRow { Club = 1, PersonId = person.Id, Requirement = $"{edition.Ranks[next].Key}/{requirement.Key}", ItemId = syllabus.ItemIds[key], ById = cast.Head.Id, MadeAt = madeAt });
            }
        }
    }
}
