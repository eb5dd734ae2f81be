using Keikocho.App.Club;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Syllabus;
using Microsoft.AspNetCore.Components;

namespace Keikocho.App.Syllabus.Draft;

/// <summary>A part of a draft's pages: what the draft says, or what was typed where a form came back.</summary>
public abstract class DraftPart : ComponentBase
{
    /// <summary>The club.</summary>
    [Inject] protected OpenClub Club { get; set; } = default!;

    /// <summary>The draft.</summary>
    [Parameter, EditorRequired] public required DraftDesk Desk { get; set; }

    /// <summary>The form that came back; null when none did.</summary>
    [Parameter] public RefusedForm? Refused { get; set; }

    /// <summary>The draft itself.</summary>
    protected Edition Edition => Desk.Edition;

    /// <summary>Words of what is asked.</summary>
    protected AskWords Words { get; private set; } = default!;

    /// <inheritdoc/>
    protected override void OnParametersSet() => Words = new AskWords(Desk.Edition);

    /// <summary>What stands in a field: what was typed, else what is stored.</summary>
    protected string? Now(string id, string? stored = null) => Refused?.Typed.GetValueOrDefault(id) ?? stored;

    /// <summary>A number as it stands in a field; nothing for none.</summary>
    protected string? Now(string id, int? stored) => Now(id, stored?.ToString(System.Globalization.CultureInfo.InvariantCulture));

    /// <summary>Whether a box is ticked.</summary>
    protected bool Ticked(string id, bool stored = false) => Refused is null ? stored : Refused.Typed.ContainsKey(id);

    /// <summary>What is wrong with a field.</summary>
    protected string? Error(string id) => Refused?.Errors.ErrorOf(id);

    /// <summary>Whether an answer of the fields that begin so needs a look.</summary>
    protected bool NeedsALook(string beginning) => Refused?.Errors.Any(e => e.Control.StartsWith(beginning, StringComparison.Ordinal)) ?? false;
}
