namespace Keikocho.Core.Names;

/// <summary>How kana are written in Latin letters.</summary>
public enum RomajiSystem
{
    /// <summary>As judo books write: Hepburn without marks on long vowels, n before b, m and p, no apostrophe: Ko-uchi-gari, zenyo.</summary>
    Plain = 0,
    /// <summary>Hepburn of 1886: macrons, m before b, m and p, a hyphen after n before a vowel or y: shimpan, zen-yō.</summary>
    TraditionalHepburn = 1,
    /// <summary>Hepburn of 1908, as libraries use it: macrons, always n, an apostrophe before a vowel or y: shinpan, zen'yō.</summary>
    ModifiedHepburn = 2,
    /// <summary>Kunrei (ISO 3602): circumflexes, si ti tu hu zi: Nami-zyûzi-zime.</summary>
    Kunrei = 3,
    /// <summary>Hepburn, each kana by itself and no long vowel drawn together: oosotogari.</summary>
    Letters = 4,
}
