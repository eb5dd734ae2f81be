using System.Collections.Immutable;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Cards;

/// <summary>Both cards of an evening, or the one card of joined ends.</summary>
/// <param name="Cards">The beginners' end first.</param>
/// <param name="IsJoined">Both ends work together on one card.</param>
/// <param name="Plan">The plan that was chosen; null where the numbers decided.</param>
/// <param name="RegisterTaken">False while no child is marked: the cards are for everybody expected.</param>
/// <param name="FirstAider">Who can give first aid, in words.</param>
/// <param name="Minutes">Length of the lesson.</param>
public sealed record EveningCards(ImmutableArray<CardView> Cards, bool IsJoined, CardPlan? Plan, bool RegisterTaken, string FirstAider, int Minutes);

/// <summary>One end's card in words: what a page, a paper and a tablet show.</summary>
/// <param name="End">Which end.</param>
/// <param name="Heading">"Beginners' end", "Main group", "Both ends".</param>
/// <param name="Empty">Why there is no card; null where there is one.</param>
/// <param name="Unit">Name of the unit; null for none.</param>
/// <param name="Lead">Who leads, or that nobody does.</param>
/// <param name="Drills">Who holds a drill.</param>
/// <param name="Plan">Which card it is.</param>
/// <param name="Parts">In order.</param>
/// <param name="Children">In register order.</param>
/// <param name="Falls">Falls to work on, a line each.</param>
/// <param name="LookAt">Names in register order.</param>
/// <param name="Words">Tonight's words.</param>
/// <param name="PlanB">When an adult is missing.</param>
/// <param name="Reasons">Why it is so; for whoever teaches.</param>
public sealed record CardView(
    MatEnd End,
    string Heading,
    string? Empty,
    string? Unit,
    string Lead,
    string Drills,
    CardPlan Plan,
    ImmutableArray<CardPartView> Parts,
    ImmutableArray<CardChildView> Children,
    ImmutableArray<string> Falls,
    ImmutableArray<string> LookAt,
    ImmutableArray<CardWordView> Words,
    ImmutableArray<string> PlanB,
    ImmutableArray<string> Reasons)
{
    /// <summary>The slot that was gone to last; 0 before the first.</summary>
    public int Shown => Parts.Where(p => p.IsShown).Select(p => p.Slot ?? 0).DefaultIfEmpty(0).Max();

    /// <summary>The next slot with an item; null after the last.</summary>
    public CardPartView? Next => Parts.FirstOrDefault(p => p.Slot > Shown && p.Item is not null);
}

/// <summary>A part of a card.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Kind">What it is for.</param>
/// <param name="Name">As the lesson calls it.</param>
/// <param name="From">By the clock.</param>
/// <param name="At">Minutes from the start.</param>
/// <param name="Minutes">Its length.</param>
/// <param name="Does">What is done.</param>
/// <param name="Slot">The number of the slot; null for other parts.</param>
/// <param name="Item">What is worked on.</param>
/// <param name="Roles">Who does what, without a reason; empty where everybody does the same.</param>
/// <param name="Games">Games that fit.</param>
/// <param name="IsShown">Said to be shown tonight.</param>
public sealed record CardPartView(
    int Number, CardPartKind Kind, string Name, TimeOnly From, int At, int Minutes, string Does, int? Slot, CardItemView? Item,
    ImmutableArray<CardRoleView> Roles, ImmutableArray<string> Games, bool IsShown)
{
    /// <summary>What stands in large letters.</summary>
    public string Title => Item?.Name ?? Name;

    /// <summary>Together, whatever the end.</summary>
    public bool IsTogether => Kind is CardPartKind.Bow or CardPartKind.WarmUp or CardPartKind.Falls or CardPartKind.Close;
}

/// <summary>Those who do the same in a slot.</summary>
/// <param name="Role">In the words of a card.</param>
/// <param name="Names">In register order.</param>
public sealed record CardRoleView(string Role, ImmutableArray<string> Names);

/// <summary>An item as a card shows it.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Key">Its key.</param>
/// <param name="Name">Its name.</param>
/// <param name="Showing">"3rd showing this term".</param>
/// <param name="Cue">What to look for.</param>
/// <param name="Fault">A common fault.</param>
/// <param name="Easier">An easier form.</param>
/// <param name="Harder">A harder form.</param>
public sealed record CardItemView(Guid Id, string Key, string Name, string Showing, string? Cue, string? Fault, string? Easier, string? Harder);

/// <summary>A child on a card.</summary>
/// <param name="Id">Who.</param>
/// <param name="Name">As called.</param>
/// <param name="Rank">The rank worn; null where none is recorded.</param>
/// <param name="Mark">"new", "back", or nothing.</param>
/// <param name="Role">What it does tonight, without a reason.</param>
public sealed record CardChildView(Guid Id, string Name, RankRow? Rank, string Mark, string Role);

/// <summary>A word of tonight.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Key">Its key.</param>
/// <param name="Name">As it is asked.</param>
/// <param name="Answer">What counts.</param>
public sealed record CardWordView(Guid Id, string Key, string Name, string? Answer);
