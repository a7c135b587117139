package kerfbook.estimate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Need;
import kerfbook.campaign.Step;
import kerfbook.schedule.Link;

/**
 * A task as it was derived, before hours and dates.
 *
 * @param id             component/routine/task, routine/task, routine/task/w03 or manual/code
 * @param at             where in the document it was written, for messages
 * @param frees          its component is cut free when it is finished
 * @param liftCoverMm    water over the piece on the hook while it runs
 * @param notBeforeHour  first working hour at which it may start
 * @param week           number of the campaign week for weekly tasks, with its shifts
 */
record PlannedTask(String id, String name, String group, Optional<String> component, Optional<String> routine, String at,
                   List<Step> steps, List<Link> after, boolean packs, boolean frees, Optional<Double> liftCoverMm, double notBeforeHour,
                   Optional<Week> week, List<Need> needs, Quantities quantities) {

    /** A campaign week: its number from 1 and the shifts worked in it. */
    record Week(int number, int shifts) { }

    /** A task that moves no source. */
    PlannedTask(String id, String name, String group, Optional<String> component, Optional<String> routine, String at, List<Step> steps,
                List<Link> after, double notBeforeHour, Optional<Week> week, List<Need> needs, Quantities quantities) {
        this(id, name, group, component, routine, at, steps, after, false, false, Optional.empty(), notBeforeHour, week, needs, quantities);
    }

    PlannedTask waitingFor(List<Link> more) {
        List<Link> all = new ArrayList<>(after);
        all.addAll(more);
        return new PlannedTask(id, name, group, component, routine, at, steps, List.copyOf(all), packs, frees, liftCoverMm, notBeforeHour, week, needs, quantities);
    }
}
