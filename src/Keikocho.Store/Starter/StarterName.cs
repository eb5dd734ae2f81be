using Keikocho.Core.Names;

namespace Keikocho.Store.Starter;

/// <summary>A name of the starter library.</summary>
/// <param name="Known">The name as it is found; its class is the subclass of the list: te-waza, osaekomi-waza.</param>
/// <param name="Listed">True for the 100 names of the Kodokan's list.</param>
/// <param name="Class">nage-waza or katame-waza.</param>
/// <param name="Subclass">te-waza, koshi-waza ... kansetsu-waza.</param>
/// <param name="Source">For each part whether it was read or is from memory.</param>
public sealed record StarterName(KnownName Known, bool Listed, string Class, string Subclass, string Source);
