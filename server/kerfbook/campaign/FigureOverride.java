package kerfbook.campaign;

import java.time.LocalDate;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * A derived figure that somebody replaced, with the reason.
 *
 * @param task   id of the task
 * @param step   code of its step
 * @param role   whose people, presence or rate; only with those figures
 * @param figure which figure is replaced
 */
public record FigureOverride(String code, String task, String step, Optional<String> role, Figure figure, double value, String reason,
                       LocalDate decidedOn) {

    /** Figures that may be replaced, with the largest value that is taken. */
    public enum Figure {
        QUANTITY(1e7, false), HOURS_EACH(1e4, false), DIFFICULTY(100, false), HOURS(1e5, false),
        PEOPLE(1e3, true), PRESENCE(1, true), USV_PER_H(Area.HIGHEST_RATE, true);

        private final double largest;
        private final boolean ofRole;

        Figure(double largest, boolean ofRole) {
            this.largest = largest;
            this.ofRole = ofRole;
        }

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    public FigureOverride {
        Require.code(code, "code");
        Require.name(task, "task");
        Require.code(step, "step");
        role = Require.optional(role);
        Require.present(figure, "figure");
        if (role.isPresent() != figure.ofRole) {
            throw new Invalid("role", figure.ofRole ? "is missing: say whose " + figure + " is replaced."
                : "does not go with " + figure + ", which belongs to the whole step.");
        }
        Require.within(value, 0, figure.largest, "value", "");
        Require.reason(reason, "reason");
        Require.day(decidedOn, "decided_on");
    }
}
