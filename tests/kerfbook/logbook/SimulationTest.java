package kerfbook.logbook;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import kerfbook.campaign.Area;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Driver;
import kerfbook.campaign.ManualTask;
import kerfbook.campaign.Settings;
import kerfbook.campaign.Staff;
import kerfbook.campaign.Step;
import kerfbook.campaign.Survey;
import kerfbook.campaign.Worker;
import kerfbook.campaign.WorkingCalendar;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Forecast;
import kerfbook.outlook.Model;
import kerfbook.outlook.Outlook;
import kerfbook.outlook.Plan;
import kerfbook.outlook.Progress;
import kerfbook.outlook.Simulation;
import kerfbook.outlook.State;
import kerfbook.protection.DoseQuantity;
import kerfbook.protection.LimitRule;
import kerfbook.protection.Period;
import kerfbook.protection.RuleSet;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import org.junit.jupiter.api.Test;

/**
 * LAW: in a hundred invented campaigns with a planted bias, learning finds it within its stated spread, and the forecast of the rest then holds
 * its 8-in-10 range. The truth of each campaign is drawn by this test, not by the service.
 */
class SimulationTest {
    private static final int CAMPAIGNS = 100;
    private static final int TASKS = 24;
    private static final LocalDate START = LocalDate.of(2027, 3, 1);
    private static final double SLOWER = 1.4;
    private static final double COOLER = 0.6;
    private static final double TASK_SD = Math.log(LearningSettings.USUAL.taskGsd());
    private static final double SHIFT_SD = Math.log(LearningSettings.USUAL.shiftGsd());
    private static final double NINETEEN_IN_TWENTY = 1.959963984540054;
    private static final Origin GIVEN = new Origin("made for a test", Origin.Status.INVENTED);
    private static final RuleSet RULES = new RuleSet("test-rules", "test rules", List.of(
        new LimitRule("year", DoseQuantity.EFFECTIVE_DOSE, Period.CALENDAR_YEAR, 20_000, OptionalInt.empty(), GIVEN)), List.of(), List.of());
    private static final Basis BASIS = new Basis(Map.of(), Map.of("test-rules", RULES), List.of());
    /** Mean 12 h, and as wide as tasks really scatter here: standard deviation 4 h. */
    private static final Likely HOURS = new Likely(3, 10.5, 27);
    private static final Campaign CAMPAIGN = campaign();
    private static final Forecast FORECAST = Estimate.of(CAMPAIGN, BASIS, "test");

    /** What a trial found. */
    private record Found(boolean hours, boolean rate, boolean inside) { }

    @Test
    void a_planted_bias_is_found_and_the_rest_forecast_with_it() {
        int hours = 0;
        int rate = 0;
        int inside = 0;
        for (int seed = 0; seed < CAMPAIGNS; seed++) {
            Found found = trial(seed);
            hours += found.hours() ? 1 : 0;
            rate += found.rate() ? 1 : 0;
            inside += found.inside() ? 1 : 0;
        }
        String counts = "hours " + hours + ", rate " + rate + ", inside " + inside + " of " + CAMPAIGNS;
        System.out.println("learning: " + counts);
        assertTrue(hours >= 90 && rate >= 90, counts);
        assertTrue(inside >= 72 && inside <= 88, counts);
    }

    /** Works through a campaign; learns at half-way; holds the rest against the outlook of then. */
    private static Found trial(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Entry> entries = new ArrayList<>();
        List<TaskProgress> progress = new ArrayList<>();
        double total = 0;
        LocalDate day = START;
        LocalDate half = START;
        for (int i = 0; i < TASKS; i++) {
            Forecast.Task task = FORECAST.tasks().get(i);
            Forecast.Line line = task.steps().get(0).lines().get(0);
            double hours = line.fieldHours() * (task.group().equals("slow") ? SLOWER : 1) * noise(TASK_SD, random);
            for (double left = hours; left > 1e-9; left -= 6, day = day.plusDays(1)) {
                double spent = Math.min(6, left);
                double usv = spent * line.usvPerH() * (line.area().equals("cool") ? COOLER : 1) * noise(SHIFT_SD, random);
                total += usv;
                if (i < TASKS / 2) {
                    entries.add(new Entry("00000000-0000-4000-8000-" + String.format("%012d", entries.size()), "w1", task.id(), day, line.area(), spent, usv,
                        Optional.empty(), Optional.empty(), "", Instant.EPOCH.plusSeconds(2_000_000_000L), Optional.empty(), List.of()));
                }
            }
            if (i < TASKS / 2) {
                progress.add(new TaskProgress(task.id(), day, 1, true));
                half = day;
            }
        }
        Learnt learnt = Learning.of(CAMPAIGN, FORECAST, new Log(entries, progress), LearningSettings.USUAL, List.of(), half);
        State state = learnt.stateIfAccepted();
        Outlook outlook = Simulation.run(Model.of(CAMPAIGN, BASIS, "test", state), new Plan(seed, 1_000, 1), Progress.UNWATCHED);
        Calibration.Range range = Calibration.Range.of(outlook.personUsv().outcomes());
        return new Found(within(learnt, FactorKind.HOURS, "slow", SLOWER), within(learnt, FactorKind.RATE, "cool", COOLER), total >= range.low() && total <= range.high());
    }

    private static boolean within(Learnt learnt, FactorKind kind, String of, double planted) {
        LearntFactor found = learnt.factor(kind, of).orElseThrow();
        return Math.abs(found.logMean() - Math.log(planted)) <= NINETEEN_IN_TWENTY * found.logSd();
    }

    /** Two dozen tasks of 12 h by one person: every other one slow, every third in the cool area. */
    private static Campaign campaign() {
        Settings settings = new Settings("learning", "", true, START, "test-rules", new WorkingCalendar(List.of(DayOfWeek.values()), 1, 6, List.of()));
        List<ManualTask> tasks = new ArrayList<>();
        for (int i = 0; i < TASKS; i++) {
            Step step = new Step("work", "Work", Driver.COUNT, Optional.of(1.0), HOURS, Step.Mode.HANDS_ON, false, List.of(),
                List.of(new Staff("worker", 1, i % 3 == 0 ? "cool" : "warm", 1)), GIVEN);
            tasks.add(task("t" + i, i % 2 == 0 ? "slow" : "even", i == 0 ? List.of() : List.of("manual/t" + (i - 1)), step));
        }
        return new Campaign(Campaign.FORMAT, settings, List.of(), List.of(area("cool"), area("warm")), List.of(), List.of(survey("cool", 60), survey("warm", 40)), List.of(),
            List.of(), List.of(), List.of(), tasks, List.of(), List.of(worker()), List.of(), List.of(), List.of());
    }

    /** Scatter about a mean of 1, as a forecast that is right on average has it. */
    private static double noise(double sd, SplittableRandom random) {
        return Math.exp(sd * random.nextGaussian() - sd * sd / 2);
    }

    private static ManualTask task(String code, String group, List<String> after, Step step) {
        return new ManualTask(code, code, group, Optional.empty(), after, List.of(), 0, Optional.empty(), List.of(), List.of(step));
    }

    private static Area area(String code) {
        return new Area(code, code, 0, Optional.empty(), Area.RateFrom.SURVEY, Optional.empty(), "");
    }

    private static Survey survey(String area, double usvPerH) {
        return new Survey("s-" + area, area, START.minusDays(30), START.plusYears(1), "counter", Survey.Rule.MEAN,
            List.of(new Survey.Point("p", usvPerH, Optional.empty())), List.of(), Optional.empty(), "");
    }

    private static Worker worker() {
        List<Worker.YearDose> years = new ArrayList<>();
        for (int year = 2023; year <= 2027; year++) {
            years.add(new Worker.YearDose(year, 0));
        }
        return new Worker("w1", "w1", List.of("worker"), Optional.empty(), years, List.of(), "made for a test");
    }
}
