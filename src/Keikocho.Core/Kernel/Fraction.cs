using System.Globalization;

namespace Keikocho.Core.Kernel;

/// <summary>An exact fraction in lowest terms, for sums that a rounding error would turn by one adult.</summary>
public readonly record struct Fraction
{
    private readonly long denominator;

    /// <summary>A fraction, brought to lowest terms.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The denominator is not above 0.</exception>
    public Fraction(long numerator, long denominator)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(denominator);
        var common = Gcd(Math.Abs(numerator), denominator);
        Numerator = numerator / common;
        this.denominator = denominator / common;
    }

    /// <summary>Above the line.</summary>
    public long Numerator { get; }

    /// <summary>Below the line, above 0.</summary>
    public long Denominator => denominator == 0 ? 1 : denominator;

    /// <summary>The smallest whole number that is not below this.</summary>
    public long Ceiling => Numerator > 0 ? ((Numerator - 1) / Denominator) + 1 : Numerator / Denominator;

    /// <summary>The exact sum.</summary>
    /// <exception cref="OverflowException">The sum does not fit.</exception>
    public static Fraction operator +(Fraction a, Fraction b) => Add(a, b);

    /// <summary>The exact sum.</summary>
    /// <exception cref="OverflowException">The sum does not fit.</exception>
    public static Fraction Add(Fraction a, Fraction b)
    {
        var common = Gcd(a.Denominator, b.Denominator);
        return new Fraction(
            (a.Numerator * (b.Denominator / common)) + (b.Numerator * (a.Denominator / common)),
            a.Denominator / common * b.Denominator);
    }

    /// <summary>"83/24", or "4" where it is whole.</summary>
    public override string ToString() => Denominator == 1
        ? Numerator.ToString(CultureInfo.InvariantCulture)
        : $"{Numerator.ToString(CultureInfo.InvariantCulture)}/{Denominator.ToString(CultureInfo.InvariantCulture)}";

    private static long Gcd(long a, long b) => b == 0 ? a : Gcd(b, a % b);
}
