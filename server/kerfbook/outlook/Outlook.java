package kerfbook.outlook;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Scope;
import kerfbook.estimate.Basis;

/**
 * What may come of a campaign: the forecast with every uncertain input drawn many times.
 *
 * @param inputs      digest of the campaign document
 * @param asOf        day from which the rest is drawn; left out for the plan
 * @param personUsv   collective dose, what was received included
 * @param hours       working hours from the campaign's start to the last finish
 * @param personHours still to be worked, in the areas or not
 * @param cost        of what is still to do; only where the campaign has prices
 * @param finish      the day of the last finish
 * @param parts       of the dose under each heading
 * @param weeks       calendar weeks from the first in which something remains to be done, the last one with all that comes after it
 * @param faults      how often tools fail in what is still to do; only where a step clears faults
 * @param runs        a few single trials
 * @param sensitivity which input moves the collective dose, the strongest first
 * @param notes       what holds for these figures
 */
public record Outlook(String name, boolean invented, String inputs, long seed, int trials, List<Basis.Edition> editions, LocalDate start,
                      Optional<LocalDate> asOf, Spread personUsv, Spread hours, Spread personHours, Optional<Spread> cost, Finish finish,
                      List<Task> tasks, List<Part> components, List<Part> areas, List<Part> groups, List<Part> techniques, List<Person> people,
                      List<Week> weeks, List<Target> targets, Spread highestUsv, List<Amount> amounts, Optional<Faults> faults, List<Run> runs,
                      List<Input> sensitivity, List<String> notes) {

    /** The day on which all is done, with the outcomes in rising order. */
    public record Finish(LocalDate p5, LocalDate p50, LocalDate p80, LocalDate p95, List<LocalDate> outcomes) { }

    /**
     * @param hours       from start to finish
     * @param finishHour  working hour from the campaign's start
     * @param criticality part of the trials in which it had no float
     */
    public record Task(String id, String name, String group, Optional<String> component, Spread usv, Spread hours, Spread finishHour, double criticality) { }

    /** The dose under one heading. */
    public record Part(String code, String name, Spread usv) { }

    public record Person(String worker, String name, Spread usv, List<Bound> bounds) { }

    /** @param usv the part of the person's dose that the constraint is held against */
    public record Bound(String constraint, double individualUsv, Spread usv, Odds kept) { }

    /** @param starts Monday, or the first day of work */
    public record Week(LocalDate starts, Spread usv, Spread cumulative) { }

    /** @param usv the dose that the target is held against */
    public record Target(String code, Scope scope, Optional<String> of, double personUsv, Spread usv, Odds kept) { }

    /** Something used up, such as drums. */
    public record Amount(String what, String unit, Spread amount) { }

    /**
     * Faults of all techniques together, and of each. Quantiles and outcomes are whole numbers.
     *
     * @param number of faults that stop a tool until somebody clears them
     */
    public record Faults(Spread number, List<FaultsOf> techniques) { }

    public record FaultsOf(String technique, String name, Spread number) { }

    /** One trial: its dose at the end of each week, as {@code weeks} lists them. */
    public record Run(int trial, double personUsv, double hours, List<Double> cumulativeUsv) { }

    /**
     * An uncertain input that acts in more than one place.
     *
     * @param rankCorrelation with the collective dose (Spearman)
     * @param error           standard error of it
     * @param lowUsv          mean collective dose of the trials with this input in its lowest tenth
     * @param highUsv         the same in its highest tenth
     * @param decides         the campaign's target is kept by one of the two and not by the other
     * @param assumption      its spread is an assumption: what is usual, or what the plan itself calls one
     */
    public record Input(String input, String name, Kind kind, double rankCorrelation, double error, double lowUsv, double highUsv, boolean decides,
                        boolean assumption) { }

    /** What an input is about. */
    public enum Kind {
        SURVEY, SOURCE, SPEED, WEAR, WATER, DIFFICULTY, CREW, FAULTS, LEARNT;

        @Override
        public String toString() {
            return kerfbook.quantity.Words.of(this);
        }
    }
}
