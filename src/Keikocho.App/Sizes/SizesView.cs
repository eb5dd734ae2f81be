using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Club;
using Keikocho.Store.People;
using Keikocho.Store.Sealing;

namespace Keikocho.App.Sizes;

/// <summary>A child whose size may be entered. The list has no size: only when it was taken.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">As called, or the full name on the child's own page.</param>
/// <param name="Taken">When the last size was taken, in words.</param>
/// <param name="IsOld">Older than the club's months, or none, or it does not open.</param>
/// <param name="Held">The last size itself, on the child's own page only.</param>
public sealed record SizeLine(Guid PersonId, string Name, string Taken, bool IsOld, string? Held);

/// <summary>Sizes of a register, or of one child.</summary>
/// <param name="State">How the lock stands.</param>
/// <param name="Units">The club's units.</param>
/// <param name="Programme">The register; null on a child's own page.</param>
/// <param name="Programmes">All programmes.</param>
/// <param name="Child">The child; null for a register.</param>
/// <param name="Lines">In register order.</param>
/// <param name="Months">A size is old after so many months.</param>
public sealed record SizesView(
    LockState State, UnitChoice Units, Guid? Programme, ImmutableArray<(Guid Id, string Name)> Programmes, Guid? Child, ImmutableArray<SizeLine> Lines, int Months)
{
    /// <summary>Reads it; null where there is no such programme or child.</summary>
    public static SizesView? Of(OpenClub club, Guid? programmeId, Guid? child)
    {
        ArgumentNullException.ThrowIfNull(club);
        var (book, today) = (club.Book, club.Today);
        var (state, key) = club.House.Lock.Now(club.Reading);
        List<(Guid Id, string Name)> people;
        Guid? register = null;
        if (child is { } one)
        {
            if (book.Person(one) is not { IsErased: false } person || book.EnrolmentsOfPerson(one).Length == 0) return null;
            people = [(one, person.FullName)];
        }
        else
        {
            if ((programmeId is { } id ? book.Programme(id) : book.Programmes.FirstOrDefault()) is not { } programme) return null;
            register = programme.Id;
            people = [.. CallNames.Show([.. book.RegisterOf(programme.Id, today).DistinctBy(e => e.PersonId).Select(e => book.Person(e.PersonId)!).Where(p => !p.IsErased)
                .Select(p => new NamedChild(new PersonId(p.Id), p.CallName, p.Family, book.RankOf(p.Id, programme.LadderId)?.Name))]).Select(n => (n.Person.Value, n.Name))];
        }

        var months = ClubRules.Partners(book, today).SizeMonths;
        var held = key is null ? [] : SizeReader.Newest(club.Reading, [.. people.Select(p => p.Id)], today, key);
        return new SizesView(
            state, book.Club.Units, register, [.. book.Programmes.Select(p => (p.Id, p.Name))], child,
            [.. people.Select(p => Line(p.Id, p.Name, held.GetValueOrDefault(p.Id), today, months, child is null ? null : book.Club.Units))], months);
    }

    private static SizeLine Line(Guid person, string name, HeldSize? held, DateOnly today, int months, UnitChoice? shown)
    {
        if (held is null) return new SizeLine(person, name, "none yet", true, null);
        if (held.Grams is not { } grams) return new SizeLine(person, name, $"that of {held.On.Full()} does not open: enter it again", true, null);
        var old = held.On.AddMonths(months) < today;
        return new SizeLine(
            person, name, old ? $"{held.On.Full()}, more than {Counted.Of(months, "month")} ago: take it again" : held.On.Full(), old,
            shown is { } units ? $"{Weights.Text(grams, units)} {Weights.Sign(units)}" : null);
    }
}

/// <summary>What was typed of one child.</summary>
/// <param name="Text">As typed.</param>
/// <param name="IsSure">Whoever typed it looked again.</param>
/// <param name="Ask">What is asked about it; null for nothing.</param>
public sealed record TypedSize(string Text, bool IsSure, string? Ask);

/// <summary>A form of sizes that came back.</summary>
/// <param name="On">The day as typed.</param>
/// <param name="Sizes">By child.</param>
public sealed record SentSizes(string On, IReadOnlyDictionary<Guid, TypedSize> Sizes);
