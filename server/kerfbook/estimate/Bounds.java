package kerfbook.estimate;

import java.time.LocalDate;
import java.util.ArrayList;
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

    /** Of several constraints on the same thing: the latest that is valid at the start, or the first to become valid. */
    static List<Constraint> constraints(Campaign campaign) {
        return inForce(campaign.constraints(), campaign.settings().start(), each -> each.scope() + "/" + each.of().orElse(""), Constraint::validFrom);
    }

    /** The same for targets. */
    static List<Target> targets(Campaign campaign) {
        return inForce(campaign.targets(), campaign.settings().start(), each -> each.scope() + "/" + each.of().orElse(""), Target::validFrom);
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

    private static <T> List<T> inForce(List<T> all, LocalDate start, Function<T, String> what, Function<T, LocalDate> validFrom) {
        Map<String, T> chosen = new LinkedHashMap<>();
        for (T each : all) {
            chosen.merge(what.apply(each), each, (one, other) -> {
                LocalDate first = validFrom.apply(one);
                LocalDate second = validFrom.apply(other);
                if (first.isAfter(start) || second.isAfter(start)) {
                    return second.isBefore(first) ? other : one;
                }
                return second.isBefore(first) ? one : other;
            });
        }
        return new ArrayList<>(chosen.values());
    }
}
