using System.Globalization;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Calendar;
using Keikocho.Store.Starter;
using Keikocho.Store.Syllabus;

namespace Keikocho.Store.Demo;

/// <summary>
/// The demo club's syllabus: the larger sample ladder with the club's own names of ranks, in two editions a year apart, a unit for each
/// term since the first, and one age rule of the club's own committee. Invented: no body's list.
/// </summary>
internal sealed class DemoSyllabus
{
    /// <summary>The ladder's name, a sample.</summary>
    public const string LadderName = "Club ladder (sample)";

    /// <summary>Three terms are a year, so the first edition holds from the fourth term from the end.</summary>
    public const int TermsWithEdition = 4;

    private static readonly Lazy<Edition> Heron = new(() => StarterKit.Ladder("ladder-heron.toml") is SyllabusReading.Read read
        ? read.Edition
        : throw new InvalidOperationException("The sample ladder in the program has a fault."));

    private readonly DemoMaking making;
    private readonly (DateOnly From, PreparedEdition Edition)[] editions;

    public DemoSyllabus(DemoMaking making, IReadOnlyList<RankRow> ranks, Guid head)
    {
        this.making = making;
        FirstTerm = making.Terms.Count - TermsWithEdition;
        var newest = Newest(ranks, making.Terms[^1].From);
        var earlier = Earlier(newest, making.Terms[FirstTerm].From);
        editions = [(earlier.From!.Value, PreparedEdition.Of(earlier)), (newest.From!.Value, PreparedEdition.Of(newest))];
        for (var step = 0; step < ranks.Count; step++) ranks[step].Key = newest.Ranks[step].Key;
        Editions = [Row(0, earlier, head), Row(1, newest, head)];
        Items = [.. newest.Items.Select((item, n) => new ItemRow { Club = 1, Id = making.Ids.Of(DemoPart.Item, PublishedAt(earlier), n), Key = item.Key, Kind = (int)item.Kind, Name = item.Name })];
        ItemIds = Items.ToDictionary(i => i.Key, i => i.Id, StringComparer.Ordinal);
        TermUnits =
        [
            .. from term in Enumerable.Range(FirstTerm, TermsWithEdition)
               from programme in making.ProgrammeRows
               select new TermUnitRow { Club = 1, TermId = making.TermRows[term].Id, ProgrammeId = programme.Id, UnitKey = UnitOf(term) },
        ];
        var enteredAt = LondonTime.At(making.Terms[^2].From.AddDays(20), 20 * 60);
        AgeRule = RuleOf(making.Terms[^2].From);
        AgeRules = [new AgeRuleRow { Club = 1, Id = making.Ids.Of(DemoPart.AgeRule, enteredAt, 0), Document = EditionDocument.WriteRule(AgeRule), ById = head, MadeAt = enteredAt }];
    }

    /// <summary>Index of the first term with an edition.</summary>
    public int FirstTerm { get; }
    public List<EditionRow> Editions { get; }
    public List<ItemRow> Items { get; }
    public IReadOnlyDictionary<string, Guid> ItemIds { get; }
    public List<TermUnitRow> TermUnits { get; }
    public List<AgeRuleRow> AgeRules { get; }
    public AgeRule AgeRule { get; }

    /// <summary>The edition of a day.</summary>
    public PreparedEdition On(DateOnly day) => editions.Last(e => e.From <= day).Edition;

    /// <summary>Key of a term's unit: the rotation goes on from term to term.</summary>
    public static string UnitOf(int term) => Heron.Value.Units[term % Heron.Value.Units.Count].Key;

    private static Edition Newest(IReadOnlyList<RankRow> names, DateOnly from) => Heron.Value with
    {
        Ladder = LadderName,
        Name = "edition 2",
        From = from,
        Ranks =
        [
            .. Heron.Value.Ranks.Select((rank, step) => rank with
            {
                Name = names[step].Name,
                // The first course is as long as the club's programmes say.
                Minima = rank.FirstCourse
                    ? rank.Minima with { Lessons = DemoMaking.FirstCourseLessons, Weeks = DemoMaking.FirstCourseWeeks }
                    : rank.Minima,
            }),
        ],
    };

    /// <summary>What was asked a year before: one question less, one item under another name, and more lessons for yellow.</summary>
    private static Edition Earlier(Edition newest, DateOnly from)
    {
        const string added = "parts-of-a-throw", renamed = "turnover-from-below", yellow = "yellow";
        return newest with
        {
            Name = "edition 1",
            From = from,
            Ranks =
            [
                .. newest.Ranks.Select(rank => rank with
                {
                    Minima = rank.Key == yellow ? rank.Minima with { Lessons = rank.Minima.Lessons + 2 } : rank.Minima,
                    Requirements =
                    [
                        .. rank.Requirements.Select(r => r.Ask is Ask.AllOf all && all.Items.Contains(added)
                            ? r with { Ask = new Ask.AllOf([.. all.Items.Where(i => i != added)]) }
                            : r),
                    ],
                }),
            ],
            Items = [.. newest.Items.Where(i => i.Key != added).Select(i => i.Key == renamed ? i with { Name = "The turnover from your back" } : i)],
        };
    }

    private static AgeRule RuleOf(DateOnly day) => new(
        "no bridging on the shoulders",
        8,
        AgeBasis.Birthday,
        ["bridges", "out-of-kesa-bridge", "out-of-yoko-shiho-bridge"],
        [],
        [],
        string.Create(CultureInfo.InvariantCulture, $"our own committee's rule, {day.Year}"),
        day);

    private static DateTimeOffset PublishedAt(Edition edition) => LondonTime.At(edition.From!.Value.AddDays(-7), 20 * 60 + 30);

    private EditionRow Row(int number, Edition edition, Guid head) => new()
    {
        Club = 1,
        Id = making.Ids.Of(DemoPart.Edition, PublishedAt(edition), number),
        LadderId = making.LadderId,
        Name = edition.Name,
        From = edition.From,
        PublishedAt = PublishedAt(edition),
        PublishedById = head,
        Document = EditionDocument.Write(edition),
    };
}
