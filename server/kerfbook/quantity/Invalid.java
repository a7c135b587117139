package kerfbook.quantity;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A value that somebody typed or sent cannot be used. Carries where it stands and what is wrong, so that the message
 * can be shown beside the field.
 */
public class Invalid extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /** One thing that is wrong: {@code field} is a path such as {@code cuts[2].thickness_mm}, empty for the whole. */
    public record Fault(String field, String detail) {
        public Fault {
            Objects.requireNonNull(field, "field");
            Objects.requireNonNull(detail, "detail");
        }
    }

    private final transient List<Fault> faults;

    public Invalid(String field, String detail) {
        this(List.of(new Fault(field, detail)));
    }

    public Invalid(List<Fault> faults) {
        super(text(faults));
        this.faults = List.copyOf(faults);
    }

    public final List<Fault> faults() {
        return faults;
    }

    /** The same faults, seen from one level further out: {@code outer.field}. */
    public Invalid under(String outer) {
        return new Invalid(moved(outer));
    }

    /** The faults with their fields seen from one level further out. */
    protected final List<Fault> moved(String outer) {
        List<Fault> moved = new ArrayList<>();
        for (Fault fault : faults) {
            String join = outer.isEmpty() || fault.field().isEmpty() || fault.field().startsWith("[") ? "" : ".";
            moved.add(new Fault(outer + join + fault.field(), fault.detail()));
        }
        return moved;
    }

    private static String text(List<Fault> faults) {
        if (faults.isEmpty()) {
            throw new IllegalStateException("an Invalid without a fault");
        }
        StringBuilder all = new StringBuilder();
        for (Fault fault : faults) {
            if (all.length() > 0) {
                all.append(' ');
            }
            all.append(fault.field().isEmpty() ? "" : fault.field() + ": ").append(fault.detail());
        }
        return all.toString();
    }
}
