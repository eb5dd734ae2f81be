using Keikocho.Core.Evening;
using Keikocho.Store.Club;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Promotion;

namespace Keikocho.Store.Tests.Demo;

/// <summary>What the demo promises to show, each on several days and seeds.</summary>
public sealed class DemoPromises
{
    private static void Always(Action<Made> claim)
    {
        foreach (var made in Made.Samples)
        {
            try
            {
                claim(made);
            }
            catch (Exception cause)
            {
                throw new InvalidOperationException($"Does not hold for {made.Said}: {cause.Message}", cause);
            }
        }
    }

    [Fact]
    public void A_lesson_of_the_juniors_is_on_today_and_its_register_is_untouched() => Always(made =>
    {
        var tonight = Assert.Single(made.LessonsOf(made.Juniors), l => l.Date == made.Today);
        Assert.Null(tonight.ClosureId);
        Assert.Equal((new TimeOnly(17, 30), new TimeOnly(18, 45)), (tonight.Start, tonight.End));
        Assert.Equal((new TimeOnly(17, 45), new TimeOnly(17, 55), new TimeOnly(18, 7)), (tonight.UkemiFrom, tonight.UkemiTo, tonight.HalfTime));
        Assert.DoesNotContain(made.Registers, r => r.Lesson.Date >= made.Today);
    });

    [Fact]
    public void The_juniors_meet_on_two_evenings_a_week_three_days_apart() => Always(made =>
    {
        var days = made.Rows.WeeklyHours.Where(h => h.ProgrammeId == made.Juniors.Id).Select(h => h.Weekday).ToList();
        Assert.Equal([made.Today.DayOfWeek, made.Today.AddDays(3).DayOfWeek], days);
    });

    [Fact]
    public void Three_terms_are_a_year_and_none_overlaps_the_next() => Always(made =>
    {
        var terms = made.Rows.Terms;
        Assert.Equal(5, terms.Count);
        for (var i = 1; i < terms.Count; i++) Assert.True(terms[i - 1].To < terms[i].From);
        Assert.Equal(52 * 7, terms[4].From.DayNumber - terms[1].From.DayNumber);
        Assert.Equal(terms.Count, terms.Select(t => t.Name).Distinct().Count());
    });

    [Fact]
    public void The_present_term_has_lessons_held_and_lessons_left_before_its_test() => Always(made =>
    {
        Assert.InRange(made.Today, made.Term.From, made.Term.To);
        var held = made.LessonsOf(made.Juniors).Count(l => l.Date >= made.Term.From && l.Date < made.Today && l.ClosureId is null);
        var left = made.LessonsOf(made.Juniors).Count(l => l.Date >= made.Today && l.Date < made.NextTest.Date && l.ClosureId is null);
        Assert.InRange(held, 14, 26);
        Assert.InRange(left, 2, 6);
    });

    [Fact]
    public void Each_term_ends_with_a_promotion_test_on_a_Saturday() => Always(made =>
    {
        foreach (var term in made.Rows.Terms)
        {
            var test = Assert.Single(made.Rows.PromotionTests, t => t.ProgrammeId == made.Juniors.Id && t.Date >= term.From && t.Date <= term.To);
            Assert.Equal(DayOfWeek.Saturday, test.Date.DayOfWeek);
            Assert.InRange(term.To.DayNumber - test.Date.DayNumber, 0, 14);
        }
    });

    [Fact]
    public void The_register_goes_back_eighteen_months_and_ends_before_today() => Always(made =>
    {
        Assert.InRange(made.Registers[0].Lesson.Date, made.Today.AddMonths(-20), made.Today.AddMonths(-18));
        Assert.InRange(made.Registers[^1].Lesson.Date, made.Today.AddDays(-4), made.Today.AddDays(-1));
    });

    [Fact]
    public void Holidays_one_lost_hall_and_one_evening_entered_afterwards_are_closed() => Always(made =>
    {
        Assert.True(made.Rows.Closures.Count(c => c.Name == "Half-term") >= 5);
        var lost = Assert.Single(made.Rows.Closures, c => c.HallId is not null && c.MadeAt.UtcDateTime < c.From.ToDateTime(TimeOnly.MinValue));
        Assert.Equal(lost.From, lost.To);
        Assert.Single(made.Rows.Lessons, l => l.ClosureId == lost.Id);
        var afterwards = Assert.Single(made.Rows.Closures, c => c.MadeAt.UtcDateTime > c.To.AddDays(1).ToDateTime(TimeOnly.MinValue));
        Assert.Contains(made.Registers, r => r.Lesson.ClosureId == afterwards.Id && r.Marks.Count > 10);
        Assert.DoesNotContain(made.States, s => s.Counts && made.Rows.Lessons.Single(l => l.Id == s.LessonId).ClosureId is not null);
    });

    [Fact]
    public void Sixty_children_are_six_to_thirteen_and_forty_four_of_them_are_juniors_now() => Always(made =>
    {
        Assert.Equal(60, made.Children.Count());
        Assert.All(made.Children, c => Assert.True(made.Age(c) is null or (>= 6 and <= 13)));
        Assert.Equal(44, made.Now(made.Juniors).Count());
        Assert.Equal(8, made.Now(made.Teens).Count());
    });

    [Fact]
    public void No_child_was_younger_than_five_at_the_first_lesson() => Always(made =>
        Assert.All(made.Rows.Enrolments, e => Assert.True(Seal.Open(made.ById[e.PersonId].Born) is not { } born || Made.AgeOn(born, e.From) >= 5)));

    [Fact]
    public void Exactly_one_child_has_no_birth_date_yet() => Always(made => Assert.Single(made.Children, c => c.Born is null));

    [Fact]
    public void Five_adults_have_duties_and_each_has_a_birth_date_or_was_seen_by_somebody() => Always(made =>
    {
        Assert.Equal(5, made.Adults.Count());
        Assert.All(made.Adults, a => Assert.True(a.Born is not null ? made.Age(a) >= 18 : a.AdultSeenById is not null && a.AdultSeenOn is not null));
        Assert.Contains(made.Adults, a => a.AdultSeenById is not null);
        Assert.Single(made.Duties(DutyKind.HeadInstructor));
        Assert.All(made.Rows.Duties.Where(d => d.Kind is DutyKind.HeadInstructor or DutyKind.Instructor or DutyKind.Assistant), d => Assert.True(d.VettedUntil > made.Today));
    });

    [Fact]
    public void One_first_aid_certificate_lapses_within_a_month() => Always(made =>
        Assert.Single(made.Rows.Duties, d => d.FirstAidUntil >= made.Today && d.FirstAidUntil <= made.Today.AddDays(30)));

    [Fact]
    public void Three_leaders_of_fourteen_or_fifteen_train_with_the_teens() => Always(made =>
    {
        Assert.Equal(3, made.Leaders.Count());
        Assert.All(made.Leaders, l => Assert.InRange(made.Age(l)!.Value, 14, 15));
        Assert.All(made.Leaders, l => Assert.Contains(made.Now(made.Teens), e => e.PersonId == l.Id));
    });

    [Fact]
    public void Siblings_are_families() => Always(made =>
    {
        var children = made.Children.Select(c => c.Id).ToHashSet();
        var families = made.Rows.FamilyMembers.Where(m => children.Contains(m.PersonId)).GroupBy(m => m.FamilyId).Count(g => g.Count() > 1);
        Assert.True(families >= 5);
        Assert.Contains(made.Rows.Families, f => f.TogetherAsked);
    });

    [Fact]
    public void Every_trainee_has_a_contact_with_a_number_reserved_for_drama() => Always(made =>
    {
        // Ofcom, "Telephone numbers for use in TV and radio drama programmes".
        Assert.All(made.Rows.Contacts, c => Assert.Matches("^(07700 900|01632 960)[0-9]{3}$", Seal.Open(c.Phone)!));
        Assert.Empty(made.Rows.Enrolments.Select(e => e.PersonId).Except(made.Rows.Contacts.Select(c => c.PersonId)));
        Assert.Single(made.Rows.Contacts, c => c.BarredFromCollecting);
    });

    [Fact]
    public void Two_pairs_share_a_first_name_one_at_the_same_rank_and_one_not() => Always(made =>
    {
        var pairs = made.Now(made.Juniors).GroupBy(e => Made.CalledOf(made.ById[e.PersonId])).Where(g => g.Count() == 2).ToDictionary(g => g.Key, g => g.ToList());
        Assert.Equal(["Adam", "Mia"], pairs.Keys.Order(StringComparer.Ordinal));
        Assert.Equal(made.RankNow(pairs["Mia"][0].PersonId), made.RankNow(pairs["Mia"][1].PersonId));
        Assert.NotEqual(made.RankNow(pairs["Adam"][0].PersonId), made.RankNow(pairs["Adam"][1].PersonId));
    });

    [Fact]
    public void One_child_was_away_for_ten_weeks_and_is_back_since_two() => Always(made =>
    {
        var returned = made.Now(made.Juniors).Where(e =>
        {
            var days = made.States.Where(s => s.PersonId == e.PersonId && s.Counts).Select(s => s.Date).Order().ToList();
            return days.Contains(made.Today.AddDays(-84)) && days.Contains(made.Today.AddDays(-14)) && !days.Any(d => d > made.Today.AddDays(-84) && d < made.Today.AddDays(-14));
        });
        var back = Assert.Single(returned);
        Assert.Equal(4, made.States.Count(s => s.PersonId == back.PersonId && s.Counts && s.Date >= made.Today.AddDays(-14)));
    });

    [Fact]
    public void One_child_came_from_another_club_with_a_rank() => Always(made =>
    {
        var award = Assert.Single(made.Rows.Awards, a => a.Source == AwardSource.Transferred);
        Assert.Null(award.TestId);
        Assert.True(award.On < made.Rows.Enrolments.Single(e => e.PersonId == award.PersonId).From);
    });

    [Fact]
    public void Newcomers_have_fewer_than_six_lessons_and_two_of_them_came_last_week() => Always(made =>
    {
        var newcomers = made.Now(made.Juniors).Where(e => made.Attended(e.PersonId) < 6).ToList();
        Assert.True(newcomers.Count >= 4);
        Assert.Equal(2, newcomers.Count(e => e.From >= made.Today.AddDays(-7)));
        Assert.All(newcomers, e => Assert.True(made.Attended(e.PersonId) >= 1));
    });

    [Fact]
    public void One_registration_lapses_before_the_test_and_no_other() => Always(made =>
    {
        var now = made.Rows.Enrolments.Where(e => e.To is null).Select(e => e.PersonId).ToHashSet();
        Assert.Single(made.Rows.Registrations, r => now.Contains(r.PersonId) && r.Expires >= made.Today && r.Expires < made.NextTest.Date);
        Assert.DoesNotContain(made.Rows.Registrations, r => now.Contains(r.PersonId) && r.Expires < made.Today);
    });

    [Fact]
    public void Some_refuse_photographs_and_one_took_a_consent_back() => Always(made =>
    {
        Assert.InRange(made.Rows.Consents.Count(c => !c.Given), 4, 12);
        Assert.Single(made.Rows.Consents.GroupBy(c => c.PersonId), g => g.Any(c => c.Given) && g.Any(c => !c.Given));
    });

    [Fact]
    public void The_ladder_goes_from_white_to_green_by_cloth_and_tips() => Always(made =>
    {
        Assert.Equal(("White", "white", 0), (made.Rows.Ranks[0].Name, made.Rows.Ranks[0].Cloth, made.Rows.Ranks[0].Tips));
        Assert.Equal(("White, two red tips", 2), (made.Rows.Ranks[2].Name, made.Rows.Ranks[2].Tips));
        Assert.Equal(("Yellow", "yellow"), (made.Rows.Ranks[3].Name, made.Rows.Ranks[3].Cloth));
        Assert.Equal("green", made.Rows.Ranks[^1].Cloth);
        Assert.Equal(Enumerable.Range(1, 10), made.Rows.Ranks.Select(r => r.Position));
        Assert.Equal((14, 10), (made.Juniors.FirstCourseLessons, made.Juniors.FirstCourseWeeks));
    });

    [Fact]
    public void Awards_rise_step_by_step_and_those_given_here_are_of_a_test_day() => Always(made =>
    {
        var step = made.Rows.Ranks.ToDictionary(r => r.Id, r => r.Position);
        var tests = made.Rows.PromotionTests.ToDictionary(t => t.Id, t => t.Date);
        foreach (var person in made.Rows.Awards.GroupBy(a => a.PersonId))
        {
            var own = person.OrderBy(a => a.On).ToList();
            for (var i = 1; i < own.Count; i++) Assert.Equal(step[own[i - 1].RankId] + 1, step[own[i].RankId]);
        }

        Assert.All(made.Rows.Awards.Where(a => a.Source == AwardSource.Promoted), a => Assert.Equal(tests[a.TestId!.Value], a.On));
        Assert.True(made.Rows.Awards.Count(a => a.Source == AwardSource.Promoted) > 40);
        var worn = made.Now(made.Juniors).Select(e => made.RankNow(e.PersonId)).ToHashSet();
        Assert.Contains(worn, w => w is null);
        Assert.Contains(worn, w => w is 4 or 5 or 6);
        Assert.Contains(worn, w => w >= 7);
    });

    [Fact]
    public void Who_was_promoted_here_had_fourteen_lessons_and_ten_weeks() => Always(made =>
    {
        foreach (var person in made.Rows.Awards.GroupBy(a => a.PersonId))
        {
            var since = made.Rows.Enrolments.Where(e => e.PersonId == person.Key).Min(e => e.From);
            foreach (var award in person.OrderBy(a => a.On))
            {
                if (award.Source == AwardSource.Promoted)
                {
                    Assert.True(award.On >= since.AddDays(70));
                    Assert.True(made.States.Count(s => s.PersonId == person.Key && s.Counts && s.Date >= since && s.Date < award.On) >= 14);
                }

                if (award.Source != AwardSource.Transferred) since = award.On!.Value.AddDays(1);
            }
        }
    });

    [Fact]
    public void Lessons_count_from_the_first_one_or_from_the_day_after_the_last_promotion() => Always(made =>
    {
        foreach (var e in made.Rows.Enrolments)
        {
            var last = made.Rows.Awards.Where(a => a.PersonId == e.PersonId && a.Source != AwardSource.Transferred && a.On >= e.From && (e.To is null || a.On <= e.To)).Max(a => a.On);
            Assert.Equal(last?.AddDays(1) ?? e.From, e.CountsFrom);
        }
    });

    [Fact]
    public void Whoever_holds_a_rank_has_crossed_and_beginners_have_not() => Always(made =>
    {
        var crossed = made.Rows.Crossings.ToLookup(c => (c.PersonId, c.ProgrammeId));
        foreach (var e in made.Now(made.Juniors).Concat(made.Now(made.Teens)))
            Assert.Equal(made.RankNow(e.PersonId) is null ? 0 : 1, crossed[(e.PersonId, e.ProgrammeId)].Count());
        Assert.InRange(made.Now(made.Juniors).Count(e => made.RankNow(e.PersonId) is null), 8, 22);
    });

    [Fact]
    public void Marks_are_of_a_device_with_its_rising_count_and_an_acting_adult() => Always(made =>
    {
        var adults = made.Adults.Select(a => a.Id).ToHashSet();
        Assert.Equal([DeviceKind.Laptop, DeviceKind.Tablet], made.Rows.Devices.Select(d => d.Kind));
        foreach (var device in made.Registers.SelectMany(r => r.Marks).GroupBy(m => m.DeviceId))
        {
            Assert.Equal(Enumerable.Range(1, device.Count()), device.Select(m => m.Sequence));
            Assert.Equal(device.Select(m => m.MadeAt).Order(), device.Select(m => m.MadeAt));
        }

        Assert.All(made.Registers.SelectMany(r => r.Marks).Where(m => m.ItemId is null), m => Assert.Contains(m.ById!.Value, adults));
        // What was seen may have been marked by a leader: then it is a suggestion.
        var leaders = made.Leaders.Select(l => l.Id).ToHashSet();
        var seen = made.Registers.SelectMany(r => r.Marks).Where(m => m.ItemId is not null).ToList();
        Assert.All(seen, m => Assert.True(adults.Contains(m.ById!.Value) || (leaders.Contains(m.ById.Value) && !EvidenceCode.SignsOff(m))));
        Assert.Contains(seen, m => leaders.Contains(m.ById!.Value));
    });

    [Fact]
    public void The_register_holds_late_left_early_excused_and_absent() => Always(made =>
    {
        Assert.Contains(made.States, s => s.Late);
        Assert.Contains(made.States, s => s.LeftEarly);
        Assert.Contains(made.States, s => s.Word == AttendanceWord.Left);
        Assert.Contains(made.States, s => s.Word == AttendanceWord.Excused);
        Assert.Contains(made.States, s => s.Word == AttendanceWord.Absent);
        Assert.Contains(made.States, s => s.Counts && !s.Ukemi);
    });

    [Fact]
    public void Arrivals_lie_a_few_minutes_round_the_bow() => Always(made =>
    {
        var around = made.States.Where(s => s is { Arrived: not null, Late: false })
            .Select(s => (s.Arrived!.Value.ToTimeSpan() - made.Rows.Lessons.Single(l => l.Id == s.LessonId).Start.ToTimeSpan()).TotalMinutes).ToList();
        Assert.All(around, m => Assert.InRange(m, -10, 5));
    });

    [Fact]
    public void Three_lessons_hold_marks_that_clash_in_both_ways() => Always(made =>
    {
        Assert.Equal(3, made.States.Where(s => s.Clash != AttendanceClash.None).Select(s => s.LessonId).Distinct().Count());
        Assert.Contains(made.States, s => s.Clash == AttendanceClash.OnTimeAndLate);
        Assert.Contains(made.States, s => s.Clash == AttendanceClash.PresentAndAbsent);
    });

    [Fact]
    public void One_lesson_was_held_without_a_register() => Always(made =>
    {
        var forgotten = Assert.Single(made.Rows.Lessons, l => l.RegisterMissing);
        Assert.Null(forgotten.ClosureId);
        Assert.InRange(forgotten.Date, made.Term.From, made.Today);
        Assert.DoesNotContain(made.Registers, r => r.Lesson.Id == forgotten.Id);
    });

    [Fact]
    public void Every_other_past_lesson_that_was_held_has_a_register() => Always(made =>
    {
        var kept = made.Registers.Where(r => r.Marks.Count > 0).Select(r => r.Lesson.Id).ToHashSet();
        Assert.All(made.Rows.Lessons.Where(l => l.Date < made.Today && l.ClosureId is null && !l.RegisterMissing), l => Assert.Contains(l.Id, kept));
    });

    [Fact]
    public void One_mark_was_undone_and_one_corrected() => Always(made =>
    {
        var marks = made.Registers.SelectMany(r => r.Marks).ToDictionary(m => m.Id);
        var undo = Assert.Single(marks.Values, m => m.Kind == MarkKind.Cleared);
        Assert.Equal((MarkKind.Present, undo.PersonId), (marks[undo.Replaces!.Value].Kind, marks[undo.Replaces.Value].PersonId));
        Assert.Equal(AttendanceWord.Absent, made.States.Single(s => s.LessonId == undo.LessonId && s.PersonId == undo.PersonId).Word);
        var correction = Assert.Single(marks.Values, m => m.Kind == MarkKind.Corrected);
        Assert.Equal(MarkKind.Absent, marks[correction.Replaces!.Value].Kind);
        Assert.Equal(AttendanceWord.Present, made.States.Single(s => s.LessonId == correction.LessonId && s.PersonId == correction.PersonId).Word);
    });

    [Fact]
    public void Register_order_is_by_called_name_at_the_terms_start_with_joiners_appended() => Always(made =>
    {
        var start = made.LessonsOf(made.Juniors).First(l => l.Date >= made.Term.From).Date;
        var places = made.Rows.RegisterPlaces.Where(p => p.ProgrammeId == made.Juniors.Id && p.TermId == made.Term.Id).OrderBy(p => p.Position).ToList();
        Assert.Equal(Enumerable.Range(1, places.Count), places.Select(p => p.Position));
        var enrolments = made.Rows.Enrolments.Where(e => e.ProgrammeId == made.Juniors.Id).ToDictionary(e => e.PersonId);
        Assert.All(made.Now(made.Juniors), e => Assert.Equal(places.Single(p => p.PersonId == e.PersonId).Position, e.Position));
        var atStart = places.TakeWhile(p => enrolments[p.PersonId].From <= start).Select(p => Made.CalledOf(made.ById[p.PersonId])).ToList();
        // The letters with marks in today's cast, without them.
        Assert.Equal(atStart.OrderBy(n => n.Replace("É", "E").Replace("é", "e").Replace("ø", "o").Replace("Ł", "L").Replace("á", "a"), StringComparer.OrdinalIgnoreCase), atStart);
        var joiners = places.SkipWhile(p => enrolments[p.PersonId].From <= start).Select(p => enrolments[p.PersonId].From).ToList();
        Assert.True(joiners.Count >= 4);
        Assert.Equal(joiners.Order(), joiners);
    });

    [Fact]
    public void Nothing_in_it_happened_today_or_later() => Always(made =>
    {
        var midnight = new DateTimeOffset(made.Today.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero).AddHours(-1);
        Assert.True(made.Rows.Trail[^1].At < midnight);
        Assert.All(made.Rows.People, p => Assert.True(p.MadeAt < midnight));
        Assert.All(made.Rows.Registrations, r => Assert.True(r.MadeAt < midnight));
        Assert.All(made.Rows.Consents, c => Assert.True(c.MadeAt < midnight));
        Assert.All(made.Rows.Awards, a => Assert.True(a.MadeAt < midnight));
        Assert.All(made.Registers.SelectMany(r => r.Marks), m => Assert.True(m.MadeAt < midnight));
    });

    [Fact]
    public void All_ids_are_of_version_7_and_different() => Always(made =>
    {
        var ids = made.Rows.People.Select(r => r.Id).Concat(made.Rows.Lessons.Select(r => r.Id)).Concat(made.Rows.Evenings.Select(r => r.Id))
            .Concat(made.Rows.Enrolments.Select(r => r.Id)).Concat(made.Rows.Awards.Select(r => r.Id)).Concat(made.Rows.Contacts.Select(r => r.Id))
            .Concat(made.Registers.SelectMany(r => r.Marks).Select(m => m.Id)).ToList();
        Assert.All(ids, id => Assert.Equal((7, 2), (id.Version, id.Variant >> 2)));
        Assert.Equal(ids.Count, ids.Distinct().Count());
    });

    [Fact]
    public void A_child_never_asked_for_medical_or_size_data_has_none() => Always(made =>
        Assert.All(made.Rows.People, p => Assert.Null(p.Sex)));
}
