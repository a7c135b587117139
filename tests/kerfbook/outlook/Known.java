package kerfbook.outlook;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.campaign.Area;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Driver;
import kerfbook.campaign.FigureOverride;
import kerfbook.campaign.ManualTask;
import kerfbook.campaign.Resource;
import kerfbook.campaign.Routine;
import kerfbook.campaign.RoutineTask;
import kerfbook.campaign.Settings;
import kerfbook.campaign.Shape;
import kerfbook.campaign.Staff;
import kerfbook.campaign.Step;
import kerfbook.campaign.Survey;
import kerfbook.campaign.Target;
import kerfbook.campaign.Uncertainty;
import kerfbook.campaign.Worker;
import kerfbook.campaign.WorkingCalendar;
import kerfbook.cutting.Medium;
import kerfbook.cutting.Technique;
import kerfbook.cutting.Wear;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.tables.BasisTables;

/** Plans of a few tasks whose outcomes are known; one worker, one area of 10 µSv/h by a survey. */
final class Known {
    private static final LocalDate MONDAY = LocalDate.of(2027, 3, 1);
    private static final Origin MADE = new Origin("made for a test", Origin.Status.INVENTED);
    /** The crew's pace and the dose rate known. */
    static final State STEADY = new State(Optional.empty(), Map.of(), Map.of("work", new Factor(0, 0)), Map.of("edge", new Factor(0, 0)), Map.of(), Received.NOTHING);

    final List<ManualTask> tasks = new ArrayList<>();
    final List<Resource> resources = new ArrayList<>();
    final List<Technique> techniques = new ArrayList<>();
    final List<Routine> routines = new ArrayList<>();
    final List<Component> components = new ArrayList<>();
    final List<Cut> cuts = new ArrayList<>();
    final List<FigureOverride> overrides = new ArrayList<>();
    double gsd = 1.3;
    Optional<Uncertainty> uncertainty = Optional.empty();

    Known task(String code, Likely hours, String... after) {
        Step step = new Step("do", "do", Driver.COUNT, Optional.of(1.0), hours, Step.Mode.REMOTE, false, List.of(), List.of(new Staff("hand", 1, "edge", 1)), MADE);
        tasks.add(new ManualTask(code, code, "work", Optional.empty(), Arrays.stream(after).map(each -> "manual/" + each).toList(), List.of(), 0, Optional.empty(), List.of(step)));
        return this;
    }

    /** A saw of 10 cm² a minute that fails so often; each fault is cleared by one hand at the edge, for so long. */
    Known saw(Likely faultsPerH, Step... cleared) {
        techniques.add(new Technique("saw", "Saw", Medium.WATER, List.of(), 1, 300, Optional.of(Likely.exactly(10)), List.of(), Likely.exactly(2), Wear.unknown(), "",
            MADE, Optional.empty(), Optional.empty(), Optional.of(faultsPerH), Optional.empty()));
        List<Step> steps = new ArrayList<>(List.of(step("on", Driver.TOOL_ON_HOUR, Likely.exactly(1))));
        steps.addAll(List.of(cleared));
        routines.add(new Routine("saw", "Saw", Routine.Applies.COMPONENT, Optional.of("saw"), List.of(new RoutineTask("cut", "Cut", "work", List.of(), 0, false, steps))));
        return this;
    }

    static Step clearing(Likely hours) {
        return new Step("clear", "Clear a jam", Driver.FAULT, Optional.empty(), hours, Step.Mode.HANDS_ON, false, List.of(), List.of(new Staff("hand", 1, "edge", 1)), MADE);
    }

    static Step step(String code, Driver driver, Likely hours) {
        return new Step(code, code, driver, Optional.empty(), hours, Step.Mode.REMOTE, false, List.of(), List.of(), MADE);
    }

    /** A plate with cuts of 600 × 100 mm: an hour each with the saw. */
    Known plate(String code, int hoursCut) {
        Shape shape = new Shape(Shape.Kind.PLATE, Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(600.0), Optional.of(1000.0), Optional.of(100.0),
            Optional.empty(), Optional.empty());
        components.add(new Component(code, code, shape, "stainless steel", 8000, 480, 3000, 3, 1, Optional.empty(), List.of("saw"), List.of(), ""));
        cuts.add(new Cut(code, code, "across", "saw", hoursCut, 600, 100));
        return this;
    }

    Campaign campaign() {
        List<Worker.YearDose> years = new ArrayList<>();
        for (int year = 2023; year <= 2027; year++) {
            years.add(new Worker.YearDose(year, 0));
        }
        Area edge = new Area("edge", "edge", 0, Optional.empty(), Area.RateFrom.SURVEY, Optional.empty(), "");
        Survey survey = new Survey("s", "edge", MONDAY, MONDAY.plusYears(1), "counter", Survey.Rule.MEAN,
            List.of(new Survey.Point("p", 10, Optional.empty())), List.of(), Optional.of(gsd), "");
        Settings settings = new Settings("known", "", true, MONDAY, "eu", new WorkingCalendar(List.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY), 1, 6, List.of()),
            Optional.empty(), Optional.empty(), uncertainty);
        return new Campaign(Campaign.FORMAT, settings, List.of(), List.of(edge), List.of(), List.of(), List.of(survey), techniques, routines, components, cuts, tasks,
            overrides, List.of(new Worker("w", "w", List.of("hand"), Optional.empty(), years, List.of(), "")), List.of(), resources, List.<Target>of(), List.of());
    }

    Model model(State state) {
        return Model.of(campaign(), BasisTables.read(), "", state);
    }

    static Outlook run(Model model, long seed, int trials) {
        return Simulation.run(model, new Plan(seed, trials, 2), Progress.UNWATCHED);
    }
}
