package kerfbook.document;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.UUID;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Worker;
import kerfbook.estimate.Forecast;
import kerfbook.logbook.Entry;
import kerfbook.logbook.TaskProgress;
import kerfbook.schedule.DayHours;
import kerfbook.schedule.WorkCalendar;

/**
 * Invents six weeks of log for the demonstration: the forecast's tasks in its order, each longer or shorter by chance, tasks that wait for others
 * moved with them, and a story planted in it: setting up takes 1.3 times as long, the pool edge has 0.85 times its rate, and from 30 March on
 * the bridge has 1.9 times its rate. Same seed, same log.
 *
 * <p>{@code mvn -q -B test -Dtest=DemoLogTest -Dkerfbook.demo-log=write} writes demo-data/demo-log.json anew after the demonstration's plan has
 * changed.
 */
final class DemoLogMaker {
    static final LocalDate AS_OF = LocalDate.of(2027, 4, 12);
    private static final long SEED = 20270301;
    private static final String SLOW = "setting up";
    private static final double SLOWER = 1.3;
    private static final String COOL = "pool-edge";
    private static final double COOLER = 0.85;
    private static final String HOT = "bridge";
    private static final double HOTTER = 1.9;
    private static final LocalDate HOT_FROM = LocalDate.of(2027, 3, 30);
    private static final double TASK_SD = 0.15;
    private static final double DAY_SD = 0.12;
    private static final double READING_SD = 0.10;
    private static final double SMALLEST_H = 0.05;
    private static final String NOTE = "Invented, like the campaign it belongs to: nobody worked there. Electronic dosimeter readings only. "
        + "Made by DemoLogMaker with seed " + SEED + ".";

    private final Campaign campaign;
    private final Forecast forecast;
    private final WorkCalendar calendar;
    private final SplittableRandom random = new SplittableRandom(SEED);
    private final Map<String, Double> delayAtFinish = new HashMap<>();
    private final Map<String, Double> dayFactors = new TreeMap<>();
    private final Map<String, Double> busy = new HashMap<>();
    private final List<Entry> entries = new ArrayList<>();
    private final List<TaskProgress> progress = new ArrayList<>();

    /** One person's time on one task in one area on one day, and the dose the plan expects there. */
    private record Work(String worker, String task, LocalDate on, String area, Optional<String> step) { }

    DemoLogMaker(Campaign campaign, Forecast forecast) {
        this.campaign = campaign;
        this.forecast = forecast;
        calendar = new WorkCalendar(campaign.settings().start(), campaign.settings().calendar().days(), campaign.settings().calendar().hoursPerDay(),
            new HashSet<>(campaign.settings().calendar().holidays()));
    }

    DemoLog make() {
        forecast.tasks().stream().sorted(Comparator.comparingDouble(Forecast.Task::startHour)).forEach(this::work);
        correctOne();
        entries.sort(Comparator.comparing(Entry::on).thenComparing(Entry::madeAt));
        progress.sort(Comparator.comparing(TaskProgress::on).thenComparing(TaskProgress::task));
        return new DemoLog(NOTE, AS_OF, entries, progress);
    }

    private void work(Forecast.Task task) {
        double delay = task.after().stream().mapToDouble(id -> delayAtFinish.getOrDefault(id, 0.0)).max().orElse(0);
        double factor = (task.group().equals(SLOW) ? SLOWER : 1) * Math.exp(TASK_SD * random.nextGaussian());
        double start = task.startHour() + delay;
        double finish = start + task.hours() * factor;
        delayAtFinish.put(task.id(), Math.max(0, finish - task.startHour() - task.hours()));
        double now = calendar.hourOf(AS_OF);
        if (start >= now) {
            return;
        }
        Map<Work, double[]> done = new LinkedHashMap<>();
        for (DayHours day : calendar.spread(start, finish)) {
            if (day.day().isBefore(AS_OF)) {
                onDay(task, day, factor * day.hours() / (finish - start), done);
            }
        }
        write(done);
        if (finish <= now) {
            progress.add(new TaskProgress(task.id(), calendar.finishDay(finish), 1, true));
        } else {
            double share = Math.round(20 * (now - start) / (finish - start)) / 20.0;
            progress.add(new TaskProgress(task.id(), lastDay(), Math.min(0.95, share), false));
        }
    }

    private static LocalDate lastDay() {
        return AS_OF.minusDays(3);
    }

    private void onDay(Forecast.Task task, DayHours day, double part, Map<Work, double[]> done) {
        for (Forecast.StepDose step : task.steps()) {
            for (Forecast.Line line : step.lines()) {
                double hours = line.fieldHours() * part;
                if (hours <= 0) {
                    continue;
                }
                Optional<String> named = task.group().equals("cutting") ? Optional.of(step.code()) : Optional.empty();
                for (String worker : crew(line.role(), (int) Math.ceil(line.people()), day.day())) {
                    double each = hours / Math.ceil(line.people());
                    busy.merge(worker + day.day(), each, Double::sum);
                    double[] sums = done.computeIfAbsent(new Work(worker, task.id(), day.day(), line.area(), named), none -> new double[2]);
                    sums[0] += each;
                    sums[1] += each * line.usvPerH();
                }
            }
        }
    }

    /** Those with the role who have worked least that day. */
    private List<String> crew(String role, int people, LocalDate day) {
        return campaign.workers().stream().filter(worker -> worker.roles().contains(role)).map(Worker::code)
            .sorted(Comparator.<String>comparingDouble(code -> busy.getOrDefault(code + day, 0.0)).thenComparing(Comparator.naturalOrder()))
            .limit(people).toList();
    }

    private void write(Map<Work, double[]> done) {
        done.forEach((work, sums) -> {
            double hours = Math.round(sums[0] / SMALLEST_H) * SMALLEST_H;
            double rounded = Math.round(hours * 100) / 100.0;
            if (rounded < SMALLEST_H) {
                return;
            }
            double rate = sums[1] / sums[0] * ofTheDay(work.area(), work.on());
            double usv = Math.round(rate * rounded * Math.exp(READING_SD * random.nextGaussian()));
            boolean measured = work.worker().startsWith("RP") && work.area().equals(HOT);
            entries.add(new Entry(id(), work.worker(), work.task(), work.on(), work.area(), rounded, usv, work.step(),
                measured ? Optional.of((double) Math.round(rate)) : Optional.empty(), "", madeAt(work.on()), Optional.empty(), List.of()));
        });
    }

    private double ofTheDay(String area, LocalDate on) {
        return dayFactors.computeIfAbsent(area + on, none -> Math.exp(DAY_SD * random.nextGaussian())
            * (area.equals(COOL) ? COOLER : area.equals(HOT) && !on.isBefore(HOT_FROM) ? HOTTER : 1));
    }

    private Instant madeAt(LocalDate on) {
        return on.atTime(14, 0).toInstant(ZoneOffset.UTC).plusSeconds(60L * (entries.size() % 90));
    }

    private String id() {
        long high = random.nextLong() & ~0xF000L | 0x4000L;
        long low = random.nextLong() & 0x3FFFFFFFFFFFFFFFL | 0x8000000000000000L;
        return new UUID(high, low).toString();
    }

    /** One reading was first written down ten times too high, and corrected the next morning. */
    private void correctOne() {
        Entry right = entries.stream().filter(entry -> entry.on().equals(LocalDate.of(2027, 3, 17)) && entry.usv() >= 20).findFirst().orElseThrow();
        entries.remove(right);
        Entry wrong = new Entry(right.id(), right.worker(), right.task(), right.on(), right.area(), right.hours(), right.usv() * 10, right.step(),
            right.foundUsvPerH(), "", right.madeAt(), Optional.empty(), List.of());
        entries.add(wrong);
        entries.add(new Entry(id(), right.worker(), right.task(), right.on(), right.area(), right.hours(), right.usv(), right.step(), right.foundUsvPerH(),
            "One digit too many the day before.", right.madeAt().plusSeconds(61_200), Optional.of(wrong.id()), List.of()));
    }

    /** One entry a line, so that a change can be read. */
    static String text(DemoLog log) {
        StringBuilder text = new StringBuilder("{\"note\": ").append(json(log.note())).append(",\n\"as_of\": ").append(json(log.asOf())).append(",\n");
        lines(text, "entries", log.entries());
        lines(text.append(",\n"), "progress", log.progress());
        return text.append("}\n").toString();
    }

    private static void lines(StringBuilder text, String name, List<?> rows) {
        text.append('"').append(name).append("\": [\n");
        for (int i = 0; i < rows.size(); i++) {
            text.append(json(rows.get(i))).append(i + 1 < rows.size() ? ",\n" : "\n");
        }
        text.append(']');
    }

    private static String json(Object value) {
        return new String(Json.bytes(value), StandardCharsets.UTF_8);
    }
}
