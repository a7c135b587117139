package kerfbook.schedule;

import kerfbook.quantity.Require;

/**
 * An activity may start only when another has finished, plus a lag.
 *
 * @param activity id of the one that must have finished
 * @param lagHours working hours to let pass after that finish, 0 or more; waiting that runs on outside working hours
 *                 belongs to an activity of its own
 */
public record Link(String activity, double lagHours) {
    public Link {
        Require.name(activity, "activity");
        Require.within(lagHours, 0, Activity.LONGEST_HOURS, "lag_hours", "h");
    }

    /** Straight after the other one. */
    public static Link to(String activity) {
        return new Link(activity, 0);
    }
}
