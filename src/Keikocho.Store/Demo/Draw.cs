namespace Keikocho.Store.Demo;

/// <summary>
/// A small seeded generator (SplitMix64: Steele, Lea and Flood, "Fast splittable pseudorandom number generators", 2014). One is made
/// for each question, from the seed and what the question is about, so that an answer never depends on which others were asked before.
/// </summary>
internal struct Draw
{
    private const ulong Step = 0x9E3779B97F4A7C15;
    private ulong state;

    private Draw(ulong state) => this.state = state;

    /// <summary>The generator of one question.</summary>
    public static Draw About(int seed, DemoPart part, int first = 0, int second = 0)
    {
        var draw = new Draw((uint)seed);
        draw.state = draw.Next() ^ (uint)part;
        draw.state = draw.Next() ^ (uint)first;
        draw.state = draw.Next() ^ (uint)second;
        return draw;
    }

    /// <summary>64 bits.</summary>
    public ulong Next()
    {
        unchecked
        {
            state += Step;
            var z = state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }

    /// <summary>A whole number from 0 to one below <paramref name="count"/>.</summary>
    public int Below(int count) => (int)Math.BigMul(Next(), (ulong)count, out _);

    /// <summary>A whole number between both ends, inclusive.</summary>
    public int Between(int from, int to) => from + Below(to - from + 1);

    /// <summary>True in <paramref name="perMille"/> of 1000 cases.</summary>
    public bool Chance(int perMille) => Below(1000) < perMille;
}

/// <summary>What a draw or an id is about; the numbers are part of what a seed means.</summary>
internal enum DemoPart
{
    Club = 1, Hall, Device, Person, Family, Contact, Registration, Consent, Duty, KeepApart, Programme, WeeklyHour, Term, Closure, Evening,
    Lesson, Test, Enrolment, Crossing, Mark, TabletMark, Ladder, Rank, Award, Salt, Attendance, Promotion, Birth, Name, Joining, Papers,
    Edition, Item, AgeRule, StandDown, AgreedWay, Overrule, Progress, Seen, Falls, Actor,
    Knock, KnockLine, Showing, Together, KeepTogether, Obstacle, NearMiss,
}
