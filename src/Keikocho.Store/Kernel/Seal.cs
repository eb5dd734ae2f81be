using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using Keikocho.Store.Sealing;

namespace Keikocho.Store.Kernel;

/// <summary>
/// The one place where personal values are closed and opened. The first byte says how: 0 is plain, for a club without a passphrase.
/// 1 is closed by the club's lock, for one row of one child: sizes and care notes have no other form.
/// </summary>
public static class Seal
{
    private const byte Plain = 0, ByLock = 1;

    /// <summary>Refuses bytes that are no text instead of showing them as something else.</summary>
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Closes a text.</summary>
    public static Sealed<string> Close(string value)
    {
        ArgumentNullException.ThrowIfNull(value);
        var bytes = new byte[1 + Encoding.UTF8.GetByteCount(value)];
        bytes[0] = Plain;
        Encoding.UTF8.GetBytes(value, bytes.AsSpan(1));
        return new Sealed<string>(bytes);
    }

    /// <summary>Closes a text that may be missing; empty or blank text is missing.</summary>
    public static Sealed<string>? CloseIfAny(string? value) => string.IsNullOrWhiteSpace(value) ? null : Close(value.Trim());

    /// <summary>Closes a date.</summary>
    public static Sealed<DateOnly> Close(DateOnly value)
    {
        var text = Close(value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        return new Sealed<DateOnly>(text.Bytes);
    }

    /// <summary>Closes a whole number by the club's lock, such as grams.</summary>
    /// <exception cref="ObjectDisposedException">The lock was shut in the meantime.</exception>
    public static Sealed<int> Close(int value, OpenedLock key, SealedAbout about)
    {
        ArgumentNullException.ThrowIfNull(key);
        Span<byte> four = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(four, value);
        return new Sealed<int>([ByLock, .. key.Close(four, about)]);
    }

    /// <summary>Opens a whole number that the club's lock closed; null where it was closed by another key, for another row, or not by a lock.</summary>
    /// <exception cref="ObjectDisposedException">The lock was shut in the meantime.</exception>
    public static int? Open(Sealed<int> value, OpenedLock key, SealedAbout about)
    {
        ArgumentNullException.ThrowIfNull(key);
        return IsByLock(value.Bytes) && key.Open(value.Bytes.AsSpan(1), about) is { Length: 4 } four ? BinaryPrimitives.ReadInt32BigEndian(four) : null;
    }

    /// <summary>Closes a text by the club's lock, such as a care note.</summary>
    /// <exception cref="ObjectDisposedException">The lock was shut in the meantime.</exception>
    public static Sealed<string> Close(string value, OpenedLock key, SealedAbout about)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(key);
        return new Sealed<string>([ByLock, .. key.Close(Strict.GetBytes(value), about)]);
    }

    /// <summary>Opens a text that the club's lock closed; null where it was closed by another key, for another row, or not by a lock.</summary>
    /// <exception cref="ObjectDisposedException">The lock was shut in the meantime.</exception>
    public static string? Open(Sealed<string> value, OpenedLock key, SealedAbout about)
    {
        ArgumentNullException.ThrowIfNull(key);
        return IsByLock(value.Bytes) && key.Open(value.Bytes.AsSpan(1), about) is { } text ? Strict.GetString(text) : null;
    }

    /// <summary>Whether sealed bytes need the club's lock: an archive carries them as they are.</summary>
    internal static bool IsByLock(ReadOnlySpan<byte> bytes) => bytes is [ByLock, ..];

    /// <summary>Closes a whole number, such as grams.</summary>
    public static Sealed<int> Close(int value)
    {
        var bytes = new byte[5];
        BinaryPrimitives.WriteInt32BigEndian(bytes.AsSpan(1), value);
        return new Sealed<int>(bytes);
    }

    /// <summary>Closes bytes, such as a file that was read in.</summary>
    public static Sealed<byte[]> Close(byte[] value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return new Sealed<byte[]>([Plain, .. value]);
    }

    /// <summary>Opens a text.</summary>
    /// <exception cref="InvalidDataException">The bytes are not a text of a form that this version knows.</exception>
    public static string Open(Sealed<string> value)
    {
        try
        {
            return Strict.GetString(Inside(value.Bytes));
        }
        catch (DecoderFallbackException cause)
        {
            throw new InvalidDataException("A sealed text is damaged. Run the check command on this file.", cause);
        }
    }

    /// <summary>Opens a text that may be missing.</summary>
    public static string? Open(Sealed<string>? value) => value is { } some ? Open(some) : null;

    /// <summary>Opens a date.</summary>
    /// <exception cref="InvalidDataException">The bytes are not a date of a form that this version knows.</exception>
    public static DateOnly Open(Sealed<DateOnly> value) =>
        DateOnly.TryParseExact(Encoding.UTF8.GetString(Inside(value.Bytes)), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            ? day
            : throw new InvalidDataException("A sealed date is damaged. Run the check command on this file.");

    /// <summary>Opens a date that may be missing.</summary>
    public static DateOnly? Open(Sealed<DateOnly>? value) => value is { } some ? Open(some) : null;

    /// <summary>Opens a whole number.</summary>
    /// <exception cref="InvalidDataException">The bytes are not a number of a form that this version knows.</exception>
    public static int Open(Sealed<int> value) => Inside(value.Bytes) is { Length: 4 } four
        ? BinaryPrimitives.ReadInt32BigEndian(four)
        : throw new InvalidDataException("A sealed number is damaged. Run the check command on this file.");

    /// <summary>Opens bytes.</summary>
    public static byte[] Open(Sealed<byte[]> value) => Inside(value.Bytes).ToArray();

    private static ReadOnlySpan<byte> Inside(byte[] bytes) => bytes.Length == 0
        ? throw new InvalidDataException("A sealed value is empty. Run the check command on this file.")
        : bytes[0] == Plain
            ? bytes.AsSpan(1)
            : throw new InvalidDataException(bytes[0] == ByLock
                ? "A sealed value is closed by the club's lock and does not open without it."
                : $"A sealed value has form {bytes[0]}, which this version cannot open. Use a newer version.");
}
