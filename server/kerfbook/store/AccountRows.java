package kerfbook.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import kerfbook.account.Account;
import kerfbook.account.Role;
import kerfbook.document.Json;
import org.jdbi.v3.core.Handle;

/** What accounts, sessions, tokens and links have in common: how a row is read, and that each change goes into the trail. */
final class AccountRows {
    static final String COLUMNS = "a.id, a.sign_in_name, a.name, a.role, a.worker, a.sees_people, a.disabled, "
        + "a.password_hash IS NOT NULL AS has_password, a.version, a.created_at";

    private AccountRows() { }

    static Account account(ResultSet row) throws SQLException {
        return new Account(row.getLong("id"), new Account.Person(row.getString("sign_in_name"), row.getString("name"), role(row.getString("role")),
            Optional.ofNullable(row.getString("worker")), row.getBoolean("disabled")), row.getBoolean("sees_people"), row.getBoolean("has_password"),
            row.getLong("version"), Pool.instant(row, "created_at"));
    }

    static Role role(String word) {
        return Role.of(word).orElseThrow(() -> new IllegalStateException("a role " + word));
    }

    static Optional<Account> find(Handle handle, long id) {
        return handle.createQuery("SELECT " + COLUMNS + " FROM account a WHERE a.id = :id").bind("id", id).map((row, context) -> account(row)).findOne();
    }

    /** @throws NoSuchAccount if there is none with this number */
    static Account get(Handle handle, long id) {
        return find(handle, id).orElseThrow(() -> new NoSuchAccount(id));
    }

    /** Nothing that lets anybody in may stand among the facts. */
    static void note(Handle handle, Instant at, String who, String kind, long account, Map<String, ?> facts) {
        Trail.append(handle, at, who, OptionalLong.empty(), kind, "account " + account, new String(Json.bytes(facts), java.nio.charset.StandardCharsets.UTF_8));
    }

    static Map<String, Object> facts(Account.Person person) {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("sign_in_name", person.signInName());
        facts.put("role", person.role().toString());
        person.worker().ifPresent(code -> facts.put("worker", code));
        facts.put("disabled", person.disabled());
        return facts;
    }
}
