using Keikocho.Store.Kernel;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Keikocho.Store.Engines;

/// <summary>How base types lie in the columns.</summary>
internal static class Conversions
{
    /// <summary>Instants are UTC milliseconds and times of day are minutes: whole numbers that order and compare alike on both engines.</summary>
    public static void UseOnBothEngines(ModelConfigurationBuilder configuration)
    {
        configuration.Properties<DateTimeOffset>().HaveConversion<InstantAsMilliseconds>();
        configuration.Properties<TimeOnly>().HaveConversion<TimeAsMinutes>();
        configuration.Properties<Sealed<string>>().HaveConversion<SealedAsBytes<string>, SealedComparer<string>>();
        configuration.Properties<Sealed<DateOnly>>().HaveConversion<SealedAsBytes<DateOnly>, SealedComparer<DateOnly>>();
        configuration.Properties<Sealed<int>>().HaveConversion<SealedAsBytes<int>, SealedComparer<int>>();
        configuration.Properties<Sealed<byte[]>>().HaveConversion<SealedAsBytes<byte[]>, SealedComparer<byte[]>>();
    }

    /// <summary>SQLite keeps ids as 16 bytes in the order of their text, so that an export, a browser and the file agree.</summary>
    public static void UseOnSqlite(ModelConfigurationBuilder configuration) =>
        configuration.Properties<Guid>().HaveConversion<GuidAsBytes>();

    internal sealed class InstantAsMilliseconds() : ValueConverter<DateTimeOffset, long>(
        instant => instant.ToUnixTimeMilliseconds(),
        milliseconds => DateTimeOffset.FromUnixTimeMilliseconds(milliseconds));

    internal sealed class TimeAsMinutes() : ValueConverter<TimeOnly, short>(
        time => (short)(time.Hour * 60 + time.Minute),
        minutes => new TimeOnly(minutes / 60, minutes % 60));

    internal sealed class GuidAsBytes() : ValueConverter<Guid, byte[]>(
        id => id.ToByteArray(true),
        bytes => new Guid(bytes, true));

    internal sealed class SealedAsBytes<T>() : ValueConverter<Sealed<T>, byte[]>(
        value => value.Bytes,
        bytes => new Sealed<T>(bytes));

    internal sealed class SealedComparer<T>() : ValueComparer<Sealed<T>>(
        (left, right) => left.Equals(right),
        value => value.GetHashCode(),
        value => value);
}
