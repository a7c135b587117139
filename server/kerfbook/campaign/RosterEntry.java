package kerfbook.campaign;

import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Require;

/**
 * Who fills a role. Where no entry fits, the role's dose is shared evenly by everybody who has it; where several fit, the one that
 * names most (task, then component and group, then component, then group) counts.
 *
 * @param group     only in tasks of this group
 * @param component only in tasks of this component
 * @param task      only in the task of this id; one that the plan no longer has makes the entry idle
 * @param members   who, and in what proportion
 */
public record RosterEntry(String code, String role, Optional<String> group, Optional<String> component, Optional<String> task,
                          List<Member> members) {

    /** A worker's weight: the share of the role's hours is weight ÷ sum of weights. */
    public record Member(String worker, double weight) {
        public Member {
            Require.code(worker, "worker");
            Require.positive(weight, 1_000, "weight", "");
        }
    }

    public RosterEntry {
        Require.code(code, "code");
        Require.code(role, "role");
        group = Require.optional(group);
        component = Require.optional(component);
        task = Require.optional(task);
        task.ifPresent(id -> Require.name(id, "task"));
        members = Require.atLeastOne(members, "members");
        Require.distinct(members.stream().map(Member::worker).toList(), "members");
    }

    /** In every task of that group and component. */
    public RosterEntry(String code, String role, Optional<String> group, Optional<String> component, List<Member> members) {
        this(code, role, group, component, Optional.empty(), members);
    }
}
