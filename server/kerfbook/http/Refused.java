package kerfbook.http;

import java.util.List;
import kerfbook.quantity.Invalid.Fault;

/** A request that cannot be met, with the answer it gets. */
final class Refused extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final transient Problem problem;

    Refused(Problem problem) {
        super(problem.detail(), null, false, false);
        this.problem = problem;
    }

    Refused(int status, String detail) {
        this(Problem.of(status, detail));
    }

    Refused(int status, String detail, String field, String what) {
        this(Problem.of(status, detail, List.of(new Fault(field, what))));
    }

    Problem problem() {
        return problem;
    }
}
