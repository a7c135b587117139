package kerfbook.http;

import io.javalin.http.Context;
import java.util.Optional;
import kerfbook.access.Entrance.Holder;
import kerfbook.account.Account;
import kerfbook.account.Role;

/**
 * Who is asking.
 *
 * @param account    number of the account
 * @param name       as the account is called
 * @param worker     code of the person of a campaign that this account is
 * @param seesPeople whether the radiation protection officer lets this account see names and received doses of all
 */
record Caller(Optional<Long> account, String name, Role role, Optional<String> worker, boolean seesPeople) {
    Caller(Optional<Long> account, String name, Role role, Optional<String> worker) {
        this(account, name, role, worker, role == Role.RADIATION_PROTECTION_OFFICER);
    }

    /** The caller whom the gate has let in. */
    static Caller of(Context ctx) {
        return find(ctx).orElseThrow(() -> new IllegalStateException("nobody was let in to " + ctx.path()));
    }

    /** The caller whom the gate has let in, if that has happened. */
    static Optional<Caller> find(Context ctx) {
        return Optional.ofNullable(ctx.attribute(Caller.class.getName()));
    }

    /** A token that only reads sees no more than a reader. */
    static Caller of(Holder holder) {
        Account account = holder.account();
        boolean whole = holder.role() == account.person().role();
        return new Caller(Optional.of(account.id()), account.person().name(), holder.role(), whole ? account.person().worker() : Optional.empty(),
            whole && (holder.role() == Role.RADIATION_PROTECTION_OFFICER || account.seesPeople() && holder.role() != Role.ADMINISTRATOR));
    }

    /** Whether name and received doses of that person may be shown. */
    boolean sees(String code) {
        return seesPeople || worker.filter(code::equals).isPresent();
    }

    /** How the caller stands in trails and under decisions: "A. Person (radiation-protection-officer)". */
    String signature() {
        return name + " (" + role + ")";
    }
}
