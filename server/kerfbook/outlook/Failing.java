package kerfbook.outlook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import kerfbook.campaign.Driver;
import kerfbook.estimate.Resolved;
import kerfbook.quantity.Invalid;

/** Faults as they are drawn: their number once a trial for each technique on each component, for all the steps that clear them. */
final class Failing {
    /** So many are searched for one by one; more than that in one place is a rate or an amount of work that cannot be right. */
    static final double MOST_EXPECTED = 10_000;

    /**
     * Faults of one technique on one component, or of what is left of the work there.
     *
     * @param mean   expected number
     * @param factor by which a trial's rate and tool-on hours are off
     * @param told   counted among the faults of the campaign: once for each technique and component
     */
    record Of(long text, int technique, double mean, int factor, boolean told) { }

    final List<Of> all = new ArrayList<>();
    /** Positions of the techniques whose faults are drawn. */
    final List<Integer> techniques = new ArrayList<>();
    private final Model model;
    private final Map<String, List<Resolved.Part>> parts = new HashMap<>();
    private final Map<String, Map<Double, Integer>> known = new LinkedHashMap<>();

    Failing(Model model) {
        this.model = model;
    }

    /** Which of them a step of the task clears, {@code remaining} of it still to do. */
    int[] clearedIn(Resolved.Task task, double remaining) {
        Stream<String> components = task.forecast().component().map(Stream::of).orElseGet(model.components::stream);
        return components.flatMapToInt(component -> parts.computeIfAbsent(component, code -> model.resolved.parts(Driver.FAULT, code)).stream()
            .filter(part -> task.technique().isEmpty() || task.technique().get().equals(part.technique()))
            .mapToInt(part -> place(component, part, remaining))).toArray();
    }

    private int place(String component, Resolved.Part part, double remaining) {
        String scope = component + "/" + part.technique();
        boolean first = !known.containsKey(scope);
        return known.computeIfAbsent(scope, none -> new HashMap<>()).computeIfAbsent(remaining, none -> {
            int technique = model.techniques.indexOf(part.technique());
            if (!(part.mean() <= MOST_EXPECTED)) {
                throw new Invalid("techniques[" + technique + "].faults_per_h", "makes " + Math.round(part.mean()) + " faults expected on " + component + "; at most "
                    + Math.round(MOST_EXPECTED) + " are drawn. Check the rate and the cuts.");
            }
            if (!techniques.contains(technique)) {
                techniques.add(technique);
            }
            all.add(new Of(Draw.text("faults/" + scope), technique, remaining * part.mean(), model.spreads.used(Driver.FAULT, part), first));
            return all.size() - 1;
        });
    }
}
