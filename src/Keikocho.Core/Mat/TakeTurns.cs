namespace Keikocho.Core.Mat;

/// <summary>Who rests when there is not room for all: a fixed rotation in register order, the same for everybody.</summary>
internal static class TakeTurns
{
    /// <summary>
    /// The waves until everybody has rested equally often; empty where all have room. The first wave rests the last pairs of the
    /// register, the next those after them round the list, so that nobody rests twice running where at most half must rest.
    /// </summary>
    public static IReadOnlyList<MatWave> Of(int pairs, int room)
    {
        if (pairs <= room || room == 0) return [];
        var off = pairs - room;
        var number = pairs / (int)Gcd(pairs, off);
        var cells = Enumerable.Range(0, room).ToArray();
        var waves = new List<MatWave>();
        for (var wave = 0; wave < number; wave++)
        {
            var start = ((long)wave * off + room) % pairs;
            var resting = Enumerable.Range(0, off).Select(i => (int)((start + i) % pairs)).ToHashSet();
            if (wave > 0)
            {
                // Who stays on stays where it is; who comes on takes the room of one who goes off.
                var coming = new Queue<int>(Enumerable.Range(0, pairs).Where(p => !resting.Contains(p) && !cells.Contains(p)));
                for (var i = 0; i < room; i++)
                {
                    if (resting.Contains(cells[i])) cells[i] = coming.Dequeue();
                }
            }

            waves.Add(new MatWave(wave + 1, [.. resting.Order().Select(p => p + 1)], [.. cells.Select(p => p + 1)]));
        }

        return waves;
    }

    private static long Gcd(long a, long b) => b == 0 ? a : Gcd(b, a % b);
}
