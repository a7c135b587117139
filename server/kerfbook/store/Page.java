package kerfbook.store;

import java.util.List;

/**
 * A part of a longer list.
 *
 * @param total how many there are in all
 */
public record Page<T>(List<T> rows, int offset, long total) {
    public Page {
        rows = List.copyOf(rows);
    }
}
