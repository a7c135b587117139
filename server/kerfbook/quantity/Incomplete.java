package kerfbook.quantity;

import java.util.List;

/**
 * A plan that may be kept as it is, but lacks something that a forecast needs: a survey, a routine for a cut, people enough, a technique that
 * reaches the thickness.
 */
public final class Incomplete extends Invalid {
    private static final long serialVersionUID = 1L;

    public Incomplete(String field, String detail) {
        super(field, detail);
    }

    public Incomplete(List<Fault> faults) {
        super(faults);
    }

    @Override
    public Incomplete under(String outer) {
        return new Incomplete(moved(outer));
    }
}
