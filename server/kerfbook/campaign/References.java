package kerfbook.campaign;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import kerfbook.cutting.Technique;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Invalid.Fault;

/** Holds the objects of a campaign against one another and lists everything that does not fit. */
final class References {
    private static final int MOST_FAULTS = 50;

    private final List<Fault> faults = new ArrayList<>();

    private References() { }

    static void check(Settings settings, List<DifficultyFactor> factors, List<Area> areas, List<Source> sources, List<Shield> shields,
                      List<Survey> surveys, List<Technique> techniques, List<TimedTrial> trials, List<Routine> routines,
                      List<PackageType> packages, List<Component> components, List<Cut> cuts, List<ManualTask> tasks,
                      List<FigureOverride> overrides, List<Worker> workers, List<RosterEntry> roster, List<Resource> resources,
                      List<Price> prices, List<Target> targets, List<Constraint> constraints, List<Option> options) {
        References check = new References();
        Set<String> factorCodes = check.codes(factors, "factors", DifficultyFactor::code);
        Set<String> areaCodes = check.codes(areas, "areas", Area::code);
        Set<String> sourceCodes = check.codes(sources, "sources", Source::code);
        check.codes(shields, "shields", Shield::code);
        check.codes(surveys, "surveys", Survey::code);
        Set<String> techniqueCodes = check.codes(techniques, "techniques", Technique::code);
        check.codes(trials, "trials", TimedTrial::code);
        Set<String> packageCodes = check.codes(packages, "packages", PackageType::code);
        Set<String> routineCodes = check.codes(routines, "routines", Routine::code);
        Set<String> componentCodes = check.codes(components, "components", Component::code);
        check.codes(cuts, "cuts", Cut::code);
        check.codes(tasks, "tasks", ManualTask::code);
        check.codes(overrides, "overrides", FigureOverride::code);
        Set<String> workerCodes = check.codes(workers, "workers", Worker::code);
        check.codes(roster, "roster", RosterEntry::code);
        Set<String> resourceCodes = check.codes(resources, "resources", Resource::code);
        check.codes(prices, "prices", Price::code);
        check.codes(targets, "targets", Target::code);
        check.codes(constraints, "constraints", Constraint::code);
        check.codes(options, "options", Option::code);
        Set<String> roles = workers.stream().flatMap(worker -> worker.roles().stream()).collect(Collectors.toSet());

        for (int i = 0; i < sources.size(); i++) {
            if (sources.get(i).body().isPresent() && componentCodes.contains(sources.get(i).code())) {
                check.fault("sources[" + i + "].code", "\"" + sources.get(i).code() + "\" is the code of a component too. A source with a body needs its own.");
            }
            check.known(sources.get(i).component(), componentCodes, "sources[" + i + "].component", "component");
        }
        check.surveys(surveys, areaCodes, sourceCodes);
        for (int i = 0; i < trials.size(); i++) {
            check.known(Optional.of(trials.get(i).technique()), techniqueCodes, "trials[" + i + "].technique", "technique");
        }
        for (int i = 0; i < routines.size(); i++) {
            Routine routine = routines.get(i);
            check.known(routine.technique(), techniqueCodes, "routines[" + i + "].technique", "technique");
            for (int k = 0; k < routine.tasks().size(); k++) {
                check.steps(routine.tasks().get(k).steps(), factorCodes, areaCodes, roles, "routines[" + i + "].tasks[" + k + "]");
                check.needs(routine.tasks().get(k).needs(), resources, resourceCodes, "routines[" + i + "].tasks[" + k + "]");
            }
        }
        check.components(components, routines, routineCodes, componentCodes);
        for (int i = 0; i < components.size(); i++) {
            check.known(components.get(i).packageType(), packageCodes, "components[" + i + "].package_type", "kind of package");
        }
        for (int i = 0; i < cuts.size(); i++) {
            check.known(Optional.of(cuts.get(i).component()), componentCodes, "cuts[" + i + "].component", "component");
            check.known(Optional.of(cuts.get(i).technique()), techniqueCodes, "cuts[" + i + "].technique", "technique");
        }
        for (int i = 0; i < tasks.size(); i++) {
            check.known(tasks.get(i).component(), componentCodes, "tasks[" + i + "].component", "component");
            check.steps(tasks.get(i).steps(), factorCodes, areaCodes, roles, "tasks[" + i + "]");
            check.needs(tasks.get(i).needs(), resources, resourceCodes, "tasks[" + i + "]");
        }
        for (int i = 0; i < roster.size(); i++) {
            check.roster(roster.get(i), workers, workerCodes, componentCodes, "roster[" + i + "]");
        }
        for (int i = 0; i < targets.size(); i++) {
            check.scope(targets.get(i).scope(), targets.get(i).of(), componentCodes, "targets[" + i + "].of");
        }
        for (int i = 0; i < constraints.size(); i++) {
            check.scope(constraints.get(i).scope(), constraints.get(i).of(), componentCodes, "constraints[" + i + "].of");
        }
        check.workers(workers, settings.start());
        check.resources(resources, workers);
        check.prices(prices, roles, techniqueCodes, packageCodes);
        OptionReferences named = new OptionReferences(check::fault, componentCodes, techniqueCodes, routineCodes, sourceCodes, workers, cuts, prices.isEmpty());
        for (int i = 0; i < options.size(); i++) {
            named.check(options.get(i), "options[" + i + "]");
        }
        settings.pool().flatMap(Pool::water).ifPresent(water -> check.releases(water, techniqueCodes));
        if (!check.faults.isEmpty()) {
            throw new Invalid(check.faults.size() <= MOST_FAULTS ? check.faults : check.faults.subList(0, MOST_FAULTS));
        }
    }

    private void surveys(List<Survey> surveys, Set<String> areas, Set<String> sources) {
        for (int i = 0; i < surveys.size(); i++) {
            known(Optional.of(surveys.get(i).area()), areas, "surveys[" + i + "].area", "area");
            for (int k = 0; k < surveys.get(i).shares().size(); k++) {
                known(Optional.of(surveys.get(i).shares().get(k).source()), sources, "surveys[" + i + "].shares[" + k + "].source", "source");
            }
        }
    }

    private void needs(List<Need> needs, List<Resource> resources, Set<String> codes, String at) {
        for (int i = 0; i < needs.size(); i++) {
            Need need = needs.get(i);
            known(Optional.of(need.resource()), codes, at + ".needs[" + i + "].resource", "resource");
            for (Resource resource : resources) {
                if (resource.code().equals(need.resource()) && resource.role().isPresent()) {
                    fault(at + ".needs[" + i + "].resource", "\"" + resource.code() + "\" counts the people of a role; tasks need them by their staff, not by name.");
                } else if (resource.code().equals(need.resource()) && need.amount() > resource.capacity()) {
                    fault(at + ".needs[" + i + "].amount", "is " + need.amount() + ", but there are only " + resource.capacity() + " of \"" + resource.code() + "\".");
                }
            }
        }
    }

    private void resources(List<Resource> resources, List<Worker> workers) {
        Set<String> roles = new HashSet<>();
        for (int i = 0; i < resources.size(); i++) {
            Resource resource = resources.get(i);
            if (resource.role().isPresent()) {
                String role = resource.role().get();
                long people = workers.stream().filter(worker -> worker.roles().contains(role)).count();
                if (people < resource.capacity()) {
                    fault("resources[" + i + "].capacity", "is " + resource.capacity() + ", but only " + people + " workers have the role \"" + role + "\".");
                }
                if (!roles.add(role)) {
                    fault("resources[" + i + "].role", "\"" + role + "\" is counted by another resource already.");
                }
            }
        }
    }

    private void prices(List<Price> prices, Set<String> roles, Set<String> techniques, Set<String> packages) {
        Set<String> meant = new HashSet<>();
        for (int i = 0; i < prices.size(); i++) {
            Price price = prices.get(i);
            Price first = prices.get(0);
            if (!price.currency().equals(first.currency())) {
                fault("prices[" + i + "].currency", "is " + price.currency() + ", but the first price is in " + first.currency() + ". Give all in one currency.");
            }
            if (price.priceYear() != first.priceYear()) {
                fault("prices[" + i + "].price_year", "is " + price.priceYear() + ", but the first price is of " + first.priceYear()
                    + ". Bring all to one year.");
            }
            if (price.what() == Price.What.LABOUR_HOUR) {
                known(price.of(), roles, "prices[" + i + "].of", "role");
            } else if (price.what() == Price.What.PACKAGE) {
                known(price.of(), packages, "prices[" + i + "].of", "kind of package");
            } else {
                known(price.of(), techniques, "prices[" + i + "].of", "technique");
            }
            if (price.what() != Price.What.FIXED && !meant.add(price.what() + "/" + price.of().orElse(""))) {
                fault("prices[" + i + "].of", "has a price for this already. Each thing has one price.");
            }
        }
    }

    private void releases(PoolWater water, Set<String> techniques) {
        for (int i = 0; i < water.releases().size(); i++) {
            known(Optional.of(water.releases().get(i).technique()), techniques, "settings.pool.water.releases[" + i + "].technique", "technique");
        }
    }

    private void steps(List<Step> steps, Set<String> factors, Set<String> areas, Set<String> roles, String at) {
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            for (int k = 0; k < step.factors().size(); k++) {
                known(Optional.of(step.factors().get(k)), factors, at + ".steps[" + i + "].factors[" + k + "]", "difficulty factor");
            }
            for (int k = 0; k < step.staff().size(); k++) {
                String staff = at + ".steps[" + i + "].staff[" + k + "]";
                known(Optional.of(step.staff().get(k).area()), areas, staff + ".area", "area");
                if (!roles.contains(step.staff().get(k).role())) {
                    fault(staff + ".role", "no worker has the role \"" + step.staff().get(k).role() + "\". Give it to somebody or use another role.");
                }
            }
        }
    }

    private void components(List<Component> components, List<Routine> routines, Set<String> routineCodes, Set<String> componentCodes) {
        Map<String, Routine> byCode = new HashMap<>();
        routines.forEach(routine -> byCode.put(routine.code(), routine));
        Map<String, List<String>> after = new LinkedHashMap<>();
        for (int i = 0; i < components.size(); i++) {
            Component component = components.get(i);
            after.put(component.code(), component.after());
            for (int k = 0; k < component.routines().size(); k++) {
                String field = "components[" + i + "].routines[" + k + "]";
                known(Optional.of(component.routines().get(k)), routineCodes, field, "routine");
                Routine routine = byCode.get(component.routines().get(k));
                if (routine != null && routine.applies() != Routine.Applies.COMPONENT) {
                    fault(field, "\"" + routine.code() + "\" applies " + routine.applies() + " the components, not to one of them.");
                }
            }
            for (int k = 0; k < component.after().size(); k++) {
                known(Optional.of(component.after().get(k)), componentCodes, "components[" + i + "].after[" + k + "]", "component");
            }
        }
        circle(after).ifPresent(code -> fault("components[" + place(components, code) + "].after",
            "\"" + code + "\" waits for itself. Take one link of the circle out."));
    }

    private static int place(List<Component> components, String code) {
        for (int i = 0; i < components.size(); i++) {
            if (components.get(i).code().equals(code)) {
                return i;
            }
        }
        throw new IllegalStateException("no component " + code);
    }

    /** A code that waits for itself by some way, if there is one. Linear: what waits for nothing left is taken out until nothing can be. */
    private static Optional<String> circle(Map<String, List<String>> after) {
        Map<String, Integer> waiting = new LinkedHashMap<>();
        Map<String, List<String>> freedBy = new HashMap<>();
        after.forEach((code, before) -> {
            List<String> known = before.stream().filter(after::containsKey).toList();
            waiting.put(code, known.size());
            known.forEach(each -> freedBy.computeIfAbsent(each, none -> new ArrayList<>()).add(code));
        });
        Deque<String> free = new ArrayDeque<>(waiting.keySet().stream().filter(code -> waiting.get(code) == 0).toList());
        while (!free.isEmpty()) {
            String done = free.pop();
            waiting.remove(done);
            for (String next : freedBy.getOrDefault(done, List.of())) {
                if (waiting.merge(next, -1, Integer::sum) == 0) {
                    free.push(next);
                }
            }
        }
        if (waiting.isEmpty()) {
            return Optional.empty();
        }
        Set<String> walked = new HashSet<>();
        String code = waiting.keySet().iterator().next();
        while (walked.add(code)) {
            code = after.get(code).stream().filter(waiting::containsKey).findFirst().orElseThrow();
        }
        return Optional.of(code);
    }

    private void roster(RosterEntry entry, List<Worker> workers, Set<String> workerCodes, Set<String> components, String at) {
        known(entry.component(), components, at + ".component", "component");
        for (int i = 0; i < entry.members().size(); i++) {
            String code = entry.members().get(i).worker();
            String field = at + ".members[" + i + "].worker";
            known(Optional.of(code), workerCodes, field, "worker");
            for (Worker worker : workers) {
                if (worker.code().equals(code) && !worker.roles().contains(entry.role())) {
                    fault(field, worker.code() + " does not have the role \"" + entry.role() + "\".");
                }
            }
        }
    }

    private void scope(Scope scope, Optional<String> of, Set<String> components, String field) {
        if (scope == Scope.COMPONENT) {
            known(of, components, field, "component");
        }
    }

    /** Five consecutive years can only be judged if the four before the start and the start's own are known. */
    private void workers(List<Worker> workers, LocalDate start) {
        for (int i = 0; i < workers.size(); i++) {
            Worker worker = workers.get(i);
            Set<Integer> known = worker.years().stream().map(Worker.YearDose::year).collect(Collectors.toSet());
            for (int year = Math.max(start.getYear() - 4, worker.exposedSince().orElse(0)); year <= start.getYear(); year++) {
                if (!known.contains(year)) {
                    fault("workers[" + i + "].years", "has no dose for " + year + ". Give it for " + (start.getYear() - 4) + " to " + start.getYear()
                        + "; write 0 only where it is known to be 0.");
                    break;
                }
            }
            if (known.stream().anyMatch(year -> year > start.getYear())
                || worker.months().stream().anyMatch(month -> month.month().isAfter(YearMonth.from(start)))) {
                fault("workers[" + i + "].years", "reaches past the start on " + start + ". Give only what was received before it.");
            }
        }
    }

    private <T> Set<String> codes(List<T> objects, String kind, Function<T, String> code) {
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < objects.size(); i++) {
            if (!seen.add(code.apply(objects.get(i)))) {
                fault(kind + "[" + i + "].code", "\"" + code.apply(objects.get(i)) + "\" is used twice. Each code stands once.");
            }
        }
        return seen;
    }

    private void known(Optional<String> code, Set<String> codes, String field, String what) {
        if (code.isPresent() && !codes.contains(code.get())) {
            fault(field, "there is no " + what + " \"" + code.get() + "\" in this campaign.");
        }
    }

    private void fault(String field, String detail) {
        faults.add(new Fault(field, detail));
    }
}
