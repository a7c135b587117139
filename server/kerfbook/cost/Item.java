package kerfbook.cost;

import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * Something to be paid for.
 *
 * @param code     role for labour, else what stands among the prices of things
 * @param quantity hours for labour, else units; need not be whole
 * @param where    what it is for, such as the name of a task
 */
public record Item(Kind kind, String code, double quantity, String where) {

    /** What it is. */
    public enum Kind {
        LABOUR, EQUIPMENT, CONSUMABLES, PACKAGES, DRUMS, FIXED;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    public Item {
        Require.present(kind, "kind");
        Require.name(code, "code");
        Require.within(quantity, 0, 1e9, "quantity", kind == Kind.LABOUR ? "h" : "");
        Require.text(where, "where");
    }
}
