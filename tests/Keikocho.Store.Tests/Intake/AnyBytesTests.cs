using CsCheck;
using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;
using Keikocho.Store.Intake;

namespace Keikocho.Store.Tests.Intake;

public sealed class AnyBytesTests
{
    private static readonly byte[][] Whole = [.. new[] { "accents.xlsx", "cells.xlsx", "messy-register.xlsx", "accents-semicolon-1252.csv", "messy-register-utf16.csv" }.Select(name => File.ReadAllBytes(IntakeFiles.PathOf(name)))];

    private static readonly string[] Parts = ["a", "Name", ";", ",", "\t", "\"", "\n", "\r\n", "1/2/2015", "x", "✓", "17:50", "Total", "=", "born", "é", "\0"];

    [Fact]
    public void Any_bytes_are_read_or_refused() => Gen.Byte.Array[0, 3000].Sample(bytes => Accounted(bytes), iter: 600);

    [Fact]
    public void Any_text_is_read_or_refused()
        => Gen.Int[0, Parts.Length - 1].Select(i => Parts[i]).List[0, 300]
            .Sample(parts => Accounted(System.Text.Encoding.UTF8.GetBytes(string.Concat(parts))), iter: 600);

    [Fact]
    public void A_file_with_some_bytes_changed_is_read_or_refused()
        => Gen.Select(Gen.Int[0, 4], Gen.Select(Gen.Int[0, 1 << 20], Gen.Byte).Array[1, 40]).Sample((which, changes) =>
        {
            var bytes = (byte[])Whole[which].Clone();
            foreach (var (at, to) in changes) bytes[at % bytes.Length] = to;
            return Accounted(bytes);
        }, iter: 250);

    // Never throws; what is read is accounted for, cell by cell, by both readings.
    private static bool Accounted(byte[] bytes)
    {
        if (IntakeFiles.Read(bytes, "any") is not TableReading.Read read) return true;
        foreach (var sheet in read.Sheets)
        {
            var roster = ReadRoster.Read(IntakeFiles.Roster(sheet));
            var register = ReadRegister.Read(new(sheet, IntakeFiles.Today, [], new Dictionary<(PersonId, DateOnly), RegisterSays>(), ErasedPersons.None, Answers.None));
            if (ReadingCheck.Faults(sheet, roster).Count + ReadingCheck.Faults(sheet, register).Count > 0) return false;
        }
        return true;
    }
}
