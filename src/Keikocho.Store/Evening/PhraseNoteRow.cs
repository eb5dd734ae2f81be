using Keikocho.Store.Kernel;

namespace Keikocho.Store.Evening;

/// <summary>
/// A note on a child by a ready phrase, made on the mat. It holds codes only, it has an end, and after its end it is erased; its id is the
/// one that the tablet made, so that it is stored once.
/// </summary>
public sealed class PhraseNoteRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>The lesson.</summary>
    public Guid LessonId { get; set; }
    /// <summary>Key of the phrase.</summary>
    public string Phrase { get; set; } = "";
    /// <summary>Who made it.</summary>
    public Guid ById { get; set; }
    /// <summary>Where.</summary>
    public Guid DeviceId { get; set; }
    /// <summary>When, by the tablet's clock.</summary>
    public DateTimeOffset MadeAt { get; set; }
    /// <summary>When the laptop had it.</summary>
    public DateTimeOffset ReceivedAt { get; set; }
    /// <summary>Last day on which it stands: that of the term.</summary>
    public DateOnly Until { get; set; }
    /// <summary>When it was taken back; null while it holds.</summary>
    public DateTimeOffset? TakenBackAt { get; set; }
    /// <summary>By whom.</summary>
    public Guid? TakenBackById { get; set; }
}
