using Keikocho.Core.Evening;
using Keikocho.Core.Names;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Starter;

namespace Keikocho.Store.Tests.Starter;

public class StarterKitTests
{
    private const string NotReviewed = "not reviewed by a graded instructor";

    private static readonly NameIndex Names = NameIndex.Of(StarterNames.Known);

    public static TheoryData<string> Ladders => [.. StarterKit.Ladders];

    [Fact]
    public void The_kit_has_two_ladders_notes_words_questions_and_a_lesson()
    {
        Assert.Equal(["ladder-heron.toml", "ladder-willow.toml"], StarterKit.Ladders);
        Assert.Empty(new[] { "games.toml", "lesson-template.toml", "phrases.toml", "questions.toml", "techniques.toml", "vocabulary.csv" }.Except(StarterFile.All));
    }

    [Fact]
    public void A_file_that_the_kit_does_not_have_throws() => Assert.Throws<ArgumentException>(() => StarterKit.Text("none.toml"));

    [Theory]
    [MemberData(nameof(Ladders))]
    public void A_sample_ladder_may_be_published_as_it_is(string file)
    {
        var reading = StarterKit.Ladder(file);
        var edition = Starters.Edition(reading);

        // Nothing but the club's own questions, whose answers are the club's to write.
        Assert.Equal(
            edition.Items.Where(item => item.Key.StartsWith("club-", StringComparison.Ordinal)).Select(item => $"The question {item.Name} has no accepted answer; whoever asks it must know."),
            Assert.IsType<SyllabusReading.Read>(reading).Cautions.Select(caution => caution.Sentence));
        Assert.NotNull(edition.Source);
        Assert.Contains("Not reviewed by a graded instructor.", edition.Cautions!);
    }

    // The bank has the questions, a ladder those that it asks: letter for letter the same, so that nobody learns another answer than is asked.
    [Theory]
    [MemberData(nameof(Ladders))]
    public void A_ladder_asks_the_questions_of_the_bank_as_they_stand_there(string file)
    {
        var bank = Assert.IsType<TextReading<IReadOnlyList<StarterQuestion>>.Read>(StarterKit.Questions()).Value.ToDictionary(q => q.Key);
        var asked = Starters.Edition(StarterKit.Ladder(file)).Items.Where(i => i.Kind == ItemKind.Question).ToList();
        Assert.NotEmpty(asked);
        foreach (var item in asked)
        {
            Assert.True(bank.TryGetValue(item.Key, out var question), $"{item.Key} is not in questions.toml.");
            Assert.Equal((question.Text, question.Safety), (item.Name, item.Safety));
            Assert.Equal(question.Answers, item.Answers ?? []);
        }
    }

    [Fact]
    public void A_spelling_is_looked_for_among_names_and_words()
    {
        var index = NameIndex.Of(StarterNames.WithWords);
        Assert.Equal("O-soto-gari", Assert.IsType<NameOutcome.One>(index.Resolve("osotogari")).Name);
        Assert.Equal("hajime", Assert.IsType<NameOutcome.One>(index.Resolve("Hajime")).Name);
        Assert.True(StarterNames.WithWords.Count > StarterNames.Known.Count + 100);
    }

    [Theory]
    [InlineData("ladder-willow.toml", 6, 4)]
    [InlineData("ladder-heron.toml", 10, 3)]
    public void A_sample_ladder_has_its_ranks_its_units_and_a_first_course(string file, int ranks, int units)
    {
        var edition = Ladder(file);

        Assert.Equal(ranks, edition.Ranks.Count);
        Assert.Equal(units, edition.Units.Count);
        Assert.Single(edition.Ranks, rank => rank.FirstCourse);
        Assert.NotEmpty(edition.FirstCourse);
    }

    [Theory]
    [MemberData(nameof(Ladders))]
    public void What_the_first_course_teaches_is_what_its_rank_asks(string file)
    {
        var edition = Ladder(file);

        Assert.Equal(edition.FirstCourse.Order(), Named(edition.Ranks.Single(rank => rank.FirstCourse)).Distinct().Order());
    }

    [Theory]
    [MemberData(nameof(Ladders))]
    public void Falls_come_first_on_every_list(string file)
    {
        var edition = Ladder(file);

        foreach (var list in edition.Ranks.Select(Named).Append([.. edition.FirstCourse]).Append([.. edition.Units[0].Items]))
        {
            var kinds = list.Select(key => Kind(edition, key)).ToList();
            var first = kinds.FindIndex(kind => kind == ItemKind.Fall);
            if (first >= 0) Assert.Equal(0, first);
        }
    }

    [Theory]
    [MemberData(nameof(Ladders))]
    public void No_backward_reap_is_asked_or_taught_before_the_upper_ranks(string file)
    {
        var edition = Ladder(file);
        var reaps = edition.Items.Where(item => Techniques(item).Any(technique => StarterFalls.Table.Of(Listed(edition, technique), ThrowHand.Right) is { BackwardReap: true })).Select(item => item.Key).ToHashSet();
        var early = edition.Ranks.Take((edition.Ranks.Count + 1) / 2);

        Assert.NotEmpty(reaps);
        Assert.DoesNotContain(edition.FirstCourse, reaps.Contains);
        Assert.All(early, rank => Assert.DoesNotContain(Named(rank), reaps.Contains));
        // Every reap that a unit has is asked by an upper rank, so that nobody below is taught it for a test.
        Assert.All(edition.Units.SelectMany(unit => unit.Items).Where(reaps.Contains), key =>
            Assert.Contains(edition.Ranks, rank => Named(rank).Contains(key)));
        Assert.All(
            edition.Items.Where(item => item.Kind == ItemKind.Throw && reaps.Contains(item.Key)),
            item => Assert.Contains("low, slow and held", item.Name, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Ladders))]
    public void The_fall_of_every_throw_is_asked_no_later_than_the_throw(string file)
    {
        var edition = Ladder(file);
        var notes = Starters.Value(StarterKit.Techniques()).ToDictionary(note => note.Name);
        var falls = new HashSet<FallDirection>();
        foreach (var rank in edition.Ranks)
        {
            falls.UnionWith(Named(rank).Select(key => Item(edition, key).Fall).OfType<FallForm>().Select(fall => fall.Direction));
            foreach (var key in Named(rank))
            {
                foreach (var technique in Techniques(Item(edition, key)))
                {
                    var countedAs = edition.Techniques?.FirstOrDefault(own => own.Name == technique)?.CountedAs ?? technique;
                    if (notes[countedAs].Falls is not { } fall) continue;
                    var ways = fall.RightHanded.Concat(fall.LeftHanded);
                    Assert.All(ways, way => Assert.Contains(way.Direction, falls));
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Ladders))]
    public void Every_technique_of_a_ladder_has_its_notes(string file)
    {
        var edition = Ladder(file);
        var known = Starters.Value(StarterKit.Techniques()).Select(note => note.Name).ToHashSet();
        foreach (var own in edition.Techniques ?? [])
        {
            if (known.Contains(own.CountedAs ?? own.Name)) known.Add(own.Name);
        }

        Assert.All(edition.Items.SelectMany(Techniques), technique => Assert.Contains(technique, known));
    }

    [Theory]
    [MemberData(nameof(Ladders))]
    public void Every_technique_of_a_ladder_is_one_name_of_the_library(string file)
    {
        var edition = Ladder(file);

        Assert.All(edition.Items.SelectMany(Techniques), technique => Assert.NotEmpty(Listed(edition, technique)));
    }

    [Fact]
    public void The_notes_say_of_every_fall_what_the_fall_table_says() =>
        Assert.All(Starters.Value(StarterKit.Techniques()).Where(note => note.IsThrow), note =>
        {
            var name = Assert.IsType<NameOutcome.One>(Names.Resolve(note.Name)).Name;
            foreach (var (hand, ways) in new[] { (ThrowHand.Right, note.Falls!.RightHanded), (ThrowHand.Left, note.Falls.LeftHanded) })
            {
                var listed = StarterFalls.Table.Of(name, hand);
                Assert.NotNull(listed);
                Assert.Equal(listed.Ways, ways);
                Assert.Equal(listed.FirstDrill, note.Falls.Stage);
            }
        });

    [Fact]
    public void Every_safety_line_says_that_no_graded_instructor_has_reviewed_it()
    {
        var notes = Starters.Value(StarterKit.Techniques());

        Assert.InRange(notes.Count, 20, 30);
        Assert.All(notes, note =>
        {
            if (note.Caution is not null) Assert.Equal(NotReviewed, note.Caution.Status);
            if (note.Falls is not null) Assert.Equal(NotReviewed, note.Falls.Status);
            Assert.True(note.IsThrow || note.Family is TechniqueFamily.Fall or TechniqueFamily.Hold ? note.Caution is not null : true, note.Name);
        });
    }

    [Fact]
    public void Nothing_for_home_is_a_throw_a_fall_or_a_hold() =>
        Assert.All(
            Starters.Value(StarterKit.Techniques()).Where(note => note.AloneAtHome),
            note => Assert.True(note is { IsThrow: false, Family: not (TechniqueFamily.Fall or TechniqueFamily.Hold) }, note.Name));

    [Fact]
    public void A_right_handed_throw_and_a_left_handed_one_mirror_each_other() =>
        Assert.All(
            Starters.Value(StarterKit.Techniques()).Where(note => note.IsThrow),
            note => Assert.Equal(
                note.Falls!.RightHanded.Select(Mirror).OrderBy(way => (way.Direction, way.Side)),
                note.Falls.LeftHanded.OrderBy(way => (way.Direction, way.Side))));

    [Fact]
    public void The_words_keep_their_source_marks()
    {
        var words = Starters.Value(StarterKit.Vocabulary());

        Assert.Equal(202, words.Count);
        Assert.All(words, word => Assert.Matches("^term=(read|memory);english=(read|memory);kanji=(read|memory);kana=(read|memory)$", word.Source));
        Assert.Equal(["matte", "sore-made", "sono-mama", "maitta"], words.Where(word => word.Safety).Select(word => word.Romaji));
        Assert.All(words, word => Assert.NotEmpty(word.Answers));
    }

    [Theory]
    [MemberData(nameof(Ladders))]
    public void A_word_of_a_ladder_is_written_as_in_the_vocabulary(string file)
    {
        var written = Starters.Value(StarterKit.Vocabulary()).SelectMany(word => new[] { word.Kana, word.Kanji }).ToHashSet();

        foreach (var item in Ladder(file).Items.Where(item => item.Kind is ItemKind.Word or ItemKind.Fall))
        {
            foreach (var part in (item.Kana ?? "").Split('、').Concat((item.Kanji ?? "").Split('、')).Where(part => part.Length > 0))
                Assert.Contains(part, written);
        }
    }

    [Fact]
    public void The_questions_leave_the_clubs_own_empty_and_date_what_changes()
    {
        var questions = Starters.Value(StarterKit.Questions());

        Assert.Equal(4, questions.Count(question => question.ClubsOwn));
        Assert.All(questions, question => Assert.Equal(question.ClubsOwn, question.Answers.Count == 0));
        Assert.Contains(questions, question => question.HoldsOn is not null);
    }

    [Fact]
    public void The_lesson_takes_seventy_five_minutes()
    {
        var lesson = Starters.Value(StarterKit.Lesson());

        Assert.Equal(75, lesson.Parts.Sum(part => part.Minutes));
        Assert.Equal(75, lesson.Minutes);
        Assert.Equal(2, lesson.Parts.Count(part => part.Kind == CardPartKind.Slot));
        Assert.Equal(2, lesson.Plans.Count);
    }

    [Fact]
    public void Ten_games_have_no_contact_above_the_shoulders_a_safety_line_and_a_source()
    {
        var games = Starters.Value(StarterKit.Games());

        Assert.Equal(10, games.DistinctBy(game => game.Game.Name).Count());
        Assert.All(games, game => Assert.Equal(("ours, no source", NotReviewed), (game.Source, game.Safety.Status)));
        Assert.All(games, game => Assert.DoesNotMatch("(neck|head|face|throat|shoulder)s? (with|by)", game.Does));
        Assert.Contains(games, game => game.Game is { Contact: GameContact.None, Falls: false, LeastChildren: <= 2 });
    }

    [Fact]
    public void Ready_phrases_say_what_was_seen_and_what_comes_next_and_judge_nobody()
    {
        var phrases = StarterPhrases.All;

        Assert.InRange(phrases.Count, 12, 16);
        Assert.All(phrases, phrase => Assert.StartsWith("Next: ", phrase.Next, StringComparison.Ordinal));
        Assert.All(phrases, phrase => Assert.Equal("ours, no source", phrase.Source));
        Assert.All(phrases, phrase => Assert.DoesNotMatch(
            @"(?i)\b(is|he|she|lazy|weak|slow|bad|good|naughty|clumsy|heavy|light|shy|pain|hurt\w*|injur\w*|ill|sick|tired|dizzy|diagnos\w*|attention|better|best|worse|worst)\b", $"{phrase.Seen} {phrase.Next}".Replace("before it is shown", "", StringComparison.Ordinal)));
        Assert.Equal("A phrase that is not in the list any more.", StarterPhrases.Words("no-such-phrase"));
    }

    [Theory]
    [InlineData("techniques.toml", "meaning = \"lift", "meanning = \"lift", "technique.mean")]
    [InlineData("techniques.toml", "faults = [\"Drops the lapel elbow.\", ", "faults = [", "technique.faults")]
    [InlineData("techniques.toml", "stage = 4, status", "stage = 0, status", "technique.falls.stage")]
    [InlineData("techniques.toml", "alone-at-home = false", "alone-at-home = true", "technique.alone-at-home")]
    [InlineData("techniques.toml", "name = \"O-goshi\"", "name = \"Uki-goshi\"", "technique.name")]
    [InlineData("questions.toml", "answers = [\"1882\"]", "answers = []", "question.answers")]
    [InlineData("questions.toml", "club = true", "club = true\nanswers = [\"ours\"]", "question.answers")]
    [InlineData("lesson-template.toml", "minutes = 75", "minutes = 80", "minutes")]
    [InlineData("lesson-template.toml", "kind = \"falls\"", "kind = \"tumbling\"", "part.kind")]
    [InlineData("games.toml", "contact = \"touch\"", "contact = \"head\"", "game.contact")]
    [InlineData("games.toml", "most-children = 20", "most-children = 1", "game.most-children")]
    [InlineData("games.toml", "safety = { text", "safty = { text", "game.sa")]
    [InlineData("phrases.toml", "key = \"falls-chin\"", "key = \"falls-round\"", "phrase.key")]
    [InlineData("phrases.toml", "key = \"falls-chin\"", "key = \"Falls chin\"", "phrase.key")]
    [InlineData("phrases.toml", "seen = \"The chin comes up", "seen = \"The chin comes up and up and up and up and up and up and up", "phrase.seen")]
    [InlineData("phrases.toml", "next = \"Next: look at the belt", "nxt = \"Next: look at the belt", "phrase.n")]
    [InlineData("vocabulary.csv", "called in Japanese", "shouted", "asked")]
    [InlineData("vocabulary.csv", "romaji,kana", "kana,romaji", "")]
    [InlineData("vocabulary.csv", "はじめ", "", "kana")]
    [InlineData("vocabulary.csv", "はじめ", "はじめ,x", "")]
    public void What_is_wrong_in_a_file_is_named_and_nothing_of_it_is_read(string file, string right, string wrong, string field)
    {
        var text = StarterKit.Text(file);
        var at = text.IndexOf(right, StringComparison.Ordinal);
        Assert.True(at >= 0);
        var changed = string.Concat(text.AsSpan(0, at), wrong, text.AsSpan(at + right.Length));
        var faults = file switch
        {
            "techniques.toml" => FaultsOf(TechniqueText.Read(changed, file)),
            "questions.toml" => FaultsOf(QuestionBank.Read(changed, file)),
            "games.toml" => FaultsOf(GamesText.Read(changed, file)),
            "phrases.toml" => FaultsOf(PhrasesText.Read(changed, file)),
            "lesson-template.toml" => FaultsOf(LessonText.Read(changed, file)),
            _ => FaultsOf(VocabularyText.Read(changed, file)),
        };

        Assert.Contains(faults, fault => fault.File == file && fault.Field.StartsWith(field, StringComparison.Ordinal));
        var line = text[..at].Count(c => c == '\n') + 1;
        Assert.Contains(faults, fault => Math.Abs(fault.Line - line) <= wrong.Count(c => c == '\n') + 1);
    }

    /// <summary>The name of the list that a technique of a ladder is counted as.</summary>
    private static string Listed(Edition edition, string technique)
    {
        var name = edition.Techniques?.FirstOrDefault(own => own.Name == technique)?.CountedAs ?? technique;
        return Assert.IsType<NameOutcome.One>(Names.Resolve(name)).Name;
    }

    private static IReadOnlyList<TextFault> FaultsOf<T>(TextReading<T> reading) => Assert.IsType<TextReading<T>.Faulty>(reading).Faults;

    private static FallWay Mirror(FallWay way) => way.Side switch
    {
        FallSide.Left => way with { Side = FallSide.Right },
        FallSide.Right => way with { Side = FallSide.Left },
        _ => way,
    };

    private static Edition Ladder(string file) => Starters.Edition(SyllabusText.Read(StarterKit.Text(file), file, _ => []));

    private static Item Item(Edition edition, string key) => edition.Items.Single(item => item.Key == key);

    private static ItemKind Kind(Edition edition, string key) => Item(edition, key).Kind;

    /// <summary>Keys that a rank names itself.</summary>
    private static List<string> Named(LadderRank rank) => [.. rank.Requirements.SelectMany(requirement => requirement.Ask switch
    {
        Ask.AllOf all => all.Items,
        Ask.AnyOf any => any.Items,
        Ask.FromPool pool => pool.Pool,
        _ => [],
    })];

    private static IEnumerable<string> Techniques(Item item) => item.Order switch
    {
        Order.Into into => [into.First, into.Second],
        Order.CounteredBy counter => [counter.Attack, counter.Counter],
        Order.EscapeFrom escape => [escape.Hold],
        Order.TurnoverInto { Hold: { } hold } => [hold],
        _ => item.Technique is { } technique ? [technique] : [],
    };
}
