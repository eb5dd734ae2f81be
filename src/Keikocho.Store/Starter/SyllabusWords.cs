using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Store.Starter;

/// <summary>The words of a syllabus file.</summary>
internal static class SyllabusWords
{
    public static readonly WordList<ItemKind> Kinds = new(
        ("fall", ItemKind.Fall), ("throw", ItemKind.Throw), ("hold-down", ItemKind.HoldDown), ("escape", ItemKind.Escape),
        ("turnover", ItemKind.Turnover), ("combination", ItemKind.Combination), ("counter", ItemKind.Counter), ("sequence", ItemKind.Sequence),
        ("etiquette", ItemKind.Etiquette), ("word", ItemKind.Word), ("question", ItemKind.Question), ("exercise", ItemKind.Exercise),
        ("free practice", ItemKind.FreePractice), ("grip", ItemKind.Grip), ("movement", ItemKind.Movement), ("strangle", ItemKind.Strangle),
        ("armlock", ItemKind.Armlock));

    public static readonly WordList<Carry> Carries = new(
        ("this rank", Carry.ThisRank), ("this term", Carry.ThisTerm), ("always", Carry.Always), ("once asked stays", Carry.OnceAskedStays));

    public static readonly WordList<Chooser> Choosers = new(("child", Chooser.Child), ("instructor", Chooser.Instructor));

    public static readonly WordList<AgeBasis> Ages = new(("birthday", AgeBasis.Birthday), ("calendar year", AgeBasis.CalendarYear));

    public static readonly WordList<FallDirection> Falls = new(
        ("back", FallDirection.Back), ("side", FallDirection.Side), ("front", FallDirection.Front), ("rolling", FallDirection.Rolling));
}
