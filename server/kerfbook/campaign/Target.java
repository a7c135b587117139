package kerfbook.campaign;

import java.time.LocalDate;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * A planning value of collective dose. Going above it asks for a recorded decision; it is neither constraint nor limit.
 *
 * @param of the group, component or task that is meant; left out for the campaign
 */
public record Target(String code, Scope scope, Optional<String> of, double personUsv, LocalDate validFrom, String reason) {
    public Target {
        Require.code(code, "code");
        Require.present(scope, "scope");
        of = scoped(scope, of);
        Require.positive(personUsv, 1e9, "person_usv", "person-µSv");
        Require.day(validFrom, "valid_from");
        Require.reason(reason, "reason");
    }

    static Optional<String> scoped(Scope scope, Optional<String> of) {
        Optional<String> given = Require.optional(of);
        if (given.isPresent() == (scope == Scope.CAMPAIGN)) {
            throw new Invalid("of", scope == Scope.CAMPAIGN ? "does not go with the scope campaign." : "is missing: say which " + scope + " is meant.");
        }
        return given;
    }
}
