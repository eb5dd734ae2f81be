using Keikocho.App.Shared.Parts;
using Microsoft.AspNetCore.Components;

namespace Keikocho.App.Club;

/// <summary>A part of the club's page: what is stored, or what was typed where a form came back.</summary>
public abstract class ClubPart : ComponentBase
{
    /// <summary>The club.</summary>
    [Inject] protected OpenClub Club { get; set; } = default!;

    /// <summary>The form that came back; null when none did.</summary>
    [CascadingParameter] protected RefusedForm? Refused { get; set; }

    /// <summary>The entry of a long list whose form was asked for, by what its fields begin with; null when none was.</summary>
    [CascadingParameter(Name = ClubPage.AskedEntry)] protected string? Asked { get; set; }

    /// <summary>What stands in a field: what was typed, else what is stored.</summary>
    protected string? Now(string id, string? stored = null) => Refused?.Typed.GetValueOrDefault(id) ?? stored;

    /// <summary>What is wrong with a field.</summary>
    protected string? Error(string id) => Refused?.Errors.ErrorOf(id);

    /// <summary>Whether an answer of the fields that begin so needs a look.</summary>
    protected bool NeedsALook(string beginning) => Refused?.Errors.Any(e => e.Control.StartsWith(beginning, StringComparison.Ordinal)) ?? false;

    /// <summary>The programmes as the options of a choice.</summary>
    protected IReadOnlyList<(string Value, string Words)> Programmes =>
        [.. Club.Book.Programmes.Select(p => (p.Id.ToString("D"), p.Name))];
}
