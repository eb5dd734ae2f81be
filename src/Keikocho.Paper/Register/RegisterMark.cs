namespace Keikocho.Paper.Register;

/// <summary>What the register says of one child.</summary>
public enum RegisterWord
{
    /// <summary>Nobody has marked the child.</summary>
    NotMarked = 0,

    /// <summary>Here.</summary>
    Present = 1,

    /// <summary>Was here and went before the end.</summary>
    Left = 2,

    /// <summary>Did not come, told us.</summary>
    ToldUs = 3,

    /// <summary>Did not come, nobody told us.</summary>
    Absent = 4,
}

/// <summary>The mark of one child at one lesson, as the register shows it.</summary>
public sealed record RegisterMark
{
    private RegisterMark(RegisterWord word, bool late, TimeOnly? came, TimeOnly? left)
    {
        Word = word;
        Late = late;
        Came = came;
        LeftAt = left;
    }

    /// <summary>Present, left, told us, absent or not marked.</summary>
    public RegisterWord Word { get; }

    /// <summary>Came after the register was taken.</summary>
    public bool Late { get; }

    /// <summary>When a late child came; null when on time or when nobody noted it.</summary>
    public TimeOnly? Came { get; }

    /// <summary>When a child left; null when it stayed or when nobody noted it.</summary>
    public TimeOnly? LeftAt { get; }

    /// <summary>Nobody has marked the child.</summary>
    public static RegisterMark NotMarked { get; } = new(RegisterWord.NotMarked, false, null, null);

    /// <summary>Here, on time.</summary>
    public static RegisterMark Present { get; } = new(RegisterWord.Present, false, null, null);

    /// <summary>Did not come, told us.</summary>
    public static RegisterMark ToldUs { get; } = new(RegisterWord.ToldUs, false, null, null);

    /// <summary>Did not come, nobody told us.</summary>
    public static RegisterMark Absent { get; } = new(RegisterWord.Absent, false, null, null);

    /// <summary>Here, late. The time is null when nobody noted it.</summary>
    public static RegisterMark CameLate(TimeOnly? at) => new(RegisterWord.Present, true, at, null);

    /// <summary>Went before the end. Either time is null when nobody noted it.</summary>
    /// <param name="at">When the child left.</param>
    /// <param name="late">True when it had also come late.</param>
    /// <param name="came">When it came; only with <paramref name="late"/>, and not after <paramref name="at"/>.</param>
    public static RegisterMark Left(TimeOnly? at, bool late = false, TimeOnly? came = null)
    {
        if (came is not null && !late)
            throw new ArgumentException("A time of coming is given only for a child who came late.", nameof(came));
        if (came > at)
            throw new ArgumentException("The child left before it came.", nameof(came));
        return new(RegisterWord.Left, late, came, at);
    }
}
