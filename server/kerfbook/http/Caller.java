package kerfbook.http;

import io.javalin.http.Context;
import java.util.Optional;
import kerfbook.account.Role;

/**
 * Who is asking.
 *
 * @param account number of the account, empty for this computer itself
 * @param name    as the account is called
 * @param worker  code of the person of a campaign that this account is
 */
record Caller(Optional<Long> account, String name, Role role, Optional<String> worker) {
    /** As long as nobody signs in: whoever sits at this computer. */
    private static final Caller THIS_COMPUTER = new Caller(Optional.empty(), "this computer", Role.RADIATION_PROTECTION_OFFICER, Optional.empty());

    static Caller of(Context ctx) {
        Caller known = ctx.attribute(Caller.class.getName());
        return known == null ? THIS_COMPUTER : known;
    }

    /** How the caller stands in trails and under decisions: "A. Person (radiation-protection-officer)". */
    String signature() {
        return name + " (" + role + ")";
    }
}
