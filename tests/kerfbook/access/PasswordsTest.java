package kerfbook.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PasswordsTest {
    /** PUBLISHED: the test of Argon2's reference implementation (src/test.c): Argon2id, version 19, 2 passes, 64 MiB, 1 lane; the digits from memory. */
    @Test
    void argon2id_gives_the_published_hash() {
        byte[] hash = Passwords.argon2id("password".getBytes(StandardCharsets.UTF_8), "somesalt".getBytes(StandardCharsets.UTF_8), new Passwords.Cost(65_536, 2, 1), 32);
        assertEquals("09316115d5cf24ed5a15a31a3ba326e5cf32edc24702987c02b6566f61913cf7", HexFormat.of().formatHex(hash));
    }

    /** LAW: a hash knows its own password, whatever the cost of today; two hashes of one password differ. */
    @Test
    void a_hash_knows_its_password() {
        Passwords cheap = new Passwords(Doors.CHEAP);
        String kept = cheap.hash(Doors.PASSWORD);
        assertTrue(new Passwords(new Passwords.Cost(16, 2, 2)).matches(Doors.PASSWORD, Optional.of(kept)));
        assertFalse(cheap.matches(Doors.PASSWORD + " ", Optional.of(kept)));
        assertFalse(cheap.matches(Doors.PASSWORD, Optional.empty()));
        assertNotEquals(kept, cheap.hash(Doors.PASSWORD));
        assertTrue(new Passwords(Passwords.USUAL).hash("x").startsWith("$argon2id$v=19$m=65536,t=3,p=4$"));
    }

    /** LAW: an unknown name costs as much time as a wrong password; a factor of 3 leaves room for a busy computer. */
    @Test
    void an_unknown_name_takes_as_long() {
        Passwords usual = new Passwords(new Passwords.Cost(19_456, 2, 1));
        Optional<String> kept = Optional.of(usual.hash(Doors.PASSWORD));
        long wrong = least(() -> usual.matches("not this one", kept));
        long unknown = least(() -> usual.matches("not this one", Optional.empty()));
        assertTrue(unknown * 3 > wrong && wrong * 3 > unknown, wrong + " ns and " + unknown + " ns");
    }

    private static long least(Runnable work) {
        long least = Long.MAX_VALUE;
        for (int i = 0; i < 7; i++) {
            long start = System.nanoTime();
            work.run();
            least = Math.min(least, System.nanoTime() - start);
        }
        return least;
    }
}
