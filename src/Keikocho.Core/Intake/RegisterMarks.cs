using Keikocho.Core.Kernel;

namespace Keikocho.Core.Intake;

/// <summary>Gathers the marks of a register and sets them beside those that are held.</summary>
internal sealed class RegisterMarks(RegisterQuestion question, DoubtBook book)
{
    private readonly Dictionary<(LineWho, DateOnly), (RegisterSays Says, bool Blank, int Row, int Column)> _marks = [];

    /// <summary>Adds a mark. Where one child has two for one day: a sign goes before a blank, present before late, told us, absent.</summary>
    /// <returns>The other mark when both are signs and say different things.</returns>
    internal (RegisterSays Says, int Row, int Column)? Add(LineWho who, DateOnly day, RegisterSays says, bool blank, int row, int column)
    {
        if (_marks.TryAdd((who, day), (says, blank, row, column))) return null;
        var other = _marks[(who, day)];
        if (other.Blank && !blank || other.Blank == blank && Strength(says) > Strength(other.Says)) _marks[(who, day)] = (says, blank, row, column);
        return !blank && !other.Blank && other.Says != says ? (other.Says, other.Row, other.Column) : null;
    }

    internal void Set(LineWho who, DateOnly day, RegisterSays says)
        => _marks[(who, day)] = _marks[(who, day)] with { Says = says };

    internal List<RegisterMark> Done()
    {
        var marks = new List<RegisterMark>(_marks.Count);
        foreach (var ((who, day), (says, _, row, column)) in _marks.OrderBy(mark => mark.Key.Item2).ThenBy(mark => mark.Value.Row).ThenBy(mark => mark.Value.Column))
        {
            if (who.Person is not { } person || !question.Held.TryGetValue((person, day), out var held))
            {
                marks.Add(new(who, day, says, null, MarkStanding.New, row, column));
                continue;
            }
            if (IsSame(held, says))
            {
                marks.Add(new(who, day, says, held, MarkStanding.Same, row, column));
                continue;
            }
            var answer = book.Ask($"mark:{person.Value:D}:{day.Iso()}", DoubtKind.Differs,
                $"{question.Sheet.Place(row, column)}: {day.Full()} is held as {Say(held)}, the file says {Say(says)}; take the file's, or leave it.",
                [new("take", $"Take the file's: {Say(says)}"), new("leave", $"Leave it: {Say(held)}")], "leave");
            marks.Add(new(who, day, says, held, answer switch { "take" => MarkStanding.Take, "leave" => MarkStanding.Leave, _ => MarkStanding.Open }, row, column));
        }
        return marks;
    }

    // A tap knows the minute of an arrival in time, a sign does not; a file's "late" without a time says nothing against the time that is held.
    private static bool IsSame(RegisterSays held, RegisterSays says) => held == says
        || says.Arrived is null && held.Word == says.Word
        || says.Word == RegisterWord.Late && held.Word == RegisterWord.Present && says.Arrived == held.Arrived;

    internal static string Say(RegisterSays says) => says.Word switch
    {
        RegisterWord.Present => "present",
        RegisterWord.Absent => "absent",
        RegisterWord.Excused => "told us",
        RegisterWord.Late => says.Arrived is { } time ? $"late, {time.Plain()}" : "late",
        _ => throw new ArgumentOutOfRangeException(nameof(says)),
    };

    private static int Strength(RegisterSays says) => says.Word switch
    {
        RegisterWord.Present => 5,
        RegisterWord.Late => says.Arrived is null ? 3 : 4,
        RegisterWord.Excused => 2,
        RegisterWord.Absent => 1,
        _ => throw new ArgumentOutOfRangeException(nameof(says)),
    };
}
