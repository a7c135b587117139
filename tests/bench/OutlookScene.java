package bench;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Area;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Constraint;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Driver;
import kerfbook.campaign.Need;
import kerfbook.campaign.Resource;
import kerfbook.campaign.Routine;
import kerfbook.campaign.RoutineTask;
import kerfbook.campaign.Scope;
import kerfbook.campaign.Settings;
import kerfbook.campaign.Shape;
import kerfbook.campaign.Staff;
import kerfbook.campaign.Step;
import kerfbook.campaign.Survey;
import kerfbook.campaign.Target;
import kerfbook.campaign.Worker;
import kerfbook.campaign.WorkingCalendar;
import kerfbook.cutting.Medium;
import kerfbook.cutting.Technique;
import kerfbook.cutting.Wear;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;

/**
 * A large campaign made for timing: every component has four tasks (position, cut, lift, pack) of two steps each, eight crews of people in a row of
 * areas known by surveys, five components at a time.
 */
final class OutlookScene {
    private static final LocalDate MONDAY = LocalDate.of(2027, 3, 1);
    private static final Origin MADE = new Origin("made for timing", Origin.Status.INVENTED);
    private static final int AREAS = 6;
    private static final List<String> ROLES = List.of("operator", "rigger", "packer", "watch", "handler");

    private OutlookScene() { }

    static Campaign of(int tasks, int people) {
        List<Area> areas = new ArrayList<>();
        List<Survey> surveys = new ArrayList<>();
        for (int i = 0; i < AREAS; i++) {
            areas.add(new Area("area" + i, "area " + i, 0.1, Optional.empty(), Area.RateFrom.SURVEY, Optional.empty(), ""));
            surveys.add(new Survey("s" + i, "area" + i, MONDAY, MONDAY.plusYears(3), "counter", Survey.Rule.MEAN,
                List.of(new Survey.Point("p", 5 + 3 * i, Optional.empty())), List.of(), Optional.of(1.2 + 0.05 * i), ""));
        }
        List<Technique> techniques = new ArrayList<>();
        List<Routine> routines = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            techniques.add(new Technique("t" + i, "technique " + i, Medium.WATER, List.of(), 1, 300, Optional.of(new Likely(40 + i, 60 + 3 * i, 100)),
                List.of(), Likely.exactly(2), Wear.unknown(), "", MADE));
            routines.add(new Routine("r" + i, "routine " + i, Routine.Applies.COMPONENT, Optional.of("t" + i), List.of(
                task("position", List.of(), i, step("hang", Driver.COMPONENT, 0.2, "rigger", 0), step("align", Driver.COMPONENT, 0.1, "operator", 1)),
                task("cut", List.of("position"), i, step("start", Driver.CUT, 0.1, "operator", 1), step("on", Driver.TOOL_ON_HOUR, 0.5, "operator", 2)),
                task("lift", List.of("cut"), i, step("sling", Driver.PIECE, 0.1, "rigger", 0), step("lift", Driver.PIECE, 0.1, "handler", 3)),
                task("pack", List.of("lift"), i, step("fill", Driver.PACKAGE, 0.3, "packer", 4), step("measure", Driver.PACKAGE, 0.2, "watch", 5)))));
        }
        List<Component> components = new ArrayList<>();
        List<Cut> cuts = new ArrayList<>();
        for (int i = 0; i < tasks / 4; i++) {
            Shape shape = new Shape(Shape.Kind.PLATE, Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(600.0), Optional.of(1000.0),
                Optional.of(100.0), Optional.empty(), Optional.empty());
            components.add(new Component("c" + i, "component " + i, shape, "stainless steel", 8000, 480, 3000, 3, 1, Optional.empty(), List.of("r" + i % 4),
                List.of(), ""));
            cuts.add(new Cut("cut" + i, "c" + i, "across", "t" + i % 4, 2, 600, 40 + i % 7 * 5));
        }
        List<Worker> workers = new ArrayList<>();
        for (int i = 0; i < people; i++) {
            List<Worker.YearDose> years = new ArrayList<>();
            for (int year = 2023; year <= 2027; year++) {
                years.add(new Worker.YearDose(year, 0));
            }
            workers.add(new Worker("w" + i, "worker " + i, List.of(ROLES.get(i % ROLES.size())), Optional.empty(), years, List.of(), ""));
        }
        Settings settings = new Settings("large", "", true, MONDAY, "eu", new WorkingCalendar(List.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY,
            DayOfWeek.WEDNESDAY, DayOfWeek.THURSDAY, DayOfWeek.FRIDAY), 1, 6, List.of()));
        return new Campaign(Campaign.FORMAT, settings, List.of(), areas, List.of(), List.of(), surveys, techniques, routines, components, cuts, List.of(),
            List.of(), workers, List.of(), List.of(new Resource("bay", "bays", 2, Optional.empty())),
            List.of(new Target("all", Scope.CAMPAIGN, Optional.empty(), 6_000, MONDAY, "made for timing")),
            List.of(new Constraint("person", Scope.CAMPAIGN, Optional.empty(), 400, MONDAY, "made for timing")));
    }

    private static RoutineTask task(String code, List<String> after, int i, Step... steps) {
        return new RoutineTask(code, code, code + " " + i % 2, after, 0, code.equals("pack"), Optional.empty(), Optional.empty(),
            code.equals("pack") ? List.of() : List.of(new Need("bay", 1)), List.of(steps));
    }

    private static Step step(String code, Driver driver, double hours, String role, int area) {
        return new Step(code, code, driver, Optional.empty(), new Likely(hours * 0.6, hours, hours * (1.8 + 0.1 * area)), Step.Mode.REMOTE, false, List.of(),
            List.of(new Staff(role, 2, "area" + area, 0.8), new Staff("watch", 0.5, "area" + (area + 1) % AREAS, 0.5)), MADE);
    }
}
