package kerfbook.logbook;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfbook.logbook.LogPlan.Job;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Invalid.Fault;

/** Holds an entry against the plan and against what is kept: what cannot be is refused, what is unusual is asked once. */
public final class EntryCheck {
    /** From so many times the planned rate a reading is asked about. Judgement. */
    public static final double TIMES_THE_RATE = 7;
    /** Readings below this are not: one digit of a dosimeter may be many times a low rate. µSv, judgement. */
    public static final double LEAST_USV_ASKED = 10;
    /** A rate found is asked about when it is so many times the planned one, or that part of it. Judgement. */
    public static final double TIMES_FOUND = 3;
    /** Rates found below this, where a low one was planned, are not. µSv/h, judgement. */
    public static final double LEAST_RATE_ASKED = 5;
    /** Hours of one person on one day above which is asked. Judgement: the length of the longest usual shift. */
    public static final double LONG_DAY_HOURS = 12;
    /** Clocks further apart are asked about. */
    public static final Duration CLOCKS_APART = Duration.ofMinutes(5);
    private static final double HOURS_OF_A_DAY = 24;
    private static final int FIRST_YEARS = 2;
    private static final ZoneOffset FIRST_TO_HAVE_A_DAY = ZoneOffset.ofHours(14);

    private EntryCheck() { }

    /**
     * Refuses what cannot be.
     *
     * @param now       by the clock of the server
     * @param byOfficer the radiation protection officer accepts it, though the task is closed or the day long past
     * @throws Invalid with every field that is wrong
     */
    public static void refuse(LogPlan plan, Entry entry, Beside beside, Instant now, boolean byOfficer) {
        List<Fault> faults = new ArrayList<>();
        if (!plan.people().containsKey(entry.worker())) {
            faults.add(new Fault("worker", "names nobody of this campaign. Choose a person, or send the entry to the radiation protection officer."));
        }
        if (!plan.tasks().containsKey(entry.task())) {
            faults.add(new Fault("task", "is not in the plan, or no longer. Choose another task, or send the entry to the radiation protection officer."));
        }
        if (!plan.areas().containsKey(entry.area())) {
            faults.add(new Fault("area", "is none of this campaign. Choose an area, or send the entry to the radiation protection officer."));
        }
        beside.closedOn().filter(day -> !byOfficer).ifPresent(day -> faults.add(new Fault("task", "was closed on " + day
            + ". Choose another task, or send the entry to the radiation protection officer.")));
        LocalDate today = now.atOffset(FIRST_TO_HAVE_A_DAY).toLocalDate();
        if (entry.on().isAfter(today)) {
            faults.add(new Fault("on", "is " + entry.on() + ", which has not begun anywhere. Write down the day of the work, and look at the clock of the device."));
        }
        if (!byOfficer && entry.on().isBefore(today.minusYears(FIRST_YEARS))) {
            faults.add(new Fault("on", "is " + entry.on() + ", more than two years ago. Write down the day of the work, or send the entry to the radiation protection officer."));
        }
        if (beside.hoursThatDay() + entry.hours() > HOURS_OF_A_DAY) {
            faults.add(new Fault("hours", "make " + show(beside.hoursThatDay() + entry.hours()) + " h of " + entry.worker() + " on " + entry.on()
                + "; a day has 24. Look at the entries of that day."));
        }
        if (entry.replaces().isPresent() && beside.replaced().isEmpty()) {
            faults.add(new Fault("replaces", "names no entry that can be corrected. Choose the entry again."));
        } else if (beside.replacedNow()) {
            faults.add(new Fault("replaces", "names an entry that was corrected already. Correct the newer one."));
        }
        for (int i = 0; i < entry.confirmed().size(); i++) {
            if (Check.of(entry.confirmed().get(i)).isEmpty()) {
                faults.add(new Fault("confirmed[" + i + "]", "is no known check."));
            }
        }
        if (!faults.isEmpty()) {
            throw new Invalid(faults);
        }
    }

    /**
     * What is unusual and was not confirmed yet.
     *
     * @param skew how far the clock of the device is ahead of ours, where it said its time
     */
    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    public static List<Need> ask(LogPlan plan, Entry entry, Beside beside, Instant now, Optional<Duration> skew) {
        List<Need> needs = new ArrayList<>();
        Duration ahead = skew.orElse(Duration.between(now, entry.madeAt()));
        if (ahead.compareTo(CLOCKS_APART) > 0 || skew.isPresent() && ahead.negated().compareTo(CLOCKS_APART) > 0) {
            needs.add(new Need(Check.CLOCK, "The clock of this device is " + about(ahead) + (ahead.isNegative() ? " behind" : " ahead of")
                + " the server's. Is " + entry.on() + " the day of the work?"));
        }
        if (!entry.takesBack()) {
            work(plan, entry, beside, needs);
        }
        needs.removeIf(need -> entry.confirmed().contains(need.check().toString()));
        return List.copyOf(needs);
    }

    private static void work(LogPlan plan, Entry entry, Beside beside, List<Need> needs) {
        Job task = plan.tasks().get(entry.task());
        String area = plan.areas().get(entry.area()).name();
        rates(plan, entry, task, area, needs);
        if (entry.hours() > plan.shiftHours()) {
            needs.add(new Need(Check.SHIFT, show(entry.hours()) + " h is more than a shift of " + show(plan.shiftHours()) + " h. Keep it?"));
        }
        if (!task.usvPerH().isEmpty() && !task.usvPerH().containsKey(entry.area())) {
            needs.add(new Need(Check.AREA, "\"" + task.name() + "\" is not planned in " + area + ". Keep it?"));
        }
        if (!task.roles().isEmpty() && plan.people().get(entry.worker()).stream().noneMatch(task.roles()::contains)) {
            needs.add(new Need(Check.ROLE, entry.worker() + " has no role in \"" + task.name() + "\". Keep it?"));
        }
        entry.step().filter(step -> !task.steps().containsKey(step)).ifPresent(step ->
            needs.add(new Need(Check.STEP, "\"" + task.name() + "\" has no step " + step + ". Keep it?")));
        if (beside.hoursThatDay() > 0 && beside.hoursThatDay() + entry.hours() > LONG_DAY_HOURS) {
            needs.add(new Need(Check.DAY, entry.worker() + " has " + show(beside.hoursThatDay()) + " h on " + entry.on() + " already; with this "
                + show(beside.hoursThatDay() + entry.hours()) + " h. Keep it?"));
        }
        beside.sameAt().ifPresent(at -> needs.add(new Need(Check.TWICE, "The same hours and dose of " + entry.worker()
            + " on this task were entered before. Is this other work?")));
    }

    private static void rates(LogPlan plan, Entry entry, Job task, String area, List<Need> needs) {
        Optional<Double> planned = Optional.ofNullable(task.usvPerH().get(entry.area())).or(() -> plan.areas().get(entry.area()).usvPerH(entry.on()));
        if (planned.isEmpty() || !(planned.get() > 0)) {
            return;
        }
        double times = entry.usv() / (planned.get() * entry.hours());
        if (entry.usv() >= LEAST_USV_ASKED && times >= TIMES_THE_RATE) {
            needs.add(new Need(Check.RATE, show(entry.usv()) + " µSv in " + time(entry.hours()) + " is " + show(times) + " times the planned rate of " + area + ". Keep it?"));
        }
        entry.foundUsvPerH().ifPresent(found -> {
            boolean far = found >= TIMES_FOUND * planned.get() || found <= planned.get() / TIMES_FOUND;
            if (far && Math.max(found, planned.get()) >= LEAST_RATE_ASKED) {
                needs.add(new Need(Check.FOUND, show(found) + " µSv/h found in " + area + "; planned with " + show(planned.get()) + " µSv/h. Keep it?"));
            }
        });
    }

    /** At most three digits. */
    private static String show(double value) {
        if (value == Math.rint(value) || value >= 100) {
            return String.format(Locale.ROOT, "%.0f", value);
        }
        String text = String.format(Locale.ROOT, value >= 10 ? "%.1f" : value >= 1 ? "%.2f" : "%.3f", value);
        return text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }

    private static String time(double hours) {
        long minutes = Math.round(hours * 60);
        return minutes < 60 ? minutes + " min" : minutes % 60 == 0 ? minutes / 60 + " h" : minutes / 60 + " h " + minutes % 60 + " min";
    }

    private static String about(Duration apart) {
        long minutes = apart.abs().toMinutes();
        return minutes < 120 ? minutes + " min" : minutes < 48 * 60 ? minutes / 60 + " h" : minutes / (24 * 60) + " days";
    }
}
