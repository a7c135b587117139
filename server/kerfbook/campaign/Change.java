package kerfbook.campaign;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * One change that an option makes to the plan. Which fields it takes depends on its kind; all others are left out.
 *
 * @param component    the component that is cut or waits otherwise; with crew: only in its tasks
 * @param cuts         codes of its cuts that are made with the other technique; empty: all
 * @param routine      the routine of that technique; left out: the campaign's first
 * @param after        what the component waits for instead; empty: for nothing
 * @param waterLevelMm level against the normal water surface
 * @param shield       a shield that stands in addition, or in place of one with the same code; its planes give its thickness
 * @param people       number of people of the role at a time, in every step it works in; in place of members
 * @param members      who fills the role, and in what proportion
 * @param years        whole years by which the start is moved
 * @param filterM3PerH flow through the pool's filter
 * @param source       the source that is cleaned before work starts
 * @param factor       what is loose on it is divided by this
 * @param share        part of the source that is loose; left out: all of it
 * @param cost         paid once for the change, in the currency of the campaign's prices; left out: not known
 * @param costPerYear  cost of waiting a year
 */
public record Change(Kind kind, Optional<String> component, List<String> cuts, Optional<String> technique, Optional<String> routine, List<String> after,
                     Optional<Double> waterLevelMm, Optional<Shield> shield, Optional<String> role, Optional<String> group, Optional<Double> people,
                     List<RosterEntry.Member> members, Optional<Integer> years, Optional<Double> filterM3PerH, Optional<String> source,
                     Optional<Double> factor, Optional<Double> share, Optional<Double> cost, Optional<Double> costPerYear) {
    private static final double DEAREST = 1e12;

    /** What is changed, and which fields say how. */
    public enum Kind {
        TECHNIQUE(Set.of("component", "technique"), Set.of("cuts", "routine")),
        ORDER(Set.of("component"), Set.of("after")),
        WATER_LEVEL(Set.of("water_level_mm"), Set.of()),
        SHIELD(Set.of("shield"), Set.of()),
        CREW(Set.of("role"), Set.of("group", "component", "people", "members")),
        WAIT(Set.of("years"), Set.of("cost_per_year")),
        FILTER(Set.of("filter_m3_per_h"), Set.of()),
        DECONTAMINATION(Set.of("source", "factor"), Set.of("share"));

        private final Set<String> needs;
        private final Set<String> takes;

        Kind(Set<String> needs, Set<String> takes) {
            this.needs = needs;
            this.takes = takes;
        }

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    public Change {
        Require.present(kind, "kind");
        component = code(component, "component");
        cuts = Require.distinct(Require.list(cuts, "cuts"), "cuts");
        technique = code(technique, "technique");
        routine = code(routine, "routine");
        after = Require.distinct(Require.list(after, "after"), "after");
        waterLevelMm = number(waterLevelMm, -50_000, 20_000, "water_level_mm", "mm");
        shield = Require.optional(shield);
        role = code(role, "role");
        group = Require.optional(group);
        group.ifPresent(given -> Require.name(given, "group"));
        people = Require.optional(people);
        people.ifPresent(given -> Require.positive(given, 1_000, "people", ""));
        members = Require.list(members, "members");
        Require.distinct(members.stream().map(RosterEntry.Member::worker).toList(), "members");
        years = Require.optional(years);
        years.ifPresent(given -> Require.within(given, 1, 100, "years"));
        filterM3PerH = number(filterM3PerH, 0, 1e6, "filter_m3_per_h", "m³/h");
        source = code(source, "source");
        factor = number(factor, 1, 1e6, "factor", "");
        share = Require.optional(share);
        share.ifPresent(given -> Require.positive(given, 1, "share", ""));
        cost = number(cost, 0, DEAREST, "cost", "");
        costPerYear = number(costPerYear, 0, DEAREST, "cost_per_year", "");
        requireFields(kind, given(component, cuts, technique, routine, after, waterLevelMm, shield, role, group, people, members, years, filterM3PerH, source,
            factor, share, costPerYear));
        if (kind == Kind.CREW && people.isPresent() != members.isEmpty()) {
            throw new Invalid("members", "Give either the number of people or who they are.");
        }
        if (kind == Kind.CREW && people.isPresent() && component.isPresent()) {
            throw new Invalid("component", "does not go with a number of people: routines serve all components. Give members, or leave it out.");
        }
    }

    /** What it costs as far as the planner says: paid once and for the years of waiting; empty where nothing is said. */
    public Optional<Double> price() {
        if (cost.isEmpty() && costPerYear.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(cost.orElse(0.0) + costPerYear.orElse(0.0) * years.orElse(0));
    }

    private static void requireFields(Kind kind, Map<String, Boolean> given) {
        for (Map.Entry<String, Boolean> field : given.entrySet()) {
            if (kind.needs.contains(field.getKey()) && !field.getValue()) {
                throw new Invalid(field.getKey(), "is missing: a change of the kind " + kind + " needs it.");
            }
            if (field.getValue() && !kind.needs.contains(field.getKey()) && !kind.takes.contains(field.getKey())) {
                throw new Invalid(field.getKey(), "does not go with a change of the kind " + kind + ". Leave it out.");
            }
        }
    }

    private static Map<String, Boolean> given(Object... values) {
        String[] names = {"component", "cuts", "technique", "routine", "after", "water_level_mm", "shield", "role", "group", "people", "members", "years",
            "filter_m3_per_h", "source", "factor", "share", "cost_per_year"};
        Map<String, Boolean> given = new LinkedHashMap<>();
        for (int i = 0; i < names.length; i++) {
            given.put(names[i], values[i] instanceof List<?> list ? !list.isEmpty() : ((Optional<?>) values[i]).isPresent());
        }
        return given;
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private static Optional<String> code(Optional<String> value, String field) {
        Optional<String> given = Require.optional(value);
        given.ifPresent(code -> Require.code(code, field));
        return given;
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private static Optional<Double> number(Optional<Double> value, double low, double high, String field, String unit) {
        Optional<Double> given = Require.optional(value);
        given.ifPresent(number -> Require.within(number, low, high, field, unit));
        return given;
    }
}
