using Keikocho.Store.Keeping;
using Keikocho.Store.People;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Marks;

/// <summary>The right to confirm falls is given and taken the same on both engines.</summary>
public abstract class ConfirmRightSpecification(StoreHost host) : StoreSpecification(host)
{
    [Fact]
    public async Task The_right_is_given_to_an_adult_who_teaches_and_taken_back()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var duty = Duty(club, club.Helper);
        Assert.False(duty.MayConfirmFalls);
        var before = People(club);
        Assert.True(await club.People.LetConfirmFallsAsync(duty.Id, true, EvidenceClub.Today, club.Head, club.Device, Cancel));
        Assert.True(Duty(club, club.Helper).MayConfirmFalls);
        Assert.True(People(club) > before);
        Assert.True(await club.People.LetConfirmFallsAsync(duty.Id, false, EvidenceClub.Today, club.Head, club.Device, Cancel));
        Assert.False(Duty(club, club.Helper).MayConfirmFalls);
        using var db = club.Engine.OpenDb();
        Assert.Equal(3, db.Trail.Count(t => t.Kind == TrailKind.DutyChanged && t.SubjectId == club.Helper && t.ById == club.Head));
    }

    [Fact]
    public async Task A_junior_leader_a_teenager_and_a_duty_that_is_not_there_get_none()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var young = club.NewId();
        Assert.True(await club.People.AddDutyAsync(new NewDuty(young, "Pim", "Marlow", EvidenceClub.Today.AddYears(-18).AddDays(1), DutyKind.Assistant, null, null), EvidenceClub.First, club.Head, club.Device, Cancel));
        var revision = People(club);
        Assert.False(await club.People.LetConfirmFallsAsync(Duty(club, club.Leader).Id, true, EvidenceClub.Today, club.Head, club.Device, Cancel));
        Assert.False(await club.People.LetConfirmFallsAsync(Duty(club, young).Id, true, EvidenceClub.Today, club.Head, club.Device, Cancel));
        Assert.False(await club.People.LetConfirmFallsAsync(club.Device, true, EvidenceClub.Today, club.Head, club.Device, Cancel));
        Assert.Equal(revision, People(club));
        // The birthday itself is enough; and the right can always be taken, whoever has it.
        Assert.True(await club.People.LetConfirmFallsAsync(Duty(club, young).Id, true, EvidenceClub.Today.AddDays(1), club.Head, club.Device, Cancel));
        Assert.True(await club.People.LetConfirmFallsAsync(Duty(club, club.Leader).Id, false, EvidenceClub.Today, club.Head, club.Device, Cancel));
        Assert.True(Duty(club, young).MayConfirmFalls);
        Assert.False(Duty(club, club.Leader).MayConfirmFalls);
    }

    private static DutyRow Duty(EvidenceClub club, Guid adult)
    {
        using var db = club.Engine.OpenDb();
        return db.Duties.Single(d => d.PersonId == adult);
    }

    private static long People(EvidenceClub club)
    {
        using var db = club.Engine.OpenDb();
        return db.Clubs.Single().PeopleRevision;
    }
}

public sealed class ConfirmRightInSqlite() : ConfirmRightSpecification(new SqliteHost());

public sealed class ConfirmRightInPostgres(PostgresDatabase database) : ConfirmRightSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;
