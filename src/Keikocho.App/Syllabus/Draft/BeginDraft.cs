using System.Globalization;
using Keikocho.App.Syllabus.Edits;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;

namespace Keikocho.App.Syllabus.Draft;

/// <summary>What a draft begins with.</summary>
public static class BeginDraft
{
    /// <summary>An empty ladder.</summary>
    public static Edition FromNothing(string programme) => new(programme, NextName(0), null, [], [], [], []);

    /// <summary>The belts of the programme's ladder as the club's lists named them, with nothing asked yet; null where there are none.</summary>
    public static Edition? FromBelts(ClubBook book, ProgrammeRow programme)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(programme);
        var ranks = new List<LadderRank>();
        foreach (var row in book.Ranks.Where(r => r.LadderId == programme.LadderId))
        {
            var key = row.Key.Length > 0 ? row.Key : EditionKeys.Make(row.Name, ranks.Select(r => r.Key));
            ranks.Add(new LadderRank(key, row.Name, null, row.Cloth, row.Tips, new Minima(), []));
        }

        if (ranks.Count == 0) return null;
        // The first belt above the one worn on joining ends the first course; the club's page says how long that takes.
        if (ranks.Count > 1)
            ranks[1] = ranks[1] with { FirstCourse = true, Minima = new Minima(programme.FirstCourseLessons ?? 0, programme.FirstCourseWeeks ?? 0) };
        return FromNothing(programme.Name) with { Ranks = ranks };
    }

    /// <summary>The newest edition, to be changed.</summary>
    public static Edition FromEdition(Edition edition)
    {
        ArgumentNullException.ThrowIfNull(edition);
        return edition with { Name = After(edition.Name), From = null };
    }

    /// <summary>A sample ladder as the club's own; its source and its cautions stay with it.</summary>
    public static Edition FromSample(Edition edition, string ladder, string name)
    {
        ArgumentNullException.ThrowIfNull(edition);
        return edition with { Ladder = ladder, Name = name, From = null };
    }

    /// <summary>"edition 1" for the first.</summary>
    public static string NextName(int published) => string.Create(CultureInfo.InvariantCulture, $"edition {published + 1}");

    private static string After(string name)
    {
        var digits = name.Length - name.AsSpan().TrimEnd("0123456789").Length;
        return digits is > 0 and < 6
            ? name[..^digits] + (int.Parse(name[^digits..], CultureInfo.InvariantCulture) + 1).ToString(CultureInfo.InvariantCulture)
            : name + " 2";
    }
}
