package kerfbook.campaign;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * A list of tasks that is used again and again.
 *
 * @param applies   how often its tasks arise
 * @param technique quantities count the cuts of this technique only; left out: all cuts
 */
public record Routine(String code, String name, Applies applies, Optional<String> technique, List<RoutineTask> tasks) {

    /** How often a routine's tasks arise. */
    public enum Applies {
        /** For each component that lists the routine. */
        COMPONENT,
        /** Once, before the components (of its technique, if it has one). */
        BEFORE,
        /** Once, after the components (of its technique, if it has one). */
        AFTER,
        /** Every calendar week from the first component task to the last. */
        WEEKLY;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    public Routine {
        Require.code(code, "code");
        Require.name(name, "name");
        Require.present(applies, "applies");
        technique = Require.optional(technique);
        tasks = Require.atLeastOne(tasks, "tasks");
        Require.distinct(tasks.stream().map(RoutineTask::code).toList(), "tasks");
        requireEarlier(tasks);
        if (applies != Applies.COMPONENT) {
            for (int i = 0; i < tasks.size(); i++) {
                requireOfComponent(!tasks.get(i).packs(), "tasks[" + i + "].packs", "pack a component");
                requireOfComponent(!tasks.get(i).freesComponent(), "tasks[" + i + "].frees", "free a component");
                requireOfComponent(tasks.get(i).liftCoverMm().isEmpty(), "tasks[" + i + "].lift_cover_mm", "lift its pieces");
            }
        }
    }

    /** Tasks that no other task of the routine waits for. */
    public List<RoutineTask> last() {
        Set<String> waitedFor = new LinkedHashSet<>();
        tasks.forEach(task -> waitedFor.addAll(task.after()));
        return tasks.stream().filter(task -> !waitedFor.contains(task.code())).toList();
    }

    private static void requireOfComponent(boolean kept, String field, String what) {
        if (!kept) {
            throw new Invalid(field, "is for routines of components: only they " + what + ".");
        }
    }

    private static void requireEarlier(List<RoutineTask> tasks) {
        List<String> earlier = new ArrayList<>();
        for (int i = 0; i < tasks.size(); i++) {
            for (int k = 0; k < tasks.get(i).after().size(); k++) {
                String before = tasks.get(i).after().get(k);
                if (!earlier.contains(before)) {
                    throw new Invalid("tasks[" + i + "].after[" + k + "]", "\"" + before
                        + "\" is no task that stands earlier in this routine. A task can only wait for one above it.");
                }
            }
            earlier.add(tasks.get(i).code());
        }
    }
}
