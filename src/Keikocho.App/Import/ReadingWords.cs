using System.Globalization;
using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;
using Keikocho.Store.Intake;

namespace Keikocho.App.Import;

/// <summary>What would be saved, in words; and the words of columns, marks and lines.</summary>
public static class ReadingWords
{
    /// <summary>What saving would do, sentence by sentence.</summary>
    public static IReadOnlyList<string> WouldSave(ReadingView view, ClubFacts facts)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(facts);
        var said = new List<string>();
        if (view.Roster is { } roster)
        {
            Say(said, roster.New, "1 child is new and joins the end of the register.", "# children are new and join the end of the register, in the file’s order.");
            Say(said, roster.Unchanged, "1 child is here already, with nothing to change.", "# children are here already, with nothing to change.");
            Say(said, roster.Changed, "1 child is here already with other values.", "# children are here already with other values.");
            var differences = roster.Lines.SelectMany(line => line.Differences).ToList();
            Say(said, differences.Count(d => d.Take == true), "1 value is taken from the file.", "# values are taken from the file.");
            Say(said, differences.Count(d => d.Take == false), "1 value stays as it is here.", "# values stay as they are here.");
            Say(said, roster.SetAside, "1 line is set aside.", "# lines are set aside.");
            if (view.Ladder is { Ranks.Count: > 0 } ladder) said.Add($"The ladder of {facts.Programme.Name} is made of the file’s own words, lowest first: {string.Join(", ", ladder.Ranks.Select(r => r.Name))}.");
        }

        if (view.SignOffs?.Reading is { } grid)
        {
            Say(said, grid.Count(MarkStanding.New), "1 sighting is new.", "# sightings are new.");
            Say(said, grid.Marks.Count(mark => mark.Standing == MarkStanding.New && mark.Settled), "1 of them is settled: no second evening is asked.", "# of them are settled: no second evening is asked.");
            Say(said, grid.Count(MarkStanding.Same), "1 sighting is here already.", "# sightings are here already.");
            Say(said, grid.Count(MarkStanding.Take), "1 sighting is corrected after the file.", "# sightings are corrected after the file.");
            Say(said, grid.Count(MarkStanding.Leave), "1 sighting stays as it is here.", "# sightings stay as they are here.");
            Say(said, grid.Lines.Count(line => line.SetAside.Length > 0), "1 line is set aside.", "# lines are set aside.");
            Say(said, grid.Columns.Count(column => column.LeftOut.Length > 0), "1 heading is left out.", "# headings are left out.");
        }

        if (view.Register is not { } register) return said;
        var held = register.Days.Where(d => d.Standing is DayStanding.Held or DayStanding.Forgotten).ToList();
        Say(said, register.Count(MarkStanding.New), "1 mark is new.", "# marks are new.");
        Say(said, register.Count(MarkStanding.Same), "1 mark is here already.", "# marks are here already.");
        Say(said, register.Count(MarkStanding.Take), "1 mark is corrected after the file.", "# marks are corrected after the file.");
        Say(said, register.Count(MarkStanding.Leave), "1 mark stays as it is here.", "# marks stay as they are here.");
        Say(said, held.Count(d => !facts.Lessons.ContainsKey(d.Day)), "1 lesson is put into the calendar.", "# lessons are put into the calendar.");
        Say(said, register.Days.Count(d => d.Standing == DayStanding.Closed), "1 date is entered as closed.", "# dates are entered as closed.");
        Say(said, register.Days.Count(d => d.Standing == DayStanding.Forgotten), "1 lesson is entered as held without a register.", "# lessons are entered as held without a register.");
        Say(said, register.Days.Count(d => d.Standing == DayStanding.LeftOut), "1 date is left out.", "# dates are left out.");
        Say(said, register.Lines.Where(line => line.Who?.NewKey is not null).Select(line => line.Who).Distinct().Count(), "1 child is new.", "# children are new.");
        Say(said, register.Lines.Count(line => line.SetAside.Length > 0), "1 line is set aside.", "# lines are set aside.");
        return said;
    }

    /// <summary>What a file holds, in a word.</summary>
    public static string Of(ReadingKind kind) => kind switch
    {
        ReadingKind.Roster => "children",
        ReadingKind.Register => "register",
        ReadingKind.SignOffs => "sign-offs",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    /// <summary>The kind that a form or the command line names; null for any other word.</summary>
    public static ReadingKind? KindOf(string word) => word switch
    {
        "roster" => ReadingKind.Roster,
        "register" => ReadingKind.Register,
        "sign-offs" => ReadingKind.SignOffs,
        _ => null,
    };

    /// <summary>The page's heading and slip for a kind.</summary>
    public static (string Heading, string Slip) HeadOf(ReadingKind kind) => kind switch
    {
        ReadingKind.Roster => ("The children", "名簿"),
        ReadingKind.Register => ("The register so far", "出席簿"),
        ReadingKind.SignOffs => ("What was signed off", "技"),
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    /// <summary>The words of a column's meaning.</summary>
    public static string Of(ColumnMeaning meaning) => meaning switch
    {
        ColumnMeaning.NotRead => "not read",
        ColumnMeaning.GivenName => "first name",
        ColumnMeaning.FamilyName => "family name",
        ColumnMeaning.FullName => "whole name",
        ColumnMeaning.CalledName => "name called on the mat",
        ColumnMeaning.BirthDate => "birth date",
        ColumnMeaning.Sex => "sex",
        ColumnMeaning.Rank => "rank",
        ColumnMeaning.FirstClass => "first lesson",
        ColumnMeaning.LastPromotion => "last promotion",
        ColumnMeaning.ContactName => "contact: name",
        ColumnMeaning.ContactPhone => "contact: telephone",
        ColumnMeaning.ContactEmail => "contact: e-mail",
        ColumnMeaning.Relation => "contact: relation",
        ColumnMeaning.PhotoConsent => "photo consent",
        ColumnMeaning.RegistrationNumber => "registration number",
        ColumnMeaning.RegistrationExpiry => "registration: last day",
        ColumnMeaning.Group => "group (not kept)",
        ColumnMeaning.Notes => "notes (not kept)",
        ColumnMeaning.Medical => "medical (set aside)",
        ColumnMeaning.Size => "size (set aside)",
        _ => throw new ArgumentOutOfRangeException(nameof(meaning)),
    };

    /// <summary>What becomes of a line.</summary>
    public static string Of(RosterLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return line.Standing switch
        {
            LineStanding.New => "new",
            LineStanding.Known => line.Differences.Count == 0 ? "here already" : "here already, differs",
            LineStanding.SetAside => $"set aside: {line.Why}",
            _ => "waits for an answer",
        };
    }

    /// <summary>The contacts in one line.</summary>
    public static string Contacts(RosterChild child)
    {
        ArgumentNullException.ThrowIfNull(child);
        return string.Join("; ", child.Contacts.Select(contact => string.Join(", ", new[] { contact.Name, contact.Relation }.Concat(contact.Phones).Concat(contact.Emails).Where(text => text.Length > 0))));
    }

    /// <summary>A day, or nothing.</summary>
    public static string Day(DateOnly? day) => day?.Full() ?? "";

    private static void Say(List<string> said, int count, string one, string many)
    {
        if (count > 0) said.Add((count == 1 ? one : many).Replace("#", count.ToString("N0", CultureInfo.InvariantCulture), StringComparison.Ordinal));
    }
}
