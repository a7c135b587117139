package kerfbook.schedule;

import kerfbook.quantity.Require;

/**
 * Something that only so many activities can hold at a time: the pool, the hoist, the packing station, a role.
 *
 * @param code     as named in the activities' needs
 * @param capacity units there are at any time
 */
public record Resource(String code, int capacity) {
    public Resource {
        Require.name(code, "code");
        Require.within(capacity, 1, 1_000_000, "capacity");
    }
}
