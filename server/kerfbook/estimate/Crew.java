package kerfbook.estimate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.RosterEntry;
import kerfbook.campaign.Worker;
import kerfbook.quantity.Incomplete;

/** Who fills a role in a task, and in what proportion. */
final class Crew {
    private static final double WHOLE = 1 + 1e-9;

    /** A worker's share of a role's hours; the shares of a role add up to 1. */
    record Share(String worker, double share) { }

    private final Campaign campaign;
    private record Place(String role, String task, String group, Optional<String> component) { }

    private final Map<Place, List<Share>> found = new HashMap<>();
    private final Set<String> named = new HashSet<>();

    Crew(Campaign campaign) {
        this.campaign = campaign;
        campaign.roster().forEach(entry -> entry.task().ifPresent(named::add));
    }

    /**
     * The most particular roster entry: task, then component and group, then component, then group, then role alone, else everybody with the role,
     * evenly.
     */
    List<Share> of(String role, PlannedTask task) {
        Place place = new Place(role, named.contains(task.id()) ? task.id() : "", task.group(), task.component());
        return found.computeIfAbsent(place, this::find);
    }

    /** Refuses a line that would need one person in two places: {@code people · share} above 1. */
    void requireEnough(double people, List<Share> shares, String role, String at) {
        for (Share share : shares) {
            if (people * share.share() > WHOLE) {
                throw new Incomplete(at, "needs " + people + " of the role \"" + role + "\" at a time, which asks " + share.worker() + " to be in "
                    + Math.round(people * share.share() * 100) / 100.0 + " places at once. Give the role to more people, or need fewer.");
            }
        }
    }

    private List<Share> find(Place place) {
        RosterEntry best = null;
        int bestRank = -1;
        for (RosterEntry entry : campaign.roster()) {
            boolean fits = entry.role().equals(place.role()) && (entry.group().isEmpty() || entry.group().get().equals(place.group()))
                && (entry.component().isEmpty() || entry.component().equals(place.component()))
                && (entry.task().isEmpty() || entry.task().get().equals(place.task()));
            int rank = (entry.task().isPresent() ? 4 : 0) + (entry.component().isPresent() ? 2 : 0) + (entry.group().isPresent() ? 1 : 0);
            if (fits && rank > bestRank) {
                best = entry;
                bestRank = rank;
            }
        }
        return best == null ? evenly(place.role()) : weighted(best);
    }

    private List<Share> evenly(String role) {
        List<Worker> all = campaign.workers().stream().filter(worker -> worker.roles().contains(role)).toList();
        return all.stream().map(worker -> new Share(worker.code(), 1.0 / all.size())).toList();
    }

    private static List<Share> weighted(RosterEntry entry) {
        double sum = entry.members().stream().mapToDouble(RosterEntry.Member::weight).sum();
        List<Share> shares = new ArrayList<>();
        entry.members().forEach(member -> shares.add(new Share(member.worker(), member.weight() / sum)));
        return List.copyOf(shares);
    }
}
