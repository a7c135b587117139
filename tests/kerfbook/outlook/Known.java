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
import kerfbook.campaign.Driver;
import kerfbook.campaign.ManualTask;
import kerfbook.campaign.Resource;
import kerfbook.campaign.Settings;
import kerfbook.campaign.Staff;
import kerfbook.campaign.Step;
import kerfbook.campaign.Survey;
import kerfbook.campaign.Target;
import kerfbook.campaign.Uncertainty;
import kerfbook.campaign.Worker;
import kerfbook.campaign.WorkingCalendar;
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
    double gsd = 1.3;
    Optional<Uncertainty> uncertainty = Optional.empty();

    Known task(String code, Likely hours, String... after) {
        Step step = new Step("do", "do", Driver.COUNT, Optional.of(1.0), hours, Step.Mode.REMOTE, false, List.of(), List.of(new Staff("hand", 1, "edge", 1)), MADE);
        tasks.add(new ManualTask(code, code, "work", Optional.empty(), Arrays.stream(after).map(each -> "manual/" + each).toList(), List.of(), 0, Optional.empty(), List.of(step)));
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
        return new Campaign(Campaign.FORMAT, settings, List.of(), List.of(edge), List.of(), List.of(), List.of(survey), List.of(), List.of(), List.of(), List.of(), tasks,
            List.of(), List.of(new Worker("w", "w", List.of("hand"), Optional.empty(), years, List.of(), "")), List.of(), resources, List.<Target>of(), List.of());
    }

    Model model(State state) {
        return Model.of(campaign(), BasisTables.read(), "", state);
    }

    static Outlook run(Model model, long seed, int trials) {
        return Simulation.run(model, new Plan(seed, trials, 2), Progress.UNWATCHED);
    }
}
