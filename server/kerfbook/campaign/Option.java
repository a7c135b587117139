package kerfbook.campaign;

import java.util.List;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * Another way to do the work: a named list of changes to the plan, made one after the other.
 *
 * @param changes in the order in which they are made; none yet: the plan as it is
 */
public record Option(String code, String name, List<Change> changes, String note) {
    private static final int MOST_CHANGES = 200;

    public Option {
        Require.code(code, "code");
        Require.name(name, "name");
        changes = Require.list(changes, "changes");
        if (changes.size() > MOST_CHANGES) {
            throw new Invalid("changes", "holds " + changes.size() + " changes; at most " + MOST_CHANGES + " are taken.");
        }
        Require.text(note, "note");
    }
}
