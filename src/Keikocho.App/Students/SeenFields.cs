namespace Keikocho.App.Students;

/// <summary>What the forms about falls, sightings, stand-downs and agreed ways on one child's page send; each sends a few of these.</summary>
public sealed class SeenFields
{
    /// <summary>Which form, for the one that comes back.</summary>
    public string? Form { get; set; }
    /// <summary>The programme whose page it stands on.</summary>
    public Guid? Programme { get; set; }
    /// <summary>Made with the form; the same form again changes nothing.</summary>
    public Guid? Command { get; set; }

    /// <summary>Evening of a fall.</summary>
    public string? FallLesson { get; set; }
    /// <summary>Which way.</summary>
    public string? Way { get; set; }
    /// <summary>Which stage.</summary>
    public string? Stage { get; set; }
    /// <summary>"clean" or "touched".</summary>
    public string? Outcome { get; set; }

    /// <summary>Evening of a sighting.</summary>
    public string? SeenLesson { get; set; }
    /// <summary>Key of the item.</summary>
    public string? Item { get; set; }
    /// <summary>"good", "prompted", "not-yet".</summary>
    public string? Word { get; set; }

    /// <summary>The mark that is confirmed or put right; "all" confirms all that the page showed.</summary>
    public string? Mark { get; set; }
    /// <summary>What a mark is to say instead; "nothing" takes it back.</summary>
    public string? To { get; set; }
    /// <summary>The marks that the page showed as suggestions.</summary>
    public Guid[]? Shown { get; set; }

    /// <summary>"no-falls", "no-contact", "off-the-mat", "spare-the-neck".</summary>
    public string? Scope { get; set; }
    /// <summary>First day.</summary>
    public string? StandFrom { get; set; }
    /// <summary>Review day.</summary>
    public string? ReviewOn { get; set; }
    /// <summary>Whose word lifts it.</summary>
    public string? WhoseWord { get; set; }

    /// <summary>The stand-down whose review day is moved.</summary>
    public string? MoveWhich { get; set; }
    /// <summary>The new review day.</summary>
    public string? MoveTo { get; set; }

    /// <summary>The stand-down that is lifted.</summary>
    public string? LiftWhich { get; set; }
    /// <summary>The adult who lifts it.</summary>
    public string? LiftBy { get; set; }
    /// <summary>The day.</summary>
    public string? LiftOn { get; set; }
    /// <summary>The reason.</summary>
    public string? LiftWhy { get; set; }

    /// <summary>Key of the item that is shown in another way.</summary>
    public string? WayItem { get; set; }
    /// <summary>How it is shown; empty for the usual way again.</summary>
    public string? Wording { get; set; }
}
