namespace Keikocho.Paper.Knocks;

/// <summary>One line of an accident record as it is printed.</summary>
/// <param name="Written">Day and time at which it was written, in words.</param>
/// <param name="By">Who wrote it.</param>
/// <param name="Says">What it says: "Seen", "Done", "Handed over" ...</param>
/// <param name="Words">The words.</param>
public sealed record AccidentRecordLine(string Written, string By, string Says, string Words);

/// <summary>All that an accident record shows, about one child.</summary>
/// <param name="Club">Name of the club.</param>
/// <param name="Child">The child's full name.</param>
/// <param name="PrintedOn">Today.</param>
/// <param name="On">The day of the knock.</param>
/// <param name="When">The lesson and when it was marked, in words.</param>
/// <param name="Place">The hall; null where it is not known.</param>
/// <param name="Activity">What was going on, in words.</param>
/// <param name="MarkedBy">Who marked it.</param>
/// <param name="Lines">In the order in which they were written.</param>
/// <param name="SpeakTo">Whom to ask.</param>
public sealed record AccidentRecordContent(
    string Club, string Child, DateOnly PrintedOn, DateOnly On, string When, string? Place, string Activity, string MarkedBy, IReadOnlyList<AccidentRecordLine> Lines, string SpeakTo);
