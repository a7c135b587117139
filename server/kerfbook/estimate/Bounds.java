package kerfbook.estimate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Constraint;
import kerfbook.campaign.Scope;
import kerfbook.campaign.Target;
import kerfbook.quantity.Sum;

/** Targets and constraints that are in force, and what falls under them. */
final class Bounds {
    private Bounds() { }

    /**
     * Of several constraints on the same thing: the latest that is valid at the start, and every one that becomes valid before the finish; each
     * is held against the whole of the planned dose. If none is valid by then, the first to become so.
     */
    static List<Constraint> constraints(Campaign campaign, LocalDate finish) {
        return inForce(campaign.constraints(), campaign.settings().start(), finish, each -> each.scope() + "/" + each.of().orElse(""), Constraint::validFrom);
    }

    /** The same for targets. */
    static List<Target> targets(Campaign campaign, LocalDate finish) {
        return inForce(campaign.targets(), campaign.settings().start(), finish, each -> each.scope() + "/" + each.of().orElse(""), Target::validFrom);
    }

    static boolean covers(Scope scope, Optional<String> of, PlannedTask task) {
        return switch (scope) {
            case CAMPAIGN -> true;
            case GROUP -> of.orElseThrow().equals(task.group());
            case COMPONENT -> of.equals(task.component());
            case TASK -> of.orElseThrow().equals(task.id());
        };
    }

    /** A worker's planned dose under a constraint, in µSv. */
    static double usv(Constraint constraint, List<Ledger.Part> parts) {
        Sum sum = new Sum();
        parts.stream().filter(part -> covers(constraint.scope(), constraint.of(), part.task())).forEach(part -> sum.add(part.usv()));
        return sum.value();
    }

    private static <T> List<T> inForce(List<T> all, LocalDate start, LocalDate finish, Function<T, String> what, Function<T, LocalDate> validFrom) {
        Map<String, List<T>> versions = new LinkedHashMap<>();
        all.forEach(each -> versions.computeIfAbsent(what.apply(each), none -> new ArrayList<>()).add(each));
        List<T> chosen = new ArrayList<>();
        for (List<T> same : versions.values()) {
            same.sort(Comparator.comparing(validFrom));
            T atStart = same.get(0);
            for (T each : same) {
                atStart = validFrom.apply(each).isAfter(start) ? atStart : each;
            }
            chosen.add(atStart);
            for (T each : same) {
                if (each != atStart && validFrom.apply(each).isAfter(start) && !validFrom.apply(each).isAfter(finish)) {
                    chosen.add(each);
                }
            }
        }
        return chosen;
    }
}
