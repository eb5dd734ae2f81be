using Keikocho.Core.Intake;
using Keikocho.Store.Engines;
using Keikocho.Store.Syllabus;

namespace Keikocho.Store.Intake;

/// <summary>The ranks of a saved roster: those of the programme's ladder, or of the one that the file's own words make.</summary>
internal sealed class SaveLadder
{
    private readonly WriteSession session;
    private readonly Dictionary<string, RankRow> bySpelling = new(StringComparer.Ordinal);
    private readonly ReadingTraces traces;
    private readonly SummaryDraft said;
    private readonly DraftLadder? draft;
    private readonly Guid? ladder;
    private int highest;

    public SaveLadder(WriteSession session, ReadingView view, ClubFacts facts, ReadingTraces traces, SummaryDraft said)
    {
        (this.session, this.traces, this.said, draft, ladder) = (session, traces, said, view.Ladder, facts.Programme.LadderId);
        foreach (var rank in facts.Ranks) bySpelling.TryAdd(rank.Name, rank);
        highest = facts.Ranks.Count == 0 ? 0 : facts.Ranks.Max(r => r.Position);
        if (draft is not { Ranks.Count: > 0 }) return;
        ladder ??= Make(facts);
        foreach (var rank in draft.Ranks)
        {
            var row = Add(rank.Name, rank.Cloth, rank.Tips);
            foreach (var spelling in rank.Spellings) bySpelling[spelling] = row;
        }

        said.Say($"The ladder of {facts.Programme.Name} was made of the file's own words: {string.Join(", ", draft.Ranks.Select(rank => rank.Name))}.");
    }

    /// <summary>Ranks or a ladder were made.</summary>
    public bool HasChanged { get; private set; }

    /// <summary>The rank of a line's word; null where it names none, or the word was left out.</summary>
    public RankRow? RankOf(string word)
    {
        if (word.Length == 0) return null;
        if (bySpelling.TryGetValue(word, out var known)) return known;
        if (draft is not null) return null;
        // "Keep it as written": a new rank, at the top until the club puts it in its place.
        var read = RankWords.Read(word);
        var row = Add(word, read.Cloth, read.Tips);
        bySpelling.Add(word, row);
        said.Say($"'{word}' is a new rank at the top of the ladder until you put it in its place.");
        return row;
    }

    private Guid Make(ClubFacts facts)
    {
        var row = new LadderRow { Club = session.Club, Id = session.NewId(), Name = facts.Programme.Name };
        session.Db.Ladders.Add(row);
        session.Db.SaveChanges();
        traces.Made("Ladders", row.Id);
        var programme = session.Db.Programmes.Single(p => p.Id == facts.Programme.Id);
        programme.LadderId = row.Id;
        traces.Changed("Programmes", programme.Id, new ChangedValue(nameof(programme.LadderId), null, row.Id.ToString("D")));
        return row.Id;
    }

    private RankRow Add(string name, string? cloth, int tips)
    {
        var row = new RankRow { Club = session.Club, Id = session.NewId(), LadderId = ladder!.Value, Name = name, Cloth = cloth, Tips = tips, Position = ++highest };
        session.Db.Ranks.Add(row);
        session.Db.SaveChanges();
        traces.Made("Ranks", row.Id);
        HasChanged = true;
        return row;
    }
}
