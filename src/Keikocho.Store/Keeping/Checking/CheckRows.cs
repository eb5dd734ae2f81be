using System.Data.Common;
using System.Globalization;
using System.Security.Cryptography;
using Keikocho.Store.Keeping.OpenArchive;
using Keikocho.Store.Marks;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Keikocho.Store.Keeping.Checking;

/// <summary>The checks of the smaller tables: links, the trail, sealed values, the calendar.</summary>
internal sealed class CheckRows(ReadSnapshot view, int club, Findings findings)
{
    private const string TrailLines =
        "SELECT \"Number\", \"At\", \"ById\", \"DeviceId\", \"Kind\", \"SubjectId\", \"Digest\", \"Hash\" FROM \"Trail\" WHERE \"Club\" = @club ORDER BY \"Number\"";

    private const string Strays =
        "SELECT l.\"Id\", l.\"Date\", e.\"Date\" FROM \"Lessons\" l JOIN \"Evenings\" e ON e.\"Club\" = l.\"Club\" AND e.\"Id\" = l.\"EveningId\" "
        + "WHERE l.\"Club\" = @club AND l.\"Date\" <> e.\"Date\" ORDER BY l.\"Date\", l.\"Start\", l.\"Id\"";

    private const string OpenEnrolments =
        "SELECT \"ProgrammeId\", \"Position\", \"PersonId\" FROM \"Enrolments\" WHERE \"Club\" = @club AND \"To\" IS NULL "
        + "ORDER BY \"ProgrammeId\", \"Position\", \"From\", \"Id\"";

    private const string PlacesGivenTwice =
        "SELECT \"ProgrammeId\", \"TermId\", \"Position\" FROM \"RegisterPlaces\" WHERE \"Club\" = @club "
        + "GROUP BY \"ProgrammeId\", \"TermId\", \"Position\" HAVING count(*) > 1 ORDER BY \"ProgrammeId\", \"TermId\", \"Position\"";

    /// <summary>Every link of the model, but those of the marks, which are checked while they are folded.</summary>
    public void Links(CancellationToken cancel)
    {
        List<IForeignKey> links;
        using (var db = view.OpenDb()) links = [.. db.Model.GetEntityTypes().SelectMany(t => t.GetForeignKeys())];
        foreach (var link in links.Where(l => l.DeclaringEntityType.ClrType != typeof(MarkRow)))
        {
            cancel.ThrowIfCancellationRequested();
            var child = link.DeclaringEntityType.GetTableName();
            var parent = link.PrincipalEntityType.GetTableName();
            var pairs = link.Properties.Zip(link.PrincipalKey.Properties)
                .Select(p => $"p.\"{p.Second.GetColumnName()}\" = c.\"{p.First.GetColumnName()}\"");
            var missing = link.Properties.Select(p => $"c.\"{p.GetColumnName()}\" IS NOT NULL");
            var count = Number(
                $"SELECT count(*) FROM \"{child}\" c WHERE c.\"Club\" = @club AND {string.Join(" AND ", missing)} "
                + $"AND NOT EXISTS (SELECT 1 FROM \"{parent}\" p WHERE {string.Join(" AND ", pairs)})");
            if (count > 0)
                findings.Add(CheckPart.Links, string.Create(
                    CultureInfo.InvariantCulture, $"{count} of {child} point by {link.Properties[^1].Name} to a row of {parent} that is not there."));
        }
    }

    /// <summary>Numbers without a gap, each hash over the line before.</summary>
    public long Trail(CancellationToken cancel)
    {
        using var read = LineReading.Of(view, 0, TrailLines, club);
        long lines = 0, expected = 1;
        byte[] before = [];
        while (read.Next())
        {
            if (lines++ % 1024 == 0) cancel.ThrowIfCancellationRequested();
            var line = new TrailRow
            {
                Number = read.Long(0),
                At = DateTimeOffset.FromUnixTimeMilliseconds(read.Long(1)),
                ById = read.IdIfAny(2),
                DeviceId = read.IdIfAny(3),
                Kind = (TrailKind)read.Whole(4),
                SubjectId = read.IdIfAny(5),
                Digest = read.Bytes(6),
                Hash = read.Bytes(7),
            };
            if (line.Number != expected)
                findings.Add(CheckPart.Trail, string.Create(CultureInfo.InvariantCulture, $"The trail goes from line {expected - 1} to line {line.Number}: lines are missing."));
            else if (!CryptographicOperations.FixedTimeEquals(TrailChain.HashOf(line, before), line.Hash))
                findings.Add(CheckPart.Trail, string.Create(
                    CultureInfo.InvariantCulture, $"Line {line.Number} of the trail does not fit its hash: it or the line before was changed."));
            expected = line.Number + 1;
            before = line.Hash;
        }

        return lines;
    }

    /// <summary>One count of one device is one mark.</summary>
    public void Sequences()
    {
        using var command = Ask(
            "SELECT \"DeviceId\", \"Sequence\", count(*) FROM \"Marks\" WHERE \"Club\" = @club GROUP BY \"DeviceId\", \"Sequence\" HAVING count(*) > 1");
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            findings.Add(CheckPart.Marks, string.Create(
                CultureInfo.InvariantCulture,
                $"Device {CellText.Read(reader, 0, CellKind.Id, view.IsSqlite)} has count {reader.GetInt32(1)} on {reader.GetInt64(2)} marks."));
        }
    }

    /// <summary>Opens every sealed value, and compares attachments with their hash.</summary>
    public long Sealed(CancellationToken cancel)
    {
        IReadOnlyList<ArchiveTable> tables;
        using (var db = view.OpenDb()) tables = ArchiveTable.All(db);
        long opened = 0;
        foreach (var table in tables)
        {
            var closed = table.Columns.Where(c => c.Kind is CellKind.SealedText or CellKind.LockedText or CellKind.SealedDate or CellKind.SealedWhole or CellKind.SealedFile).ToList();
            if (closed.Count == 0) continue;
            var keys = table.Columns.Take(table.KeyColumns.Count).ToList();
            var hash = table.Name == "Attachments" ? table.Columns.Where(c => c.Name == "Hash").ToList() : [];
            List<ArchiveColumn> columns = [.. keys, .. closed, .. hash];
            using var command = Ask(table.Question(columns, view.IsSqlite));
            using var reader = command.ExecuteReader();
            while (reader.Read())
            {
                cancel.ThrowIfCancellationRequested();
                opened += OpenRow(reader, table, columns, keys.Count, hash.Count > 0);
            }
        }

        return opened;
    }

    /// <summary>Lessons lie on their evening's date; nobody shares a place in a register.</summary>
    public void Calendar()
    {
        // Written out, since the context's first query of each kind takes longer than all of these.
        using (var strays = LineReading.Of(view, 0, Strays, club))
        {
            while (strays.Next())
                findings.Add(CheckPart.Calendar, string.Create(
                    CultureInfo.InvariantCulture, $"Lesson {strays.Id(0)} of {strays.Day(1):yyyy-MM-dd} belongs to the evening of {strays.Day(2):yyyy-MM-dd}."));
        }

        // An enrolment that has ended keeps the place of its last term, which another child may have in a later one.
        using (var enrolments = LineReading.Of(view, 0, OpenEnrolments, club))
        {
            (Guid Programme, int Position, Guid Person)? earlier = null;
            for (; enrolments.Next(); earlier = (enrolments.Id(0), enrolments.Whole(1), enrolments.Id(2)))
            {
                var (programme, position, person) = (enrolments.Id(0), enrolments.Whole(1), enrolments.Id(2));
                if (earlier is { } one && one.Programme == programme && one.Position == position && one.Person != person)
                    findings.Add(CheckPart.Calendar, string.Create(
                        CultureInfo.InvariantCulture, $"Persons {one.Person} and {person} both have place {position} in the register of programme {programme}."));
            }
        }

        using var places = LineReading.Of(view, 0, PlacesGivenTwice, club);
        while (places.Next())
            findings.Add(CheckPart.Calendar, string.Create(
                CultureInfo.InvariantCulture, $"Place {places.Whole(2)} of programme {places.Id(0)} in term {places.Id(1)} is given twice."));
    }

    private long OpenRow(DbDataReader reader, ArchiveTable table, List<ArchiveColumn> columns, int keys, bool withHash)
    {
        long opened = 0;
        string? content = null;
        var sealedEnd = withHash ? columns.Count - 1 : columns.Count;
        for (var at = keys; at < sealedEnd; at++)
        {
            try
            {
                if (CellText.Read(reader, at, columns[at].Kind, view.IsSqlite) is not { } text) continue;
                opened++;
                if (columns[at].Kind == CellKind.SealedFile) content = text;
            }
            catch (InvalidDataException cause)
            {
                findings.Add(CheckPart.Sealed, $"{columns[at].Name} of {Row()} does not open: {cause.Message}");
            }
        }

        if (withHash && content is not null && content != CellText.Read(reader, sealedEnd, CellKind.Bytes, view.IsSqlite))
            findings.Add(CheckPart.Sealed, $"The content of {Row()} does not have the hash that is noted for it.");
        return opened;

        string Row() => $"{table.Name} {string.Join(' ', Enumerable.Range(0, keys).Select(k => CellText.Read(reader, k, columns[k].Kind, view.IsSqlite)))}";
    }

    private long Number(string question)
    {
        using var command = Ask(question);
        return Convert.ToInt64(command.ExecuteScalar(), CultureInfo.InvariantCulture);
    }

    private DbCommand Ask(string question)
    {
        var command = view.Ask(question);
        var parameter = command.CreateParameter();
        parameter.ParameterName = "club";
        parameter.Value = club;
        command.Parameters.Add(parameter);
        return command;
    }
}
