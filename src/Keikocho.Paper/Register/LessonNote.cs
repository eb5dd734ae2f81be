namespace Keikocho.Paper.Register;

/// <summary>Where a child stands on its own clock: lesson n of m of the first course, or trial n of m.</summary>
public sealed record LessonNote
{
    private LessonNote(bool trial, int number, int of)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(of, 1);
        Trial = trial;
        Number = number;
        Of = of;
    }

    /// <summary>A trial lesson, or a lesson of the first course.</summary>
    public bool Trial { get; }

    /// <summary>Which lesson this is for the child, from 1; may pass <see cref="Of"/>.</summary>
    public int Number { get; }

    /// <summary>How many there are, from 1.</summary>
    public int Of { get; }

    /// <summary>Lesson <paramref name="number"/> of <paramref name="of"/> in the first course.</summary>
    public static LessonNote FirstCourse(int number, int of) => new(false, number, of);

    /// <summary>Trial lesson <paramref name="number"/> of the <paramref name="of"/> allowed. Beyond them the register says that the form is needed.</summary>
    public static LessonNote TrialLesson(int number, int of) => new(true, number, of);

    /// <summary>True when the trial lessons are used up.</summary>
    public bool FormNeeded => Trial && Number > Of;
}
