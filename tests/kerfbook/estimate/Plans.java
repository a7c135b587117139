package kerfbook.estimate;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import kerfbook.campaign.Area;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Constraint;
import kerfbook.campaign.Cut;
import kerfbook.campaign.DifficultyFactor;
import kerfbook.campaign.Driver;
import kerfbook.campaign.FigureOverride;
import kerfbook.campaign.ManualTask;
import kerfbook.campaign.Resource;
import kerfbook.campaign.RosterEntry;
import kerfbook.campaign.Routine;
import kerfbook.campaign.RoutineTask;
import kerfbook.campaign.Settings;
import kerfbook.campaign.Shape;
import kerfbook.campaign.Source;
import kerfbook.campaign.Staff;
import kerfbook.campaign.Step;
import kerfbook.campaign.Survey;
import kerfbook.campaign.Target;
import kerfbook.campaign.Worker;
import kerfbook.campaign.WorkingCalendar;
import kerfbook.cutting.Medium;
import kerfbook.cutting.Technique;
import kerfbook.cutting.Wear;
import kerfbook.protection.DoseQuantity;
import kerfbook.protection.LimitRule;
import kerfbook.protection.Period;
import kerfbook.protection.RuleSet;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.shielding.Nuclide;

/**
 * Small plans for tests, written so that their answers can be found by hand. The plan of {@link #new} has one plate, cut in 2 h by a saw
 * (2 cuts of 600 mm through 100 mm at 10 cm²/min), one routine "saw" with the tasks cut and pack, two areas, two workers.
 */
final class Plans {
    static final LocalDate MONDAY = LocalDate.of(2027, 3, 1);
    static final Origin GIVEN = new Origin("made for a test", Origin.Status.INVENTED);
    static final Nuclide COBALT = new Nuclide("Co-60", 1925.0, List.of());
    static final Nuclide SHORT = new Nuclide("Short-10", 10.0, List.of());
    static final RuleSet RULES = new RuleSet("test-rules", "test rules", List.of(
        new LimitRule("year", DoseQuantity.EFFECTIVE_DOSE, Period.CALENDAR_YEAR, 20_000, OptionalInt.empty(), GIVEN),
        new LimitRule("rolling", DoseQuantity.EFFECTIVE_DOSE, Period.ROLLING_12_MONTHS, 20_000, OptionalInt.empty(), GIVEN),
        new LimitRule("five", DoseQuantity.EFFECTIVE_DOSE, Period.ANY_FIVE_CONSECUTIVE_YEARS, 50_000, OptionalInt.empty(),
            GIVEN)), List.of(), List.of());
    static final Basis BASIS = new Basis(Map.of("Co-60", COBALT, "Short-10", SHORT), Map.of("test-rules", RULES), List.of());

    Settings settings = new Settings("plate", "", true, MONDAY, "test-rules",
        new WorkingCalendar(List.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY, DayOfWeek.WEDNESDAY, DayOfWeek.THURSDAY, DayOfWeek.FRIDAY), 1, 6, List.of()));
    final List<DifficultyFactor> factors = new ArrayList<>();
    final List<Area> areas = new ArrayList<>(List.of(area("edge", 1), area("cabin", 0.5)));
    final List<Source> sources = new ArrayList<>();
    final List<Survey> surveys = new ArrayList<>();
    final List<Technique> techniques = new ArrayList<>(List.of(saw("saw")));
    final List<Routine> routines = new ArrayList<>();
    final List<Component> components = new ArrayList<>(List.of(plate("plate")));
    final List<Cut> cuts = new ArrayList<>(List.of(new Cut("c1", "plate", "across", "saw", 2, 600, 100)));
    final List<ManualTask> tasks = new ArrayList<>();
    final List<FigureOverride> overrides = new ArrayList<>();
    final List<Worker> workers = new ArrayList<>(List.of(worker("w1", "operator", "packer"), worker("w2", "packer")));
    final List<RosterEntry> roster = new ArrayList<>();
    final List<Resource> resources = new ArrayList<>();
    final List<Target> targets = new ArrayList<>();
    final List<Constraint> constraints = new ArrayList<>();

    Plans() {
        routines.add(new Routine("saw", "sawing", Routine.Applies.COMPONENT, Optional.of("saw"), List.of(
            task("cut", List.of(), false, step("on", Driver.TOOL_ON_HOUR, 1, new Staff("operator", 1, "cabin", 1))),
            task("pack", List.of("cut"), true, step("lid", Driver.PACKAGE, 3, new Staff("packer", 2, "edge", 0.5))))));
    }

    Campaign campaign() {
        return new Campaign(Campaign.FORMAT, settings, factors, areas, sources, List.of(), surveys, techniques, routines, components, cuts, tasks, overrides,
            workers, roster, resources, targets, constraints);
    }

    Forecast forecast() {
        return Estimate.of(campaign(), BASIS, "test");
    }

    static Area area(String code, double background) {
        return new Area(code, code, background, Optional.empty(), Area.RateFrom.BACKGROUND, Optional.empty(), "");
    }

    /** Replaces an area by one that rests on its surveys. */
    void surveyed(String code, double background) {
        areas.replaceAll(area -> !area.code().equals(code) ? area
            : new Area(code, code, background, area.ceilingUsvPerH(), Area.RateFrom.SURVEY, Optional.empty(), ""));
    }

    static Technique saw(String code) {
        return new Technique(code, code, Medium.WATER, List.of(), 1, 300, Optional.of(Likely.exactly(10)), List.of(), Likely.exactly(2),
            Wear.unknown(), "", GIVEN);
    }

    static Component plate(String code, String... after) {
        Shape shape = new Shape(Shape.Kind.PLATE, Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(600.0), Optional.of(1000.0),
            Optional.of(100.0), Optional.empty(), Optional.empty());
        return new Component(code, code, shape, "stainless steel", 8000, 480, 3000, 3, 1, Optional.empty(), List.of("saw"), Arrays.asList(after), "");
    }

    static Worker worker(String code, String... roles) {
        List<Worker.YearDose> years = new ArrayList<>();
        for (int year = 2023; year <= 2027; year++) {
            years.add(new Worker.YearDose(year, 0));
        }
        return new Worker(code, code, List.of(roles), Optional.empty(), years, List.of(), "made for a test");
    }

    static RoutineTask task(String code, List<String> after, boolean packs, Step... steps) {
        return new RoutineTask(code, code, code.equals("pack") ? "packing" : "cutting", after, 0, packs, List.of(steps));
    }

    static Step step(String code, Driver driver, double hoursEach, Staff... staff) {
        return new Step(code, code, driver, Optional.empty(), Likely.exactly(hoursEach), Step.Mode.REMOTE, false, List.of(), List.of(staff), GIVEN);
    }

    static Step step(String code, double hours, List<String> factors, Staff... staff) {
        return new Step(code, code, Driver.COUNT, Optional.of(1.0), Likely.exactly(hours), Step.Mode.HANDS_ON, false, factors, List.of(staff), GIVEN);
    }

    static ManualTask manual(String code, double hours, List<String> after, List<String> before, Staff... staff) {
        return new ManualTask(code, code, "other", Optional.empty(), after, before, 0, Optional.empty(), List.of(step("do", hours, List.of(), staff)));
    }

    static Survey survey(String code, String area, LocalDate on, double usvPerH, Survey.SourceShare... shares) {
        return new Survey(code, area, on, on.plusYears(1), "counter", Survey.Rule.MEAN, List.of(new Survey.Point("p", usvPerH, Optional.empty())),
            List.of(shares), Optional.empty(), "");
    }

    static Source source(String code, String component, String nuclide) {
        return new Source(code, code, Optional.ofNullable(component), Optional.empty(), List.of(new Source.NuclideShare(nuclide, 1)), Optional.of(MONDAY));
    }

    static Forecast.Task task(Forecast forecast, String id) {
        return forecast.tasks().stream().filter(task -> task.id().equals(id)).findFirst().orElseThrow();
    }

    static Forecast.Person person(Forecast forecast, String worker) {
        return forecast.people().stream().filter(person -> person.worker().equals(worker)).findFirst().orElseThrow();
    }
}
