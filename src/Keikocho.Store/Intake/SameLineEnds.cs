namespace Keikocho.Store.Intake;

/// <summary>Reads text with every line end (\r\n, \r, \n) as \n, so that a file which mixes them is cut the same everywhere; drops zero characters.</summary>
internal sealed class SameLineEnds(TextReader inner) : TextReader
{
    private readonly char[] _buffer = new char[32 << 10];
    private bool _afterReturn;

    public override int Read(char[] buffer, int index, int count)
    {
        ArgumentNullException.ThrowIfNull(buffer);
        while (true)
        {
            var read = inner.Read(_buffer, 0, Math.Min(count, _buffer.Length));
            if (read == 0) return 0;
            var written = index;
            for (var i = 0; i < read; i++)
            {
                var letter = _buffer[i];
                var second = _afterReturn && letter == '\n';
                _afterReturn = letter == '\r';
                if (second || letter == '\0') continue;
                buffer[written++] = letter == '\r' ? '\n' : letter;
            }
            if (written > index) return written - index;
        }
    }

    public override int Read(Span<char> buffer)
    {
        var copy = new char[buffer.Length];
        var read = Read(copy, 0, copy.Length);
        copy.AsSpan(0, read).CopyTo(buffer);
        return read;
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing) inner.Dispose();
        base.Dispose(disposing);
    }
}
