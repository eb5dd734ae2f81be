using System.Security.Cryptography;

namespace Keikocho.Store.Keeping.OpenArchive;

/// <summary>Passes what is written on and hashes it on the way.</summary>
internal sealed class HashingStream(Stream to) : Stream
{
    private readonly IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);

    /// <summary>SHA-256 of everything written so far, in lower-case hexadecimal.</summary>
    public string Sha256 => Convert.ToHexStringLower(hash.GetCurrentHash());

    public override bool CanRead => false;
    public override bool CanSeek => false;
    public override bool CanWrite => true;
    public override long Length => throw new NotSupportedException();
    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        hash.AppendData(buffer);
        to.Write(buffer);
    }

    public override void Flush() => to.Flush();
    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
    public override void SetLength(long value) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            hash.Dispose();
            to.Dispose();
        }

        base.Dispose(disposing);
    }
}
