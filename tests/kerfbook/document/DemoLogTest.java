package kerfbook.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import kerfbook.estimate.Forecast;
import kerfbook.logbook.DriftChart;
import kerfbook.logbook.Entry;
import kerfbook.logbook.FactorKind;
import kerfbook.logbook.Learning;
import kerfbook.logbook.LearningSettings;
import kerfbook.logbook.Learnt;
import kerfbook.logbook.LearntFactor;
import kerfbook.logbook.Log;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The invented log of the demonstration, and that learning finds what was planted in it. */
class DemoLogTest {
    private static final Path FILE = Path.of("demo-data/demo-log.json");
    private static DemoLog log;
    private static Learnt learnt;

    @BeforeAll
    static void read() throws IOException {
        if ("write".equals(System.getProperty("kerfbook.demo-log"))) {
            Files.writeString(FILE, DemoLogMaker.text(DemoPlan.log()));
        }
        log = Json.read(Files.readAllBytes(FILE), DemoLog.class);
        learnt = Learning.of(DemoPlan.CAMPAIGN, DemoPlan.FORECAST, new Log(current(log.entries()), log.progress()), LearningSettings.USUAL, List.of(), log.asOf());
    }

    private static List<Entry> current(List<Entry> all) {
        Set<String> replaced = all.stream().map(Entry::replaces).flatMap(Optional::stream).collect(Collectors.toSet());
        return all.stream().filter(entry -> !replaced.contains(entry.id())).toList();
    }

    /** FROZEN: the file is what its maker makes of the plan. */
    @Test
    void the_log_is_made_again_to_the_last_sign() throws IOException {
        assertEquals(DemoLogMaker.text(DemoPlan.log()), Files.readString(FILE));
    }

    /** LAW: people, tasks and areas are those of the plan, days are worked and before the day of the demonstration, nobody has a day of over 12 h. */
    @Test
    void every_entry_fits_the_plan() {
        Set<String> tasks = DemoPlan.FORECAST.tasks().stream().map(Forecast.Task::id).collect(Collectors.toSet());
        Set<String> people = DemoPlan.CAMPAIGN.workers().stream().map(each -> each.code()).collect(Collectors.toSet());
        Set<String> areas = DemoPlan.CAMPAIGN.areas().stream().map(each -> each.code()).collect(Collectors.toSet());
        Map<String, Double> days = new HashMap<>();
        for (Entry entry : log.entries()) {
            assertTrue(tasks.contains(entry.task()) && people.contains(entry.worker()) && areas.contains(entry.area()), entry.toString());
            assertTrue(entry.on().isBefore(log.asOf()) && !entry.on().isBefore(LocalDate.of(2027, 3, 1)), entry.toString());
            assertFalse(Set.of(LocalDate.of(2027, 3, 26), LocalDate.of(2027, 3, 29)).contains(entry.on()), "a holiday");
            days.merge(entry.worker() + entry.on(), entry.hours(), Double::sum);
        }
        days.forEach((day, hours) -> assertTrue(hours <= 12, day + ": " + hours));
        assertEquals(log.entries().size(), log.entries().stream().map(Entry::id).distinct().count());
    }

    /** BY HAND: planted 1.3 for setting up and 0.85 at the pool edge; both within their 8-in-10 range, and proposed. */
    @Test
    void what_was_planted_is_found() {
        LearntFactor slow = learnt.factor(FactorKind.HOURS, "setting up").orElseThrow();
        assertTrue(slow.low() <= 1.3 && 1.3 <= slow.high() && slow.proposed(), slow.words());
        LearntFactor cool = learnt.factor(FactorKind.RATE, "pool-edge").orElseThrow();
        assertTrue(cool.low() <= 0.85 && 0.85 <= cool.high() && cool.proposed(), cool.words());
    }

    /** BY HAND: the bridge has 1.9 times its rate from 30 March; the alarm comes in that week, and nothing else is in alarm. */
    @Test
    void the_bridge_raises_an_alarm_in_the_fifth_week() {
        List<DriftChart> alarms = new ArrayList<>(learnt.drift());
        alarms.removeIf(chart -> !chart.alarm());
        assertEquals(List.of("bridge"), alarms.stream().map(DriftChart::of).toList());
        DriftChart bridge = alarms.get(0);
        LocalDate first = bridge.points().stream().filter(DriftChart.Point::highAlarm).findFirst().orElseThrow().on();
        assertTrue(!first.isBefore(LocalDate.of(2027, 3, 29)) && first.isBefore(LocalDate.of(2027, 4, 5)), first.toString());
        assertEquals(Optional.of(LocalDate.of(2027, 3, 30)), bridge.changedOn());
    }

    /** LAW: doses of people, areas and tasks are each the whole; hours factor times rate factor is the dose factor, to the last digits. */
    @Test
    void what_was_received_adds_up() {
        assertEquals(learnt.received().usv(), learnt.received().byWorker().values().stream().mapToDouble(Double::doubleValue).sum(), 1e-9);
        assertEquals(learnt.received().usv(), learnt.received().byArea().values().stream().mapToDouble(Double::doubleValue).sum(), 1e-9);
        assertEquals(learnt.received().usv(), learnt.dose().actual(), 1e-9);
        learnt.tasks().forEach(task -> task.doseFactor().ifPresent(dose ->
            assertEquals(dose, task.hoursFactor().orElseThrow() * task.rateFactor().orElseThrow(), 1e-12 * dose)));
    }
}
