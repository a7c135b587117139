package kerfbook.estimate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Source;
import kerfbook.exposure.RatePart;
import kerfbook.quantity.Incomplete;

/**
 * What the removal of each component costs at different times, by what stands: person-hours by area of the forecast, times the rate that everything in
 * place gives there on the day.
 *
 * @param components in the order in which the plan starts them
 * @param hours      of each, from the end of the one before it in the plan
 * @param needed     by component: those that tasks added by hand put before it
 * @param own        by component and time: dose from itself, background and what no removal takes away
 * @param from       by component, time and component: what that one adds as long as it stands in place
 */
public record RemovalWork(List<String> components, double[] hours, List<Set<String>> needed, double stepHours, double[][] own, double[][][] from) {
    private static final int MOST_TIMES = 41;
    private static final String BY_HAND = "manual/";

    /** @param forecast of the same campaign */
    public static RemovalWork of(Campaign campaign, Basis basis, Forecast forecast) {
        Making making = new Making(campaign, basis, forecast);
        return making.make();
    }

    private static final class Making {
        private final Campaign campaign;
        private final Workload work;
        private final AreaRates rates;
        private final Map<String, String> componentOf = new HashMap<>();
        private final Map<String, Forecast.Task> byId = new HashMap<>();
        private final Map<String, List<Forecast.Task>> tasksOf = new LinkedHashMap<>();
        private final Set<String> packed;

        Making(Campaign campaign, Basis basis, Forecast forecast) {
            this.campaign = campaign;
            work = new Workload(campaign);
            rates = new AreaRates(campaign, basis, work);
            packed = work.packedAtHour().keySet();
            for (Source source : campaign.sources()) {
                source.component().ifPresent(component -> componentOf.put(source.code(), component));
            }
            campaign.components().stream().map(Component::code).forEach(code -> componentOf.put(code, code));
            for (Forecast.Task task : forecast.tasks()) {
                byId.put(task.id(), task);
                task.component().ifPresent(code -> tasksOf.computeIfAbsent(code, none -> new ArrayList<>()).add(task));
            }
            if (tasksOf.size() < 2) {
                throw new Incomplete("components", "are too few to ask for an order. Add at least two with routines.");
            }
        }

        RemovalWork make() {
            List<String> order = tasksOf.keySet().stream().sorted(Comparator.comparingDouble(this::start).thenComparing(code -> code)).toList();
            int n = order.size();
            double[] hours = new double[n];
            double[] begins = new double[n];
            double end = start(order.get(0));
            for (int c = 0; c < n; c++) {
                double finish = tasksOf.get(order.get(c)).stream().mapToDouble(task -> task.startHour() + task.hours()).max().orElseThrow();
                hours[c] = Math.max(0, finish - end);
                begins[c] = finish - hours[c];
                end = Math.max(end, finish);
            }
            double first = start(order.get(0));
            double span = Math.max(1e-6, end - first);
            int times = (int) Math.max(2, Math.min(MOST_TIMES, Math.ceil(span / campaign.settings().calendar().hoursPerDay()) + 1));
            double step = span / (times - 1);
            double[][] own = new double[n][times];
            double[][][] from = new double[n][times][n];
            Map<String, Double> besides = besides(span);
            for (int c = 0; c < n; c++) {
                for (int g = 0; g < times; g++) {
                    fill(order, c, first + g * step, begins[c], hours[c], besides, own[c], from[c], g);
                }
            }
            return new RemovalWork(order, hours, order.stream().map(this::needed).toList(), step, own, from);
        }

        private double start(String component) {
            return tasksOf.get(component).stream().mapToDouble(Forecast.Task::startHour).min().orElseThrow();
        }

        /** Field hours of weekly tasks for each hour of removals, by area. */
        private Map<String, Double> besides(double span) {
            Map<String, Double> hours = new TreeMap<>();
            for (PlannedTask planned : work.tasks()) {
                if (planned.week().isPresent()) {
                    byId.get(planned.id()).steps().forEach(step -> step.lines().forEach(line -> {
                        if (line.rate().isPresent()) {
                            hours.merge(line.area(), line.fieldHours() / span, Double::sum);
                        }
                    }));
                }
            }
            return hours;
        }

        private void fill(List<String> order, int c, double at, double begins, double hours, Map<String, Double> besides, double[] own, double[][] from, int g) {
            String code = order.get(c);
            for (Forecast.Task task : tasksOf.get(code)) {
                double hour = at + task.startHour() - begins;
                for (Forecast.StepDose stepDose : task.steps()) {
                    for (Forecast.Line line : stepDose.lines()) {
                        if (line.rate().isEmpty()) {
                            own[g] += line.personUsv();
                        } else if (line.fieldHours() > 0) {
                            add(order, c, line.area(), line.fieldHours(), Math.max(0, hour), ownFactor(code, line.area(), task), own, from[g], g);
                        }
                    }
                }
            }
            besides.forEach((area, perHour) -> add(order, c, area, perHour * hours, Math.max(0, at + hours / 2), 1, own, from[g], g));
        }

        private void add(List<String> order, int c, String area, double fieldHours, double hour, double ownFactor, double[] own, double[] from, int g) {
            LocalDate day = work.calendar().startDay(hour);
            RateUsed rate = rates.at(area, day, 0);
            double rest = rate.usvPerH();
            for (Map.Entry<String, Double> part : parts(rate).entrySet()) {
                int place = order.indexOf(part.getKey());
                rest -= part.getValue();
                if (place == c) {
                    own[g] += fieldHours * part.getValue() * ownFactor;
                } else if (place >= 0 && packed.contains(part.getKey())) {
                    from[place] += fieldHours * part.getValue();
                } else {
                    own[g] += fieldHours * part.getValue();
                }
            }
            own[g] += fieldHours * Math.max(0, rest);
        }

        /** What the component itself gives while the task runs, in place, in the basket or on the hook, over what it gives in place. */
        private double ownFactor(String code, String area, Forecast.Task task) {
            double inPlace = parts(rates.at(area, task.start(), 0)).getOrDefault(code, 0.0);
            double then = parts(rates.at(area, task.start(), task.startHour())).getOrDefault(code, 0.0);
            return inPlace > 0 ? then / inPlace : 1;
        }

        /** What each component gives of a rate. */
        private Map<String, Double> parts(RateUsed rate) {
            Map<String, Double> parts = new TreeMap<>();
            for (RateUsed.Part part : rate.parts()) {
                if (componentOf.containsKey(part.source())) {
                    parts.merge(componentOf.get(part.source()), part.usvPerH(), Double::sum);
                }
            }
            for (RatePart part : rate.calculated()) {
                if (componentOf.containsKey(part.source())) {
                    parts.merge(componentOf.get(part.source()), part.usvPerH(), Double::sum);
                }
            }
            return parts;
        }

        /** Components whose work a task of this one waits for by way of tasks added by hand or of tasks of no component. */
        private Set<String> needed(String code) {
            Set<String> needed = new HashSet<>();
            for (Forecast.Task task : tasksOf.get(code)) {
                for (String before : task.after()) {
                    Forecast.Task other = byId.get(before);
                    boolean direct = other.component().isPresent() && !before.startsWith(BY_HAND) && !task.id().startsWith(BY_HAND);
                    if (!direct) {
                        back(other, code, needed, new HashSet<>());
                    }
                }
            }
            return needed;
        }

        private void back(Forecast.Task task, String code, Set<String> needed, Set<String> seen) {
            if (!seen.add(task.id())) {
                return;
            }
            if (task.component().isPresent() && !task.component().get().equals(code)) {
                needed.add(task.component().get());
            } else if (task.component().isEmpty()) {
                task.after().forEach(before -> back(byId.get(before), code, needed, seen));
            }
        }
    }
}
