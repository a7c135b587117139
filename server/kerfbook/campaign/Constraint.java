package kerfbook.campaign;

import java.time.LocalDate;
import java.util.Optional;
import kerfbook.quantity.Require;

/**
 * A bound on what one person may plan to take, set by the radiation protection officer. Going above it asks for follow-up; it is
 * not a limit of the law.
 *
 * @param of the group, component or task that is meant; left out for the campaign
 */
public record Constraint(String code, Scope scope, Optional<String> of, double individualUsv, LocalDate validFrom, String reason) {
    /** What an electronic dosemeter tells at least (common practice, no source); less is a slip of the pen and no bound. */
    private static final double LEAST_USV = 1;

    public Constraint {
        Require.code(code, "code");
        Require.present(scope, "scope");
        of = Target.scoped(scope, of);
        Require.within(individualUsv, LEAST_USV, 1e7, "individual_usv", "µSv");
        Require.day(validFrom, "valid_from");
        Require.reason(reason, "reason");
    }
}
