package kerfbook.choice;

import java.util.BitSet;
import java.util.List;
import java.util.Map;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * Work to be shared out: people, jobs that so many of them do at a time, and bounds on what each may take. People and jobs go by their place in the
 * lists.
 *
 * @param hoursPerDay most hours that one person works on one day
 */
public record Sharing(List<String> people, List<Job> jobs, List<Bound> bounds, double hoursPerDay) {

    /**
     * @param crew       people it takes at a time, different ones
     * @param shifts     parts into which it can be divided between crews
     * @param usvIf      dose of each who can do it, if one did all of it
     * @param hoursOfDay person-hours on each of its days
     */
    public record Job(String name, int crew, int shifts, Map<Integer, Double> usvIf, Map<Integer, Double> hoursOfDay) {
        public Job {
            Require.within(crew, 1, 1_000, "crew");
            Require.within(shifts, 1, 1_000, "shifts");
            usvIf = Map.copyOf(usvIf);
            hoursOfDay = Map.copyOf(hoursOfDay);
            usvIf.values().forEach(usv -> Require.within(usv, 0, 1e12, "usv_if", "µSv"));
            hoursOfDay.values().forEach(hours -> Require.within(hours, 0, 1e6, "hours_of_day", "h"));
        }

        /** Parts to hand out: one person in one shift each. */
        int slots() {
            return crew * shifts;
        }

        boolean canDo(int person) {
            return usvIf.containsKey(person);
        }

        /** Dose of one slot. */
        double usv(int person) {
            return usvIf.get(person) / slots();
        }
    }

    /**
     * {@code (prior + planned) ÷ allowance}, planned over some of the jobs.
     *
     * @param law a limit, never to be exceeded; else it only counts
     */
    public record Bound(int person, String rule, boolean law, double priorUsv, double allowanceUsv, BitSet over) {
        public Bound {
            Require.within(priorUsv, 0, 1e12, "prior_usv", "µSv");
            Require.positive(allowanceUsv, 1e12, "allowance_usv", "µSv");
            over = (BitSet) over.clone();
        }
    }

    /** Times of tasks are whole millionths of an hour: a day is not exceeded by what their rounding leaves. */
    static final double HOURS_WITHIN = 1e-3;

    public Sharing {
        people = List.copyOf(people);
        jobs = List.copyOf(jobs);
        bounds = List.copyOf(bounds);
        Require.positive(hoursPerDay, 24, "hours_per_day", "h");
        for (Job job : jobs) {
            int count = people.size();
            if (job.usvIf().keySet().stream().anyMatch(person -> person < 0 || person >= count)) {
                throw new Invalid("usv_if", "names nobody of the " + count + " people.");
            }
        }
    }
}
