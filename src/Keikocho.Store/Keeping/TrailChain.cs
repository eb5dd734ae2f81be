using System.Buffers.Binary;
using System.Security.Cryptography;
using Keikocho.Store.Engines;

namespace Keikocho.Store.Keeping;

/// <summary>The chain of the trail: each line's hash covers the line before.</summary>
public static class TrailChain
{
    private const int IdLength = 16;

    /// <summary>Adds the next line inside the session's transaction.</summary>
    public static void Add(WriteSession session, TrailKind kind, Guid? subject, Guid? by, Guid? device, ReadOnlySpan<byte> said)
    {
        ArgumentNullException.ThrowIfNull(session);
        var db = session.Db;
        db.SaveChanges();
        var last = db.Trail.OrderByDescending(t => t.Number).Select(t => new { t.Number, t.Hash }).FirstOrDefault();
        byte[] digest = [];
        if (!said.IsEmpty) digest = HMACSHA256.HashData(db.Clubs.Select(c => c.Salt).Single(), said);
        var row = new TrailRow
        {
            Club = session.Club,
            Number = (last?.Number ?? 0) + 1,
            At = session.Now,
            ById = by,
            DeviceId = device,
            Kind = kind,
            SubjectId = subject,
            Digest = digest,
        };
        row.Hash = HashOf(row, last?.Hash ?? []);
        db.Trail.Add(row);
        db.SaveChanges();
    }

    /// <summary>The hash that a line must have after the line before it.</summary>
    public static byte[] HashOf(TrailRow row, ReadOnlySpan<byte> before)
    {
        ArgumentNullException.ThrowIfNull(row);
        var length = before.Length + 3 * sizeof(long) + 3 * IdLength + row.Digest.Length;
        Span<byte> line = length <= 256 ? stackalloc byte[length] : new byte[length];
        var rest = line;
        Put(before, ref rest);
        Put(row.Number, ref rest);
        Put(row.At.ToUnixTimeMilliseconds(), ref rest);
        Put((long)row.Kind, ref rest);
        Put(row.ById, ref rest);
        Put(row.DeviceId, ref rest);
        Put(row.SubjectId, ref rest);
        Put(row.Digest, ref rest);
        return SHA256.HashData(line);
    }

    private static void Put(long value, ref Span<byte> rest)
    {
        BinaryPrimitives.WriteInt64BigEndian(rest, value);
        rest = rest[sizeof(long)..];
    }

    private static void Put(Guid? id, ref Span<byte> rest)
    {
        (id ?? Guid.Empty).TryWriteBytes(rest, bigEndian: true, out _);
        rest = rest[IdLength..];
    }

    private static void Put(ReadOnlySpan<byte> bytes, ref Span<byte> rest)
    {
        bytes.CopyTo(rest);
        rest = rest[bytes.Length..];
    }
}
