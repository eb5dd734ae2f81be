namespace Keikocho.App.Shared;

/// <summary>What is said once, on the page after a post.</summary>
/// <param name="Title">What happened, in a few words: "Stored".</param>
/// <param name="Text">What to do or know next; empty if there is nothing.</param>
/// <param name="NeedsALook">Whether a person must look at it; then it stands in vermilion.</param>
public sealed record FlashMessage(string Title, string Text = "", bool NeedsALook = false);
