package kerfbook.campaign;

import java.util.Optional;
import kerfbook.quantity.Require;

/**
 * Something of which only so much can be used at a time: the pool, the hoist, a packing station, or the people of a role.
 *
 * @param capacity units that can be in use together
 * @param role     the role whose people it counts: tasks need as many as are there at the busiest moment, without naming it; left out
 *                 for a thing, which tasks name among their needs
 */
public record Resource(String code, String name, int capacity, Optional<String> role) {
    public Resource {
        Require.code(code, "code");
        Require.name(name, "name");
        Require.within(capacity, 1, 1_000, "capacity");
        role = Require.optional(role);
        role.ifPresent(given -> Require.code(given, "role"));
    }
}
