using System.Text;

namespace Keikocho.Store.Intake;

/// <summary>Reads a club's file into sheets of cells.</summary>
/// <remarks>
/// What a file is, its content says; the name is only used in sentences. The file is held once: a stream that can seek is read where it
/// lies, another is copied once into memory, up to the limit. Nothing is written to disk.
/// </remarks>
public static class ReadTable
{
    /// <summary>The sheets of the file, or one sentence why not.</summary>
    /// <param name="file">The file; read from its beginning when it can seek. Left open.</param>
    /// <param name="fileName">Its name, for the sentences.</param>
    /// <param name="limits">How much is read before it is refused.</param>
    /// <param name="progress">Told the share done, 0 to 1, rising.</param>
    /// <param name="cancel">Stops the reading with <see cref="OperationCanceledException"/>.</param>
    public static TableReading Read(Stream file, string fileName, ReadLimits limits, IProgress<double>? progress, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(limits);
        if (!file.CanRead) throw new ArgumentException("The file must be readable.", nameof(file));
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        var name = Path.GetFileName(fileName.Replace('\\', '/'));
        try
        {
            using var copy = file.CanSeek ? null : Copy(file, name, limits, cancel);
            var source = copy ?? file;
            source.Position = 0;
            if (source.Length > limits.FileBytes)
                throw new RefusedException($"'{name}' has {source.Length >> 20} MB, more than the {limits.FileBytes >> 20} MB that are read; save the sheet of the children alone and read that.");
            var start = new byte[(int)Math.Min(source.Length, 4096)];
            source.ReadExactly(start);
            var kind = FileKind.Of(start, name);
            source.Position = 0;
            var reading = kind == FileKind.Kind.Zip
                ? Workbook.Read(source, name, limits, progress, cancel)
                : DelimitedText.Read(source, name, limits, progress, cancel);
            progress?.Report(1);
            return reading;
        }
        catch (RefusedException refused)
        {
            return new TableReading.Refused(refused.Message);
        }
    }

    private static MemoryStream Copy(Stream file, string name, ReadLimits limits, CancellationToken cancel)
    {
        var copy = new MemoryStream();
        var buffer = new byte[81_920];
        for (int read; (read = file.Read(buffer, 0, buffer.Length)) > 0;)
        {
            cancel.ThrowIfCancellationRequested();
            if (copy.Length + read > limits.FileBytes)
            {
                copy.Dispose();
                throw new RefusedException($"'{name}' has more than the {limits.FileBytes >> 20} MB that are read; save the sheet of the children alone and read that.");
            }
            copy.Write(buffer, 0, read);
        }
        return copy;
    }
}
