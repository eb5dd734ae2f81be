namespace Keikocho.Core.Intake;

/// <summary>What kind of thing is not certain.</summary>
public enum DoubtKind
{
    /// <summary>Day first or month first, for a whole column or row of dates.</summary>
    DateOrder,
    /// <summary>Days and months of real dates may have changed places when the file was made.</summary>
    DatesSwapped,
    /// <summary>No such day, or not a date.</summary>
    DateNotOne,
    /// <summary>A date that cannot well be: a birth date in the future, a first class before birth.</summary>
    DateUnlikely,
    /// <summary>No birth date.</summary>
    BirthMissing,
    /// <summary>A given or a family name is missing.</summary>
    NameMissing,
    /// <summary>One column holds whole names, and which part comes first cannot be known.</summary>
    NameOrder,
    /// <summary>The same name and birth date on two lines.</summary>
    SameChildTwice,
    /// <summary>One name with two birth dates.</summary>
    Namesakes,
    /// <summary>Nearly the same name with the same birth date.</summary>
    NearlySameChild,
    /// <summary>A rank that the club's ladder does not have.</summary>
    RankUnknown,
    /// <summary>A word for yes or no that is not known.</summary>
    ConsentUnknown,
    /// <summary>A telephone number that is not one.</summary>
    PhoneNotOne,
    /// <summary>Telephone numbers kept as numbers, which have lost a leading 0.</summary>
    PhoneLostZero,
    /// <summary>An e-mail address that is not one.</summary>
    EmailNotOne,
    /// <summary>A line that looks like a total.</summary>
    TotalsLine,
    /// <summary>Perhaps a person who is already known.</summary>
    PerhapsKnown,
    /// <summary>Already here, with another value.</summary>
    Differs,
    /// <summary>A sign in the register that is not known, or means different things in different clubs.</summary>
    SignUnknown,
    /// <summary>What a blank means in this register.</summary>
    BlankMeaning,
    /// <summary>The year of the register's dates.</summary>
    YearMissing,
    /// <summary>A date of the register without any mark.</summary>
    DateWithoutMarks,
    /// <summary>A date of the register that is still to come but has marks.</summary>
    DateToCome,
    /// <summary>Two columns for one date.</summary>
    DateTwice,
    /// <summary>A name in the register that nobody known has, or that several have.</summary>
    WhoIsIt,
    /// <summary>Two lines for one child in the register.</summary>
    LineTwice,
    /// <summary>Where a rank stands in a new ladder, for a rank whose words show neither a colour nor a number.</summary>
    RankPlace,
    /// <summary>The hours of lessons on a day of the week on which the programme has none.</summary>
    HoursMissing,
    /// <summary>Nothing in the file can be read as what was asked for.</summary>
    NothingFound,
    /// <summary>A heading of a sign-off grid that is no item, or may be several.</summary>
    WhichItem,
    /// <summary>Ticks of a sign-off grid that have no date.</summary>
    TickWithoutDate,
    /// <summary>What a tick of a sign-off grid is worth.</summary>
    TickWorth,
    /// <summary>A date of a sign-off grid on which no lesson was held.</summary>
    NoLessonThatDay,
}

/// <summary>One answer that may be given.</summary>
/// <param name="Code">What to hand back as the answer.</param>
/// <param name="Words">What the button says.</param>
public sealed record Offer(string Code, string Words);

/// <summary>What may be typed as an answer besides the offers; handed back with "=" before it.</summary>
public enum TypedAnswer
{
    /// <summary>Nothing.</summary>
    None,
    /// <summary>A date, year-month-day.</summary>
    Date,
    /// <summary>A year of four digits.</summary>
    Year,
    /// <summary>Text: a name, a number.</summary>
    Text,
}

/// <summary>Something in the file that only a person can settle.</summary>
/// <param name="Key">Stays the same however often the file is read; answers are given by it.</param>
/// <param name="Kind">What kind of thing is not certain.</param>
/// <param name="Sentence">What, where, and what to do.</param>
/// <param name="Offers">The answers to choose from.</param>
/// <param name="Proposed">The code of the likely answer; null where nothing is likelier. Never taken by itself.</param>
/// <param name="Typed">What may be typed instead.</param>
/// <param name="Rows">The rows it speaks of, from 1; empty when it speaks of a whole column.</param>
/// <param name="Answer">The answer given, when it is one of those possible; null while it is open.</param>
public sealed record Doubt(
    string Key,
    DoubtKind Kind,
    string Sentence,
    IReadOnlyList<Offer> Offers,
    string? Proposed,
    TypedAnswer Typed,
    IReadOnlyList<int> Rows,
    string? Answer)
{
    /// <summary>An answer was given.</summary>
    public bool IsSettled => Answer is not null;
}
