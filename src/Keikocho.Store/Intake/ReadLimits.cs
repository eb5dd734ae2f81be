namespace Keikocho.Store.Intake;

/// <summary>How much of a file is read before it is refused. Ours, no source; each is far above what a club of 2,000 children keeps.</summary>
/// <param name="FileBytes">Size of the file. Proposed 64 MB, 1 MB to 512 MB.</param>
/// <param name="InflatedBytes">Size of all parts of a workbook after inflating, counted while they are inflated. Proposed 256 MB.</param>
/// <param name="InflatedRatio">Most bytes that one stored byte of a workbook part over 1 MB may become. Proposed 200: sheets of repeated cells reach about 50.</param>
/// <param name="Entries">Parts of a workbook. Proposed 2,000.</param>
/// <param name="Rows">Rows that hold something, all sheets together. Proposed 100,000.</param>
/// <param name="Columns">Columns of a sheet. Proposed 2,000.</param>
/// <param name="Cells">Cells that hold something, all sheets together. Proposed 1,000,000.</param>
/// <param name="CellCharacters">Characters in one cell. Proposed 32,767, the most a workbook's cell holds.</param>
/// <param name="Sheets">Sheets of a workbook. Proposed 100.</param>
public sealed record ReadLimits(
    long FileBytes = 64L << 20,
    long InflatedBytes = 256L << 20,
    int InflatedRatio = 200,
    int Entries = 2_000,
    int Rows = 100_000,
    int Columns = 2_000,
    int Cells = 1_000_000,
    int CellCharacters = 32_767,
    int Sheets = 100)
{
    /// <summary>The proposed limits.</summary>
    public static ReadLimits Proposed { get; } = new();
}
