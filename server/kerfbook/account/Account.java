package kerfbook.account;

import java.time.Instant;
import java.util.Optional;
import kerfbook.quantity.Require;

/**
 * Somebody, or some device, that may use Kerfbook.
 *
 * @param worker      code of the person in campaigns that this account is; the same code means the same person in all of them
 * @param seesPeople  the radiation protection officer lets this account see names and received doses
 * @param hasPassword whether somebody can sign in
 */
public record Account(long id, Person person, boolean seesPeople, boolean hasPassword, long version, Instant createdAt) {

    /** What an administrator writes down about it. */
    public record Person(String signInName, String name, Role role, Optional<String> worker, boolean disabled) {
        public Person {
            signInName = SignIn.name(signInName, "sign_in_name");
            Require.name(name, "name");
            Require.present(role, "role");
            worker = Require.optional(worker);
            worker.ifPresent(code -> Require.code(code, "worker"));
        }
    }
}
