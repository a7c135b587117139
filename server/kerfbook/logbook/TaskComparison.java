package kerfbook.logbook;

import java.time.LocalDate;
import java.util.Optional;
import kerfbook.quantity.Words;

/**
 * What a task took beside what was forecast. Factors stand only where the whole task is done: a part of a task says nothing about it.
 *
 * @param forecastHours person-hours in the areas
 * @param hours         the same, logged
 * @param share         part that is done, 0 to 1
 * @param assumedShare  nobody said how far it is: the share is worked out from the hours
 * @param first         first day with an entry
 * @param last          last day with an entry, or the day it was closed
 * @param hoursFactor   {@code hours / forecastHours}
 * @param rateFactor    {@code (usv / hours) / (forecastUsv / forecastHours)}
 * @param doseFactor    {@code usv / forecastUsv = hoursFactor · rateFactor}
 */
public record TaskComparison(String task, String name, String group, State state, double forecastHours, double hours, double forecastUsv,
                             double usv, double share, boolean assumedShare, Optional<LocalDate> first, Optional<LocalDate> last,
                             Optional<Double> hoursFactor, Optional<Double> rateFactor, Optional<Double> doseFactor) {

    /** How a task stands. */
    public enum State {
        OPEN, FINISHED,
        /** Closed with a part left undone. */
        CUT_SHORT;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /** Part still to do. */
    public double remaining() {
        return state == State.OPEN ? 1 - share : 0;
    }
}
