using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;

namespace Keikocho.Core.Evening;

/// <summary>What a child does in one slot.</summary>
/// <param name="Child">Its key.</param>
/// <param name="Role">In the words of a card, without a reason; null for what everybody does.</param>
public sealed record SlotRole(string Child, string? Role);

/// <summary>One part of the card.</summary>
/// <param name="Number">From 1, in order.</param>
/// <param name="Kind">What it is for.</param>
/// <param name="Name">As the card says it.</param>
/// <param name="From">By the clock.</param>
/// <param name="Minutes">Its length.</param>
/// <param name="Does">What is done.</param>
/// <param name="Slot">Of a slot its number from 1; null for other parts.</param>
/// <param name="Item">Of a slot the key of its item; null where nothing is left to choose.</param>
/// <param name="Roles">Of a slot with an item, a line for each child in register order.</param>
/// <param name="Games">Of a game, names of those that fit.</param>
public sealed record CardSlot(
    int Number, CardPartKind Kind, string Name, TimeOnly From, int Minutes, string Does, int? Slot, string? Item, IReadOnlyList<SlotRole> Roles, IReadOnlyList<string> Games);

/// <summary>An item with what the children present need of it.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Name">Its name.</param>
/// <param name="Score">Sum of need times urgency.</param>
/// <param name="HeldBack">Shown at the last two lessons of this end, and not worth twice the best of the others.</param>
/// <param name="Because">The sum in words.</param>
public sealed record ItemScore(string Key, string Name, decimal Score, bool HeldBack, Reason Because);

/// <summary>What one child does tonight.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Role">As a card prints it, without a reason.</param>
/// <param name="IsNew">A newcomer.</param>
/// <param name="IsBack">Back after an absence.</param>
public sealed record CardLine(string Key, string Role, bool IsNew, bool IsBack);

/// <summary>A fall to be worked on: the lowest stage that is not open for somebody.</summary>
/// <param name="Way">Which way.</param>
/// <param name="Stage">The stage.</param>
/// <param name="Children">Keys of those who work on it, in register order.</param>
public sealed record CardFall(FallWay Way, int Stage, IReadOnlyList<string> Children);

/// <summary>What one end does tonight.</summary>
/// <param name="End">Which end.</param>
/// <param name="IsEmpty">Nobody is at this end.</param>
/// <param name="Plan">Which card it is.</param>
/// <param name="Slots">The parts in order; empty when nobody is there.</param>
/// <param name="Items">Every item, the first to choose first.</param>
/// <param name="Children">What each child does, in register order.</param>
/// <param name="Falls">Falls to be worked on.</param>
/// <param name="Lead">Key of the adult who leads; null where nobody may.</param>
/// <param name="Drills">Keys of the others, who hold a drill.</param>
/// <param name="LookAt">Keys of those to look at, in register order.</param>
/// <param name="Words">Keys of tonight's words, the first first.</param>
/// <param name="PlanB">What to do when an adult is missing.</param>
/// <param name="Reasons">Every rule and figure, for whoever teaches.</param>
/// <param name="Settings">The settings used.</param>
public sealed record EndCard(
    MatEnd End,
    bool IsEmpty,
    CardPlan Plan,
    IReadOnlyList<CardSlot> Slots,
    IReadOnlyList<ItemScore> Items,
    IReadOnlyList<CardLine> Children,
    IReadOnlyList<CardFall> Falls,
    string? Lead,
    IReadOnlyList<string> Drills,
    IReadOnlyList<string> LookAt,
    IReadOnlyList<string> Words,
    IReadOnlyList<string> PlanB,
    IReadOnlyList<Reason> Reasons,
    IReadOnlyList<SettingUsed> Settings);
