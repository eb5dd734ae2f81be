using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Evening;
using Keikocho.Store.Hall;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Promotion;
using Keikocho.Store.Safety;
using Keikocho.Store.Sealing;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Club;

/// <summary>The one served club: its engine, its writer, its book in memory and its stores. One for the whole process.</summary>
public sealed class ClubHouse : IAsyncDisposable
{
    /// <summary>Opens nothing before the first question.</summary>
    public ClubHouse(Engine engine, TimeProvider time)
    {
        Engine = engine;
        Writer = new WriterQueue(engine, time);
        Books = new Books();
        Club = new ClubStore(Writer);
        Calendar = new CalendarStore(Writer);
        People = new PeopleStore(Writer);
        Marks = new MarksStore(Writer);
        Sightings = new SightingsStore(Writer);
        StandDowns = new StandDownStore(Writer);
        Knocks = new KnockStore(Writer);
        Ways = new AdaptationStore(Writer);
        Syllabus = new SyllabusStore(Writer);
        Promotion = new PromotionStore(Writer);
        TimeOffs = new TimeOffStore(Writer);
        Kept = new KeptAnswerStore(Writer);
        Joins = new JoinStore(Writer);
        HandIn = new HandInStore(Writer);
        Lock = new LockStore(Writer, engine, time);
        Sizes = new SizeStore(Writer);
        CareNotes = new CareNoteStore(Writer);
        NearMisses = new NearMissStore(Writer);
        Wishes = new PairWishStore(Writer);
        Together = new TogetherStore(Writer);
        AdultCodes = new AdultCodeStore(Writer);
        Showings = new ShowingStore(Writer);
        PhraseNotes = new PhraseNoteStore(Writer);
        Obstacles = new ObstacleStore(Writer);
        Closing = new ClosingStore(Writer);
    }

    /// <summary>The database.</summary>
    public Engine Engine { get; }

    /// <summary>The one writer.</summary>
    public WriterQueue Writer { get; }

    /// <summary>The book in memory.</summary>
    public Books Books { get; }

    /// <summary>Club, halls, devices, settings.</summary>
    public ClubStore Club { get; }

    /// <summary>Programmes, terms, lessons, closures, tests.</summary>
    public CalendarStore Calendar { get; }

    /// <summary>Children and adults.</summary>
    public PeopleStore People { get; }

    /// <summary>Marks.</summary>
    public MarksStore Marks { get; }

    /// <summary>What was seen of children.</summary>
    public SightingsStore Sightings { get; }

    /// <summary>What children may not do for now.</summary>
    public StandDownStore StandDowns { get; }

    /// <summary>Knocks and their accident records.</summary>
    public KnockStore Knocks { get; }

    /// <summary>Agreed other ways of showing.</summary>
    public AdaptationStore Ways { get; }

    /// <summary>Drafts and editions, units of terms, age rules.</summary>
    public SyllabusStore Syllabus { get; }

    /// <summary>Verdicts set against the sum, and closed lists.</summary>
    public PromotionStore Promotion { get; }

    /// <summary>Time taken off for a child.</summary>
    public TimeOffStore TimeOffs { get; }

    /// <summary>Answers kept as they were told.</summary>
    public KeptAnswerStore Kept { get; }

    /// <summary>Tablets of an evening.</summary>
    public JoinStore Joins { get; }

    /// <summary>Codes of adults on tablets.</summary>
    public AdultCodeStore AdultCodes { get; }

    /// <summary>What tablets hand in.</summary>
    public HandInStore HandIn { get; }

    /// <summary>What each end worked on.</summary>
    public ShowingStore Showings { get; }

    /// <summary>Notes by ready phrases.</summary>
    public PhraseNoteStore PhraseNotes { get; }

    /// <summary>What stands at the mats.</summary>
    public ObstacleStore Obstacles { get; }

    /// <summary>Evenings that are closed and opened again.</summary>
    public ClosingStore Closing { get; }

    /// <summary>The lock of sealed values.</summary>
    public LockStore Lock { get; }

    /// <summary>Sizes.</summary>
    public SizeStore Sizes { get; }

    /// <summary>Care notes.</summary>
    public CareNoteStore CareNotes { get; }

    /// <summary>Near misses.</summary>
    public NearMissStore NearMisses { get; }

    /// <summary>Wishes about two children.</summary>
    public PairWishStore Wishes { get; }

    /// <summary>Who works together.</summary>
    public TogetherStore Together { get; }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        Lock.Dispose();
        await Writer.DisposeAsync();
        if (Engine is IAsyncDisposable engine) await engine.DisposeAsync();
    }
}
