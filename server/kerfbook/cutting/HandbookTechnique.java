package kerfbook.cutting;

import kerfbook.quantity.Require;

/** A technique of the handbook: ready to be copied into a plan, with what else is known of it. */
public record HandbookTechnique(Technique technique, TechniqueNotes notes) {
    public HandbookTechnique {
        Require.present(technique, "technique");
        Require.present(notes, "notes");
    }
}
