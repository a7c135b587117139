package kerfbook.outlook;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import kerfbook.campaign.Driver;
import kerfbook.campaign.Price;
import kerfbook.estimate.CostForecast;
import kerfbook.estimate.Resolved;

/** What moves cost and what is used up beside the hours of people. */
final class Costs {
    /** An amount that moves with a factor. */
    record Moved(double amount, int factor) { }

    /** Days from a technique's first task to its last, each at a price. */
    record Days(int technique, double price) { }

    /** Something used up in the whole campaign. */
    record Used(String what, String unit, List<Moved> parts) { }

    final boolean priced;
    /** Prices of the plan itself: what falls due once is paid when the work has begun. */
    private final Set<String> paid;
    double once;
    final List<Moved> moved = new ArrayList<>();
    final List<Days> days = new ArrayList<>();
    final List<Used> used = new ArrayList<>();

    Costs(Model model) {
        Resolved resolved = model.resolved;
        Map<String, Double> left = left(model);
        paid = model.plan.prices().stream().map(Price::code).collect(Collectors.toSet());
        priced = resolved.forecast().cost().isPresent();
        resolved.forecast().cost().ifPresent(cost -> cost.lines().forEach(line -> add(model, line, left)));
        use(model, Driver.TOOL_ON_HOUR, "tool-on hours", "h", left);
        use(model, Driver.TOOL_CHANGE, "tools", "", left);
        use(model, Driver.KG_ABRASIVE, "abrasive", "kg", left);
        use(model, Driver.FILTER, "filters", "", left);
        use(model, Driver.DRUM, "drums", "", left);
    }

    private void add(Model model, CostForecast.Line line, Map<String, Double> left) {
        Driver driver = driver(line.what());
        if (driver != null) {
            Resolved.Part part = model.resolved.parts(driver, line.component().orElseThrow()).stream()
                .filter(each -> each.technique().equals(line.of().orElseThrow())).findFirst().orElseThrow();
            moved.add(new Moved(line.amount() * left.get(line.component().get() + "/" + part.technique()), model.spreads.used(driver, part)));
        } else if (line.what() == Price.What.WORKING_DAY) {
            days.add(new Days(model.techniques.indexOf(line.of().orElseThrow()), line.each()));
        } else if (line.what() == Price.What.PACKAGE) {
            once += line.amount() * left.get(line.component().orElseThrow());
        } else if (line.what() != Price.What.LABOUR_HOUR) {
            once += model.state.asOf().isEmpty() || !paid.contains(line.price()) ? line.amount() : 0;
        }
    }

    private void use(Model model, Driver driver, String what, String unit, Map<String, Double> left) {
        List<Moved> parts = new ArrayList<>();
        for (String component : model.components) {
            model.resolved.parts(driver, component).forEach(part -> parts.add(
                new Moved(part.mean() * left.get(component + "/" + part.technique()), model.spreads.used(driver, part))));
        }
        if (!parts.isEmpty()) {
            used.add(new Used(what, unit, parts));
        }
    }

    private static Driver driver(Price.What what) {
        return switch (what) {
            case TOOL_ON_HOUR -> Driver.TOOL_ON_HOUR;
            case TOOL_CHANGE -> Driver.TOOL_CHANGE;
            case KG_ABRASIVE -> Driver.KG_ABRASIVE;
            case FILTER -> Driver.FILTER;
            case DRUM -> Driver.DRUM;
            default -> null;
        };
    }

    /** Part of each component, and of each technique's work on it, still to do, weighted by the planned hours of its tasks. */
    private static Map<String, Double> left(Model model) {
        Map<String, double[]> hours = new LinkedHashMap<>();
        for (int i = 0; i < model.works.length; i++) {
            Resolved.Task task = model.resolved.tasks().get(i);
            if (task.forecast().component().isPresent()) {
                double remaining = model.works[i].remaining;
                String component = task.forecast().component().get();
                add(hours, component, task.forecast().hours(), remaining);
                for (String technique : model.techniques) {
                    if (task.technique().isEmpty() || task.technique().get().equals(technique)) {
                        double toolOn = task.technique().isEmpty() ? toolOn(task) : task.forecast().hours();
                        add(hours, component + "/" + technique, toolOn, remaining);
                    }
                }
            }
        }
        Map<String, Double> left = new LinkedHashMap<>();
        for (String component : model.components) {
            double all = part(hours.get(component), 1);
            left.put(component, all);
            model.techniques.forEach(technique -> left.put(component + "/" + technique, part(hours.get(component + "/" + technique), all)));
        }
        return left;
    }

    private static double toolOn(Resolved.Task task) {
        return task.steps().stream().filter(step -> step.dose().driver() == Driver.TOOL_ON_HOUR).mapToDouble(step -> step.dose().hours()).sum();
    }

    private static void add(Map<String, double[]> hours, String of, double planned, double remaining) {
        double[] sums = hours.computeIfAbsent(of, none -> new double[2]);
        sums[0] += planned;
        sums[1] += planned * remaining;
    }

    private static double part(double[] sums, double otherwise) {
        return sums == null || !(sums[0] > 0) ? otherwise : sums[1] / sums[0];
    }
}
