package kerfbook.estimate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Driver;
import kerfbook.campaign.ManualTask;
import kerfbook.campaign.Routine;
import kerfbook.campaign.RoutineTask;
import kerfbook.campaign.Step;
import kerfbook.cutting.Technique;
import kerfbook.quantity.Invalid;
import kerfbook.schedule.Link;
import kerfbook.schedule.WorkCalendar;

/**
 * Derives the tasks of a campaign from components, cuts and routines.
 *
 * <p>Order: general BEFORE routines, one after the other; BEFORE routines of a technique; each component's routines in its own order, after
 * the components it waits for; AFTER routines of a technique; general AFTER routines. A task's lag counts after each task it waits for.
 */
final class TaskList {
    private static final long MOST_TASKS = 25_000;
    private static final long MOST_LINES = 300_000;

    private final Campaign campaign;
    private final Map<String, Technique> techniques = new HashMap<>();
    private final Map<String, Routine> routines = new LinkedHashMap<>();
    private final Map<String, List<Cut>> cutsOf = new HashMap<>();
    private final Map<String, PlannedTask> tasks = new LinkedHashMap<>();
    private final Map<String, List<String>> lastOfComponent = new LinkedHashMap<>();
    private final Map<String, List<String>> lastWithTechnique = new HashMap<>();
    private final Map<String, List<String>> setUpOf = new HashMap<>();
    private final Optional<WaterModel> water;
    private Quantities total = Quantities.EMPTY;

    private TaskList(Campaign campaign) {
        this.campaign = campaign;
        water = WaterModel.of(campaign);
        campaign.techniques().forEach(technique -> techniques.put(technique.code(), technique));
        campaign.routines().forEach(routine -> routines.put(routine.code(), routine));
        campaign.cuts().forEach(cut -> cutsOf.computeIfAbsent(cut.component(), none -> new ArrayList<>()).add(cut));
    }

    /** Everything but the weekly tasks, in the order described above; manual tasks last. */
    static List<PlannedTask> of(Campaign campaign) {
        TaskList list = new TaskList(campaign);
        list.requireFew();
        Coverage.check(campaign, list.techniques, list.routines, list.cutsOf);
        list.requireCountable();
        list.totals();
        list.before();
        list.components();
        list.after();
        list.manual();
        return List.copyOf(list.tasks.values());
    }

    /** The weekly tasks from the week of {@code firstHour} to the week of {@code lastHour}. */
    static List<PlannedTask> weekly(Campaign campaign, WorkCalendar calendar, double firstHour, double lastHour) {
        List<PlannedTask> weekly = new ArrayList<>();
        List<CampaignWeeks.Span> weeks = CampaignWeeks.between(calendar, firstHour, lastHour, campaign.settings().calendar().shiftsPerDay());
        for (int i = 0; i < campaign.routines().size(); i++) {
            Routine routine = campaign.routines().get(i);
            if (routine.applies() != Routine.Applies.WEEKLY) {
                continue;
            }
            for (CampaignWeeks.Span week : weeks) {
                String suffix = "/w" + (week.number() < 10 ? "0" : "") + week.number();
                for (int k = 0; k < routine.tasks().size(); k++) {
                    RoutineTask task = routine.tasks().get(k);
                    List<Link> after = task.after().stream().map(code -> new Link(routine.code() + "/" + code + suffix, task.lagHours())).toList();
                    weekly.add(new PlannedTask(routine.code() + "/" + task.code() + suffix, task.name() + ", week " + week.number(), task.group(),
                        Optional.empty(), Optional.of(routine.code()), "routines[" + i + "].tasks[" + k + "]", task.steps(), after,
                        week.firstHour(), Optional.of(new PlannedTask.Week(week.number(), week.shifts())), task.needs(), Quantities.EMPTY));
                }
            }
        }
        return weekly;
    }

    /** Figures that are each in their range can still make a quantity that is not: then the cut is named that does. */
    private void requireCountable() {
        Map<String, Component> components = new HashMap<>();
        campaign.components().forEach(component -> components.put(component.code(), component));
        Quantities sum = Quantities.EMPTY;
        for (int i = 0; i < campaign.cuts().size(); i++) {
            Cut cut = campaign.cuts().get(i);
            try {
                sum = sum.plus(Quantities.of(cut, components.get(cut.component()), techniques.get(cut.technique())));
            } catch (Invalid invalid) {
                throw new Invalid("cuts[" + i + "]", "makes a quantity that cannot be right with the technique \"" + cut.technique() + "\" ("
                    + invalid.faults().get(0).detail() + ") Check length, count, rate and wear.");
            }
        }
    }

    /** Work on a plan is bounded: so many tasks and staffed steps, counted before any is made. */
    private void requireFew() {
        long made = campaign.tasks().size();
        long staffed = 0;
        Map<String, Long> staffOf = new HashMap<>();
        campaign.routines().forEach(routine -> staffOf.put(routine.code(),
            routine.tasks().stream().flatMap(task -> task.steps().stream()).mapToLong(step -> 1 + step.staff().size()).sum()));
        for (Component component : campaign.components()) {
            for (String code : component.routines()) {
                made += routines.get(code).tasks().size();
                staffed += staffOf.get(code);
            }
        }
        if (made > MOST_TASKS || staffed > MOST_LINES) {
            throw new Invalid("components", "with their routines make " + made + " tasks and " + staffed + " staffed steps; at most " + MOST_TASKS + " and "
                + MOST_LINES + " are worked out. Divide the campaign.");
        }
    }

    private void totals() {
        for (Component component : campaign.components()) {
            total = total.plus(Quantities.of(component, cutsOf.getOrDefault(component.code(), List.of()), techniques));
        }
    }

    private void before() {
        List<String> general = List.of();
        for (Routine routine : applying(Routine.Applies.BEFORE, false)) {
            general = add(routine, general);
        }
        setUpOf.put("", general);
        for (Routine routine : applying(Routine.Applies.BEFORE, true)) {
            setUpOf.computeIfAbsent(routine.technique().orElseThrow(), none -> new ArrayList<>()).addAll(add(routine, general));
        }
    }

    private void components() {
        for (Component component : campaign.components()) {
            List<String> waitFor = new ArrayList<>(setUpOf.get(""));
            List<String> last = waitFor;
            for (String code : component.routines()) {
                Routine routine = routines.get(code);
                List<Cut> cuts = cutsOf.getOrDefault(component.code(), List.of());
                List<Cut> own = routine.technique().isEmpty() ? cuts
                    : cuts.stream().filter(cut -> cut.technique().equals(routine.technique().get())).toList();
                List<String> roots = new ArrayList<>(last);
                routine.technique().ifPresent(technique -> roots.addAll(setUpOf.getOrDefault(technique, List.of())));
                Quantities quantities = Quantities.of(component, own, techniques);
                boolean waits = routine.tasks().stream().anyMatch(task -> waits(task.steps()));
                last = add(routine, component.code() + "/" + code + "/", Optional.of(component.code()), roots,
                    waits ? quantities.waiting(waitFor(component, own)) : quantities);
                List<String> done = last;
                routine.technique().ifPresent(technique -> lastWithTechnique.computeIfAbsent(technique, none -> new ArrayList<>()).addAll(done));
            }
            lastOfComponent.put(component.code(), last);
        }
        for (Component component : campaign.components()) {
            if (!component.after().isEmpty()) {
                String prefix = component.code() + "/" + component.routines().get(0) + "/";
                List<Link> links = component.after().stream().flatMap(code -> lastOfComponent.get(code).stream()).map(Link::to).toList();
                for (RoutineTask task : routines.get(component.routines().get(0)).tasks()) {
                    if (task.after().isEmpty()) {
                        tasks.computeIfPresent(prefix + task.code(), (id, planned) -> planned.waitingFor(lagged(links, task.lagHours())));
                    }
                }
            }
        }
    }

    private void after() {
        List<String> everything = new ArrayList<>();
        lastOfComponent.values().forEach(everything::addAll);
        for (Routine routine : applying(Routine.Applies.AFTER, true)) {
            everything.addAll(add(routine, lastWithTechnique.get(routine.technique().orElseThrow())));
        }
        List<String> waitFor = everything;
        for (Routine routine : applying(Routine.Applies.AFTER, false)) {
            waitFor = add(routine, waitFor);
        }
    }

    private void manual() {
        Map<String, Component> components = new HashMap<>();
        campaign.components().forEach(component -> components.put(component.code(), component));
        WorkCalendar calendar = Timetable.calendar(campaign.settings());
        for (int i = 0; i < campaign.tasks().size(); i++) {
            ManualTask task = campaign.tasks().get(i);
            double notBefore = task.notBefore().map(calendar::hourOf).orElse(0.0);
            List<Link> after = task.after().stream().map(id -> new Link(id, task.lagHours())).toList();
            tasks.put(task.id(), new PlannedTask(task.id(), task.name(), task.group(), task.component(), Optional.empty(), "tasks[" + i + "]",
                task.steps(), after, notBefore, Optional.empty(), task.needs(), task.component().map(components::get).map(each -> counted(each, task.steps())).orElse(total)));
        }
        for (int i = 0; i < campaign.tasks().size(); i++) {
            ManualTask task = campaign.tasks().get(i);
            for (int k = 0; k < task.after().size(); k++) {
                requireTask(task.after().get(k), "tasks[" + i + "].after[" + k + "]");
            }
            for (int k = 0; k < task.before().size(); k++) {
                requireTask(task.before().get(k), "tasks[" + i + "].before[" + k + "]");
                tasks.computeIfPresent(task.before().get(k), (id, planned) -> planned.waitingFor(List.of(Link.to(task.id()))));
            }
        }
    }

    /** Routines that apply so and whose technique, if they have one, is used by some component. */
    private List<Routine> applying(Routine.Applies applies, boolean ofTechnique) {
        return routines.values().stream().filter(routine -> routine.applies() == applies && routine.technique().isPresent() == ofTechnique)
            .filter(routine -> routine.technique().isEmpty() || campaign.cuts().stream().anyMatch(cut -> cut.technique().equals(routine.technique().get())))
            .toList();
    }

    private List<String> add(Routine routine, List<String> waitFor) {
        Quantities quantities = total;
        if (routine.technique().isPresent()) {
            quantities = Quantities.EMPTY;
            for (Component component : campaign.components()) {
                List<Cut> own = cutsOf.getOrDefault(component.code(), List.of()).stream()
                    .filter(cut -> cut.technique().equals(routine.technique().get())).toList();
                if (!own.isEmpty()) {
                    quantities = quantities.plus(Quantities.of(component, own, techniques));
                }
            }
        }
        return add(routine, routine.code() + "/", Optional.empty(), waitFor, quantities);
    }

    /** Adds the routine's tasks and tells which of them nothing else in the routine waits for. */
    private List<String> add(Routine routine, String prefix, Optional<String> component, List<String> waitFor, Quantities quantities) {
        int index = campaign.routines().indexOf(routine);
        for (int i = 0; i < routine.tasks().size(); i++) {
            RoutineTask task = routine.tasks().get(i);
            List<Link> after = task.after().isEmpty() ? lagged(waitFor.stream().map(Link::to).toList(), task.lagHours())
                : task.after().stream().map(code -> new Link(prefix + code, task.lagHours())).toList();
            PlannedTask planned = new PlannedTask(prefix + task.code(), task.name(), task.group(), component, Optional.of(routine.code()),
                "routines[" + index + "].tasks[" + i + "]", task.steps(), after, task.packs(), task.freesComponent(),
                task.liftCoverMm(), 0, Optional.empty(), task.needs(), quantities);
            if (tasks.put(planned.id(), planned) != null) {
                throw new Invalid("routines[" + index + "].code", "makes the task id \"" + planned.id()
                    + "\" a second time. Give the routine or component another code.");
            }
        }
        return routine.last().stream().map(task -> prefix + task.code()).toList();
    }

    private static List<Link> lagged(List<Link> links, double lagHours) {
        return lagHours == 0 ? links : links.stream().map(link -> new Link(link.activity(), lagHours)).toList();
    }

    private Quantities counted(Component component, List<Step> steps) {
        List<Cut> cuts = cutsOf.getOrDefault(component.code(), List.of());
        Quantities quantities = Quantities.of(component, cuts, techniques);
        return waits(steps) ? quantities.waiting(waitFor(component, cuts)) : quantities;
    }

    private WaterModel.Wait waitFor(Component component, List<Cut> cuts) {
        return water.map(model -> model.waitFor(component, cuts, techniques))
            .orElse(new WaterModel.Wait(Optional.empty(), "the pool's water is not described (settings.pool.water)"));
    }

    private static boolean waits(List<Step> steps) {
        return steps.stream().anyMatch(step -> step.driver() == Driver.WAIT_HOUR);
    }

    private void requireTask(String id, String field) {
        if (!tasks.containsKey(id)) {
            throw new Invalid(field, "there is no task \"" + id + "\". Weekly tasks cannot be waited for.");
        }
    }
}
