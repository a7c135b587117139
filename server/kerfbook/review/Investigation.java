package kerfbook.review;

import java.util.Optional;
import kerfbook.quantity.Require;

/**
 * What is looked into because a level was passed: cause, dose, corrective action (GSR Part 3, 3.46–3.48 and 3.94(b)).
 *
 * @param worker   whose dose it is about, if it is about one person
 * @param level    which level was passed, in words
 * @param levelUsv that level, µSv
 * @param usv      dose that passed it, µSv
 */
public record Investigation(Optional<String> worker, String level, double levelUsv, double usv, String cause, String correctiveAction) {
    public Investigation {
        worker = Require.optional(worker);
        worker.ifPresent(code -> Require.code(code, "worker"));
        Require.name(level, "level");
        Require.positive(levelUsv, 1e9, "level_usv", "µSv");
        Require.within(usv, 0, 1e9, "usv", "µSv");
        Require.reason(cause, "cause");
        Require.reason(correctiveAction, "corrective_action");
    }
}
