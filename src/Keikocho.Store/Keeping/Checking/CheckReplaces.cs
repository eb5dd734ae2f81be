using System.Data.Common;

namespace Keikocho.Store.Keeping.Checking;

/// <summary>Marks that take the place of another: it must be there and speak of the same person.</summary>
internal sealed class CheckReplaces : IDisposable
{
    private const int MostWaiting = 10_000;

    private readonly List<MarkLine> waiting = [];
    private readonly Findings findings;
    private readonly DbCommand command;
    private readonly DbParameter target;
    private readonly bool isSqlite;

    public CheckReplaces(ReadSnapshot view, int lane, int club, Findings findings)
    {
        this.findings = findings;
        isSqlite = view.IsSqlite;
        command = view.Ask("SELECT \"PersonId\" FROM \"Marks\" WHERE \"Club\" = @club AND \"Id\" = @id", lane);
        var clubNumber = command.CreateParameter();
        clubNumber.ParameterName = "club";
        clubNumber.Value = club;
        target = command.CreateParameter();
        target.ParameterName = "id";
        command.Parameters.Add(clubNumber);
        command.Parameters.Add(target);
    }

    public void Add(in MarkLine mark)
    {
        waiting.Add(mark);
        if (waiting.Count >= MostWaiting) Finish();
    }

    public void Finish()
    {
        foreach (var mark in waiting)
        {
            var replaced = mark.Replaces!.Value;
            target.Value = isSqlite ? replaced.ToByteArray(bigEndian: true) : replaced;
            var person = command.ExecuteScalar() switch
            {
                byte[] bytes => new Guid(bytes, bigEndian: true),
                Guid id => id,
                _ => (Guid?)null,
            };
            if (person is null)
                findings.Add(CheckPart.Marks, $"Mark {mark.Id} takes the place of mark {replaced}, which is not there.");
            else if (person != mark.PersonId)
                findings.Add(CheckPart.Marks, $"Mark {mark.Id} of person {mark.PersonId} takes the place of mark {replaced} of another person, {person}.");
        }

        waiting.Clear();
    }

    public void Dispose() => command.Dispose();
}
