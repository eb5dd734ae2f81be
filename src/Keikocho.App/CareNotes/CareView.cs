using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Papers;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Book;
using Keikocho.Store.People;
using Keikocho.Store.Sealing;

namespace Keikocho.App.CareNotes;

/// <summary>One heading of a child's care notes, as the page shows it.</summary>
/// <param name="Heading">The heading in words, and what to ask.</param>
/// <param name="Text">The note; null for none.</param>
/// <param name="Written">Who wrote it and when; null for none.</param>
/// <param name="DoesNotOpen">There is one that this lock does not open.</param>
public sealed record CareLine(CareHeadingWords Heading, string? Text, string? Written, bool DoesNotOpen);

/// <summary>The care notes of one child, for the instructor at the laptop.</summary>
/// <param name="Person">The child.</param>
/// <param name="State">How the lock stands.</param>
/// <param name="Stands">When the family was asked, and whether there is a note.</param>
/// <param name="AskAgainOn">The day from which the family is asked again.</param>
/// <param name="Lines">By heading; empty while the lock is shut.</param>
public sealed record CareView(BookPerson Person, LockState State, CareStands Stands, DateOnly AskAgainOn, ImmutableArray<CareLine> Lines)
{
    /// <summary>Reads it; null where there is no such child.</summary>
    public static CareView? Of(OpenClub club, Guid id)
    {
        ArgumentNullException.ThrowIfNull(club);
        var book = club.Book;
        if (book.Person(id) is not { IsErased: false } person || book.EnrolmentsOfPerson(id).Length == 0) return null;
        var stands = CareNoteReader.Stands(club.Reading, [id])[id];
        var (state, key) = club.House.Lock.Now(club.Reading);
        IReadOnlyList<HeldCareNote> held = [];
        try
        {
            if (key is not null) held = CareNoteReader.Of(club.Reading, [id], key).GetValueOrDefault(id) ?? [];
        }
        catch (ObjectDisposedException)
        {
            // Shut while this page was made.
            (state, key) = (LockState.Locked, null);
        }

        return new CareView(
            person, state, stands, FloorAndCareRules.Folder(book, club.Today).AskAgainOn(stands.AskedOn, club.Today),
            key is null ? [] : [.. CareHeadings.All.Select(h => Line(club, h, held.FirstOrDefault(n => n.Heading == h.Heading)))]);
    }

    /// <summary>How it stands, in a sentence without a word of any note.</summary>
    public static string Words(CareStands stands, DateOnly askAgainOn, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(stands);
        if (stands.AskedOn is not { } asked) return stands.HasNote ? "there are care notes" : "the family was not asked yet";
        var again = askAgainOn <= today ? "ask again" : $"ask again from {askAgainOn.Full()}";
        return $"{(stands.HasNote ? "there are care notes" : "nothing to know")}; asked on {asked.Full()}, {again}";
    }

    private static CareLine Line(OpenClub club, CareHeadingWords heading, HeldCareNote? held)
    {
        if (held is null) return new CareLine(heading, null, null, false);
        var by = club.Book.Person(held.ById) is { IsErased: false } adult ? adult.FullName : "an adult whose name was erased";
        return new CareLine(heading, held.Text, $"{by}, {club.Clock.DayOf(held.MadeAt).Full()}", held.Text is null);
    }
}

/// <summary>A child on the list of whom to ask.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">As called.</param>
/// <param name="Words">How it stands, without a word of any note.</param>
/// <param name="IsDue">The family is to be asked.</param>
public sealed record CareListLine(Guid PersonId, string Name, string Words, bool IsDue);

/// <summary>Whom to ask, in register order.</summary>
/// <param name="State">How the lock stands.</param>
/// <param name="Programme">The register.</param>
/// <param name="Programmes">All of them.</param>
/// <param name="Lines">In register order.</param>
public sealed record CareListView(LockState State, Guid Programme, ImmutableArray<(Guid Id, string Name)> Programmes, ImmutableArray<CareListLine> Lines)
{
    /// <summary>Reads it; null where there is no such programme.</summary>
    public static CareListView? Of(OpenClub club, Guid? programmeId)
    {
        ArgumentNullException.ThrowIfNull(club);
        var (book, today) = (club.Book, club.Today);
        if ((programmeId is { } id ? book.Programme(id) : book.Programmes.FirstOrDefault()) is not { } programme) return null;
        var children = PaperName.Of(book, programme, book.RegisterOf(programme.Id, today).Select(e => e.PersonId).Where(p => book.Person(p) is { IsErased: false }));
        var stands = CareNoteReader.Stands(club.Reading, [.. children.Select(c => c.PersonId)]);
        var rule = FloorAndCareRules.Folder(book, today);
        return new CareListView(
            club.House.Lock.Now(club.Reading).State, programme.Id, [.. book.Programmes.Select(p => (p.Id, p.Name))],
            [.. children.Select(c =>
            {
                var own = stands[c.PersonId];
                var again = rule.AskAgainOn(own.AskedOn, today);
                return new CareListLine(c.PersonId, c.Second is null ? c.First : $"{c.First} {c.Second}", CareView.Words(own, again, today), again <= today);
            })]);
    }
}
