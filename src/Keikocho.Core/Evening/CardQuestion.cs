using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Evening;

/// <summary>What a part of the lesson is for.</summary>
public enum CardPartKind
{
    /// <summary>Bow, register.</summary>
    Bow = 1,
    /// <summary>Warm-up and a game, everybody together.</summary>
    WarmUp = 2,
    /// <summary>Falls, always before the first slot.</summary>
    Falls = 3,
    /// <summary>One item of the card.</summary>
    Slot = 4,
    /// <summary>A small game at this end.</summary>
    Game = 5,
    /// <summary>Cool-down with words.</summary>
    Words = 6,
    /// <summary>Bow, notices.</summary>
    Close = 7,
}

/// <summary>A part of the lesson.</summary>
/// <param name="Kind">What it is for.</param>
/// <param name="Name">As the card says it.</param>
/// <param name="Minutes">Its length.</param>
/// <param name="Does">What is done.</param>
public sealed record CardPart(CardPartKind Kind, string Name, int Minutes, string Does);

/// <summary>Which card is made.</summary>
public enum CardPlan
{
    /// <summary>As usual.</summary>
    AsPlanned = 0,
    /// <summary>An adult is missing: nothing is thrown at this end.</summary>
    NoThrowing = 1,
    /// <summary>An adult is missing: both ends work together on one card, and nothing is thrown.</summary>
    EndsJoined = 2,
}

/// <summary>Where one child stands with one item.</summary>
public enum CardStanding
{
    /// <summary>Never shown to it.</summary>
    NeverShown = 0,
    /// <summary>Shown, not signed.</summary>
    NotSigned = 1,
    /// <summary>Signed, and not worked on in any of its last classes.</summary>
    Stale = 2,
    /// <summary>Signed and worked on of late.</summary>
    Fresh = 3,
}

/// <summary>Stages of one way at which a child may be thrown tonight.</summary>
/// <param name="Way">Which way.</param>
/// <param name="OpenStages">The stages whose gate is open; none when all are shut.</param>
public sealed record CardGate(FallWay Way, IReadOnlyList<int> OpenStages);

/// <summary>A child present at this end.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Name">As called.</param>
/// <param name="IsNewcomer">A newcomer.</param>
/// <param name="IsReturning">Back after an absence: its falls are seen again.</param>
/// <param name="LessonsToTest">Lessons left before its target test; null without one.</param>
/// <param name="MayFall">No stand-down forbids falls.</param>
/// <param name="MayHaveContact">No stand-down forbids contact.</param>
/// <param name="MayBeOnTheMat">No stand-down keeps it off the mat.</param>
/// <param name="SparesTheNeck">Nothing that loads the neck.</param>
/// <param name="Gates">Its fall gates; a way that is not here is shut.</param>
/// <param name="EveningsUnseen">Evenings attended since an adult marked something of it, tonight not counted.</param>
/// <param name="Asked">Words that it was asked before.</param>
public sealed record CardChild(
    string Key,
    string Name,
    bool IsNewcomer = false,
    bool IsReturning = false,
    int? LessonsToTest = null,
    bool MayFall = true,
    bool MayHaveContact = true,
    bool MayBeOnTheMat = true,
    bool SparesTheNeck = false,
    IReadOnlyList<CardGate>? Gates = null,
    int EveningsUnseen = 0,
    IReadOnlyList<AskedBefore>? Asked = null);

/// <summary>An item of this end.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Name">As the card says it.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Standing">Where each child stands, by its key; a child that is not here was never shown it.</param>
/// <param name="ShownAgo">It was shown at this end so many lessons ago; 1 for the last lesson; empty for never.</param>
/// <param name="FirstDrill">What a first drill, low and slow, asks of uke; null where nobody is thrown.</param>
/// <param name="FreeDrill">What drilling it freely asks of uke; null where nobody is thrown.</param>
/// <param name="LoadsTheNeck">Never for a child whose neck is spared.</param>
/// <param name="Alternative">Name of what such a child does in its place; null for nothing.</param>
/// <param name="Planned">Its place in the term's plan for tonight, from 1; null where it is not planned.</param>
public sealed record CardItem(
    string Key,
    string Name,
    ItemKind Kind,
    IReadOnlyDictionary<string, CardStanding> Standing,
    IReadOnlyList<int> ShownAgo,
    PlannedThrow? FirstDrill = null,
    PlannedThrow? FreeDrill = null,
    bool LoadsTheNeck = false,
    string? Alternative = null,
    int? Planned = null)
{
    /// <summary>Somebody may be thrown in it.</summary>
    public bool IsThrown => FirstDrill is not null || FreeDrill is not null
        || Kind is ItemKind.Throw or ItemKind.Combination or ItemKind.Counter or ItemKind.FreePractice;
}

/// <summary>An adult or leader present.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Name">As called.</param>
/// <param name="MayLead">18 or over and counted among the adults: leads an end. Others hold a drill only.</param>
public sealed record CardAdult(string Key, string Name, bool MayLead);

/// <summary>How much contact a game has.</summary>
public enum GameContact
{
    /// <summary>None.</summary>
    None = 0,
    /// <summary>A touch, below the shoulders.</summary>
    Touch = 1,
    /// <summary>Holding and pushing, below the shoulders.</summary>
    Hold = 2,
}

/// <summary>A game.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LeastChildren">For at least so many.</param>
/// <param name="MostChildren">For at most so many.</param>
/// <param name="SquareMetresAChild">So much mat for each.</param>
/// <param name="Contact">How much contact.</param>
/// <param name="Falls">Somebody falls in it, low.</param>
/// <param name="Clears">Which skill it practises.</param>
public sealed record CardGame(string Name, int LeastChildren, int MostChildren, decimal SquareMetresAChild, GameContact Contact, bool Falls, string Clears);

/// <summary>Those who play: a warm-up is played by both ends.</summary>
/// <param name="Children">How many are present.</param>
/// <param name="SquareMetres">The mat that they have; null where it is not known.</param>
/// <param name="AnybodyStoodDown">A stand-down stands for one of them.</param>
public sealed record CardPlayers(int Children, decimal? SquareMetres, bool AnybodyStoodDown);

/// <summary>What was done in a slot already, or is chosen by hand.</summary>
/// <param name="Slot">Which slot, from 1.</param>
/// <param name="Item">Key of the item.</param>
public sealed record SlotTaken(int Slot, string Item);

/// <summary>The question: what one end does tonight.</summary>
/// <param name="End">Which end.</param>
/// <param name="Start">When the lesson begins.</param>
/// <param name="Parts">The parts of the lesson in order; falls stand before the first slot.</param>
/// <param name="Children">Those present at this end, in register order; both ends where they are joined.</param>
/// <param name="Items">The items of this end, in the order of the ladder.</param>
/// <param name="Words">The words of this end, in the order of the list.</param>
/// <param name="Adults">Adults and leaders for this end, the one who leads first.</param>
/// <param name="ShortBy">How many adults are missing in the hall.</param>
/// <param name="Plan">The plan that somebody chose; null lets the numbers decide.</param>
/// <param name="Games">Games to choose from.</param>
/// <param name="Together">Both ends, for the warm-up.</param>
/// <param name="Here">This end, for its own game.</param>
/// <param name="Taken">Slots that were done already.</param>
/// <param name="Rule">The rule of the card.</param>
/// <param name="LookAt">The rule of whom to look at.</param>
/// <param name="WordsDue">The rule of the words.</param>
public sealed record CardSnapshot(
    MatEnd End,
    TimeOnly Start,
    IReadOnlyList<CardPart> Parts,
    IReadOnlyList<CardChild> Children,
    IReadOnlyList<CardItem> Items,
    IReadOnlyList<DueWord> Words,
    IReadOnlyList<CardAdult> Adults,
    int ShortBy,
    CardPlan? Plan,
    IReadOnlyList<CardGame> Games,
    CardPlayers Together,
    CardPlayers Here,
    IReadOnlyList<SlotTaken> Taken,
    CardRule Rule,
    LookAtRule LookAt,
    WordsDueRule WordsDue);
