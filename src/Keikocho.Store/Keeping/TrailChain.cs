using System.Buffers.Binary;
using System.Security.Cryptography;
using Keikocho.Store.Engines;

namespace Keikocho.Store.Keeping;

/// <summary>The chain of the trail: each line's hash covers the line before.</summary>
public static class TrailChain
{
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
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(before);
        Span<byte> number = stackalloc byte[8];
        Append(row.Number, number, hash);
        Append(row.At.ToUnixTimeMilliseconds(), number, hash);
        Append((long)row.Kind, number, hash);
        Append(row.ById, hash);
        Append(row.DeviceId, hash);
        Append(row.SubjectId, hash);
        hash.AppendData(row.Digest);
        return hash.GetHashAndReset();
    }

    private static void Append(long value, Span<byte> buffer, IncrementalHash hash)
    {
        BinaryPrimitives.WriteInt64BigEndian(buffer, value);
        hash.AppendData(buffer);
    }

    private static void Append(Guid? id, IncrementalHash hash) => hash.AppendData((id ?? Guid.Empty).ToByteArray(bigEndian: true));
}
