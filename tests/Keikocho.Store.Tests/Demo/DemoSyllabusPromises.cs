using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.Safety;
using Keikocho.Store.Syllabus;

namespace Keikocho.Store.Tests.Demo;

/// <summary>What the demo promises of its syllabus and of what was seen, each on several days and seeds.</summary>
public sealed class DemoSyllabusPromises
{
    private static List<Edition> EditionsOf(Made made) => [.. made.Rows.Editions.Select(e => EditionDocument.Read(e.Document))];

    [Fact]
    public void Two_editions_a_year_apart_hold_together_and_differ_in_words()
    {
        foreach (var made in Made.Samples)
        {
            var editions = EditionsOf(made);
            Assert.Equal(["edition 1", "edition 2"], editions.Select(e => e.Name));
            Assert.All(editions, e => Assert.DoesNotContain(CheckEdition.Faults(e), f => f.Blocks));
            Assert.Equal(52 * 7, editions[1].From!.Value.DayNumber - editions[0].From!.Value.DayNumber);
            Assert.Contains(made.Rows.Terms, t => t.From == editions[0].From);
            Assert.Equal(made.Term.From, editions[1].From);
            var said = CompareEditions.Changes(editions[0], editions[1]).Select(c => c.Sentence).ToList();
            Assert.Contains(said, s => s.Contains("The turnover from your back", StringComparison.Ordinal));
            Assert.Contains(said, s => s.Contains("Name the three parts of a throw.", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Ranks_have_the_keys_and_names_of_the_newest_edition_and_items_their_ids()
    {
        var made = Made.Samples[0];
        var newest = EditionsOf(made)[1];
        Assert.Equal(newest.Ranks.Select(r => (r.Key, r.Name, r.Cloth, r.Tips)), made.Rows.Ranks.Select(r => (r.Key, r.Name, r.Cloth, r.Tips)));
        Assert.Equal(newest.Items.Select(i => (i.Key, (int)i.Kind, i.Name)), made.Rows.Items.Select(i => (i.Key, i.Kind, i.Name)));
        Assert.All(EditionsOf(made)[0].Items, i => Assert.Contains(made.Rows.Items, row => row.Key == i.Key));
        Assert.Equal(4 * made.Rows.Programmes.Count, made.Rows.TermUnits.Count);
        Assert.All(made.Rows.TermUnits, t => Assert.Contains(newest.Units, u => u.Key == t.UnitKey));
    }

    [Fact]
    public void Marks_of_what_was_seen_are_sound_of_children_who_were_there_and_of_known_items()
    {
        foreach (var made in Made.Samples)
        {
            var items = made.Rows.Items.ToDictionary(i => i.Id, i => (ItemKind)i.Kind);
            var there = made.Registers.SelectMany(r => r.Marks).Where(m => m.Kind == MarkKind.Present).Select(m => (m.LessonId, m.PersonId)).ToHashSet();
            foreach (var mark in made.Registers.SelectMany(r => r.Marks).Where(m => m.ItemId is not null && m.Kind != MarkKind.Confirmed))
            {
                Assert.True(EvidenceRules.IsSound(mark.Kind, mark.ItemId!.Value, mark.Code & ~MarkCode.ByRight), made.Said);
                Assert.Contains((mark.LessonId, mark.PersonId), there);
                if (mark.Kind != MarkKind.Fall) Assert.Equal(items[mark.ItemId.Value] is ItemKind.Word or ItemKind.Question, mark.Kind == MarkKind.Words);
            }

            var kinds = made.Registers.SelectMany(r => r.Marks).Select(m => m.Kind).ToHashSet();
            Assert.Superset(new HashSet<MarkKind> { MarkKind.Sighting, MarkKind.Words, MarkKind.Fall, MarkKind.Confirmed }, kinds);
        }
    }

    [Fact]
    public void One_child_was_never_marked_falling_one_stand_down_stands_one_is_due_and_one_was_lifted()
    {
        foreach (var made in Made.Samples)
        {
            var falls = made.Registers.SelectMany(r => r.Marks).Where(m => m.Kind == MarkKind.Fall).Select(m => m.PersonId).ToHashSet();
            var without = made.Now(made.Juniors).Where(e => !falls.Contains(e.PersonId) && made.Attended(e.PersonId) >= 6).ToList();
            Assert.Single(without);
            var stands = made.Rows.StandDowns;
            Assert.Single(stands, s => s.LiftedOn is null && s.ReviewOn > made.Today && s.Scope == (int)StandDownScope.NoFalls);
            Assert.Single(stands, s => s.LiftedOn is null && s.ReviewOn < made.Today);
            var knocked = made.Rows.Knocks.Select(k => KnockStandDowns.OffTheMat(k.Id)).ToHashSet();
            var lifted = Assert.Single(stands, s => s.LiftedOn is not null && !knocked.Contains(s.Id));
            Assert.NotEmpty(Seal.Open(lifted.LiftedWhy)!);
            Assert.Contains(made.Adults, a => a.Id == lifted.LiftedById);
            Assert.DoesNotContain(made.Registers, r => r.Marks.Any(m => m.Kind == MarkKind.Fall
                && stands.Any(s => s.PersonId == m.PersonId && s.From <= r.Lesson.Date && !(s.LiftedOn <= r.Lesson.Date))));
            Assert.Contains(made.Now(made.Juniors), e => e.PersonId == Assert.Single(made.Rows.Adaptations).PersonId);
            Assert.Equal(made.NextTest.Id, Assert.Single(made.Rows.Overrules).TestId);
        }
    }

    [Fact]
    public void The_age_rule_names_its_source_and_items_that_there_are()
    {
        var made = Made.Samples[0];
        var rule = EditionDocument.ReadRule(Assert.Single(made.Rows.AgeRules).Document);
        Assert.StartsWith("our own committee's rule, ", rule.Source, StringComparison.Ordinal);
        Assert.All(rule.Items, key => Assert.Contains(made.Rows.Items, i => i.Key == key));
    }
}
