package kerfbook.logbook;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * One person's work on one task in one area, as it was written down. Never changed: a correction is a new entry that replaces one.
 *
 * @param id           made on the device that wrote it down, so that sending it twice keeps it once
 * @param task         id of a task as the forecast names it
 * @param on           day of the work
 * @param hours        time of this person in this area, h; 0 takes back the entry that is replaced
 * @param usv          dosimeter reading Hp(10), µSv
 * @param step         step of the task, where it was named
 * @param foundUsvPerH dose rate found at the place, µSv/h
 * @param madeAt       by the clock of the device
 * @param replaces     id of the entry that this one corrects
 * @param confirmed    checks that asked about this entry and were answered with yes
 */
public record Entry(String id, String worker, String task, LocalDate on, String area, double hours, double usv, Optional<String> step,
                    Optional<Double> foundUsvPerH, String remark, Instant madeAt, Optional<String> replaces, List<String> confirmed) {
    /** Longest time of one entry, h. */
    public static final double MOST_HOURS = 12;
    /** Highest dosimeter reading of one entry, µSv: 100 mSv. */
    public static final double MOST_USV = 100_000;
    /** Highest dose rate found that can be written down, µSv/h: 10 Sv/h. */
    public static final double MOST_USV_PER_H = 1e7;
    /** Longest remark, in characters. */
    public static final int LONGEST_REMARK = 500;

    private static final Pattern UUID = Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}");
    private static final Pattern TASK = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._/-]{0,199}");
    private static final int MOST_CONFIRMED = 20;

    public Entry {
        id(id, "id");
        Require.code(worker, "worker");
        task(task, "task");
        Require.day(on, "on");
        Require.code(area, "area");
        if (!(hours >= 0 && hours <= MOST_HOURS)) {
            throw new Invalid("hours", "in one entry must be between 0 and 12 h, not " + hours + ". Split longer work into two entries.");
        }
        Require.within(usv, 0, MOST_USV, "usv", "µSv");
        hours = hours + 0.0;                        // no negative zero
        usv = usv + 0.0;
        step = Require.optional(step);
        step.ifPresent(code -> Require.code(code, "step"));
        foundUsvPerH = Require.optional(foundUsvPerH);
        foundUsvPerH.ifPresent(rate -> Require.within(rate, 0, MOST_USV_PER_H, "found_usv_per_h", "µSv/h"));
        Require.text(remark, "remark");
        if (remark.length() > LONGEST_REMARK) {
            throw new Invalid("remark", "is " + remark.length() + " characters long; at most " + LONGEST_REMARK + " are kept. Shorten it.");
        }
        madeAt = moment(madeAt, "made_at");
        replaces = Require.optional(replaces);
        if (replaces.isPresent()) {
            id(replaces.get(), "replaces");
            if (replaces.get().equals(id)) {
                throw new Invalid("replaces", "names this entry itself. Name the one that it corrects, or leave it out.");
            }
        }
        if (hours == 0 && (usv > 0 || replaces.isEmpty() || remark.isBlank())) {
            throw new Invalid("hours", "must be above 0. 0 h and 0 µSv only take back the entry that this one replaces, with a remark that says why.");
        }
        confirmed = Require.list(confirmed, "confirmed");
        if (confirmed.size() > MOST_CONFIRMED) {
            throw new Invalid("confirmed", "holds " + confirmed.size() + " checks; at most " + MOST_CONFIRMED + " are known.");
        }
        for (int i = 0; i < confirmed.size(); i++) {
            Require.code(confirmed.get(i), "confirmed[" + i + "]");
        }
        Require.distinct(confirmed, "confirmed");
    }

    /** It takes back what it replaces and puts nothing in its place. */
    public boolean takesBack() {
        return hours == 0;
    }

    /** The same hours and dose of the same person on the same day at the same task, whatever is remarked. */
    public boolean sameWork(Entry other) {
        return worker.equals(other.worker) && on.equals(other.on) && task.equals(other.task) && area.equals(other.area) && hours == other.hours
            && usv == other.usv && step.equals(other.step);
    }

    /** The same, with these checks answered. */
    public Entry confirming(List<String> checks) {
        return new Entry(id, worker, task, on, area, hours, usv, step, foundUsvPerH, remark, madeAt, replaces, checks);
    }

    /** The id of a task as a forecast writes it: codes joined by strokes. */
    static String task(String value, String field) {
        Require.present(value, field);
        if (!TASK.matcher(value).matches()) {
            throw new Invalid(field, "must be the id of a task, like ring/ring-routine/set-up.");
        }
        return value;
    }

    private static void id(String value, String field) {
        Require.present(value, field);
        if (!UUID.matcher(value).matches()) {
            throw new Invalid(field, "must be a UUID in small letters, like 0b9f3c1e-5a53-4c7e-9d27-3f1f6f0f5a11.");
        }
    }

    /** As fine as it is stored, so that what was sent is what will be read. */
    private static Instant moment(Instant value, String field) {
        Require.present(value, field);
        if (value.isBefore(Instant.parse("2000-01-01T00:00:00Z")) || value.isAfter(Instant.parse("2200-01-01T00:00:00Z"))) {
            throw new Invalid(field, "must be a time between 2000 and 2200. Set the clock of the device.");
        }
        return value.truncatedTo(ChronoUnit.MICROS);
    }
}
