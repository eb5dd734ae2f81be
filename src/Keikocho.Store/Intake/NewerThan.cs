using Keikocho.Store.Engines;

namespace Keikocho.Store.Intake;

/// <summary>Says which of the people whom a reading added are spoken of by something that it did not bring itself.</summary>
internal static class NewerThan
{
    private static readonly string[] MayBeOwn = ["Contacts", "Registrations", "Consents", "Enrolments", "Awards"];

    public static Dictionary<Guid, string> Of(KeikochoDb db, ReadingRow reading, IReadOnlyCollection<Guid> people, Func<string, List<Guid>> made)
    {
        var why = new Dictionary<Guid, string>();
        void Say(IEnumerable<Guid> found, string words)
        {
            foreach (var id in found) why.TryAdd(id, words);
        }

        var own = MayBeOwn.ToDictionary(table => table, table => made(table).ToHashSet(), StringComparer.Ordinal);
        foreach (var part in people.Chunk(500))
        {
            Say(db.Marks.Where(m => part.Contains(m.PersonId) && m.DeviceId != reading.Id).Select(m => m.PersonId).Distinct().ToList(), "the register has marks");
            Say(Others(db.Awards.Where(r => part.Contains(r.PersonId)).Select(r => new Pair(r.Id, r.PersonId)), "Awards"), "a rank was recorded");
            Say(db.Results.Where(r => part.Contains(r.PersonId)).Select(r => r.PersonId).ToList(), "a test has a result");
            Say(db.StandDowns.Where(r => part.Contains(r.PersonId)).Select(r => r.PersonId).ToList(), "a stand-down was entered");
            Say(db.Duties.Where(r => part.Contains(r.PersonId)).Select(r => r.PersonId).ToList(), "a duty was entered");
            Say(db.Crossings.Where(r => part.Contains(r.PersonId)).Select(r => r.PersonId).ToList(), "a change of ends was entered");
            Say(Others(db.Enrolments.Where(r => part.Contains(r.PersonId)).Select(r => new Pair(r.Id, r.PersonId)), "Enrolments"), "the child is on another register");
            Say(Others(db.Contacts.Where(r => part.Contains(r.PersonId)).Select(r => new Pair(r.Id, r.PersonId)), "Contacts"), "a contact was entered");
            Say(db.Contacts.Where(r => r.ContactPersonId != null && part.Contains(r.ContactPersonId.Value)).Select(r => r.ContactPersonId!.Value).ToList(), "someone has this person as a contact");
            Say(Others(db.Registrations.Where(r => part.Contains(r.PersonId)).Select(r => new Pair(r.Id, r.PersonId)), "Registrations"), "a registration was entered");
            Say(Others(db.Consents.Where(r => part.Contains(r.PersonId)).Select(r => new Pair(r.Id, r.PersonId)), "Consents"), "a consent was entered");
            Say(db.FamilyMembers.Where(r => part.Contains(r.PersonId)).Select(r => r.PersonId).ToList(), "a family was entered");
            Say(db.KeepAparts.Where(r => part.Contains(r.FirstId)).Select(r => r.FirstId).ToList(), "two children are kept apart");
            Say(db.KeepAparts.Where(r => part.Contains(r.SecondId)).Select(r => r.SecondId).ToList(), "two children are kept apart");
            Say(db.KeepTogethers.Where(r => part.Contains(r.FirstId)).Select(r => r.FirstId).ToList(), "two children are asked for together");
            Say(db.KeepTogethers.Where(r => part.Contains(r.SecondId)).Select(r => r.SecondId).ToList(), "two children are asked for together");
            Say(db.Togethers.Where(r => part.Contains(r.OneId)).Select(r => r.OneId).Distinct().ToList(), "the child had partners");
            Say(db.Togethers.Where(r => part.Contains(r.OtherId)).Select(r => r.OtherId).Distinct().ToList(), "the child had partners");
            Say(db.Notes.Where(r => part.Contains(r.PersonId)).Select(r => r.PersonId).ToList(), "a note was written");
            Say(db.CareNotes.Where(r => part.Contains(r.PersonId)).Select(r => r.PersonId).Distinct().ToList(), "a care note was entered");
            Say(db.CareAsked.Where(r => part.Contains(r.PersonId)).Select(r => r.PersonId).ToList(), "the family was asked about care");
            Say(db.PhraseNotes.Where(r => part.Contains(r.PersonId)).Select(r => r.PersonId).Distinct().ToList(), "a note was made on the mat");
            Say(db.Adaptations.Where(r => part.Contains(r.PersonId)).Select(r => r.PersonId).ToList(), "an adaptation was agreed");
            Say(db.ChosenItems.Where(r => part.Contains(r.PersonId)).Select(r => r.PersonId).Distinct().ToList(), "items were chosen");
            Say(db.Overrules.Where(r => part.Contains(r.PersonId)).Select(r => r.PersonId).Distinct().ToList(), "a verdict was set");
            Say(db.TimeOffs.Where(r => part.Contains(r.PersonId)).Select(r => r.PersonId).Distinct().ToList(), "time was taken off");
            Say(db.KeptAnswers.Where(r => r.SubjectId != null && part.Contains(r.SubjectId.Value)).Select(r => r.SubjectId!.Value).Distinct().ToList(), "a page was kept as it was told");
            Say(db.Sizes.Where(r => part.Contains(r.PersonId)).Select(r => r.PersonId).ToList(), "a size was entered");
            Say(db.RegisterPlaces.Where(r => part.Contains(r.PersonId)).Select(r => r.PersonId).ToList(), "a term's register has a place for the child");
            Say(db.Devices.Where(r => r.ActingAdultId != null && part.Contains(r.ActingAdultId.Value)).Select(r => r.ActingAdultId!.Value).ToList(), "a device has this adult");
            Say(db.Trail.Where(t => t.SubjectId != null && part.Contains(t.SubjectId.Value) && t.At >= reading.SavedAt).Select(t => t.SubjectId!.Value).Distinct().ToList(), "details were changed by hand");
            Say(db.ReadingTraces.Where(t => t.ReadingId != reading.Id && t.Table == "People" && part.Contains(t.RowId)).Select(t => t.RowId).Distinct().ToList(), "a later file changed details");
        }

        return why;

        IEnumerable<Guid> Others(IQueryable<Pair> rows, string table) => rows.AsEnumerable().Where(r => !own[table].Contains(r.Id)).Select(r => r.PersonId).ToList();
    }

    private sealed record Pair(Guid Id, Guid PersonId);
}
