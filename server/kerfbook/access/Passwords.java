package kerfbook.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.text.Normalizer;
import java.util.Base64;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bouncycastle.crypto.generators.Argon2BytesGenerator;
import org.bouncycastle.crypto.params.Argon2Parameters;

/**
 * Passwords as Argon2id hashes (RFC 9106), written with their parameters as {@code $argon2id$v=19$m=65536,t=3,p=4$salt$hash}. An unknown
 * name costs as much time as a wrong password.
 */
public final class Passwords {
    /**
     * 64 MiB, 3 passes, 4 lanes, salt of 128 and hash of 256 bits: the second recommended option of RFC 9106, section 4. OWASP's Password
     * Storage Cheat Sheet asks for at least 19 MiB, 2 passes and 1 lane.
     */
    public static final Cost USUAL = new Cost(65_536, 3, 4);
    private static final int SALT_BYTES = 16;
    private static final int HASH_BYTES = 32;
    private static final int AT_ONCE = 2;               // each takes its memory
    private static final int WAIT_S = 10;
    private static final Pattern KEPT = Pattern.compile("\\$argon2id\\$v=19\\$m=([0-9]{1,8}),t=([0-9]{1,4}),p=([0-9]{1,3})\\$([A-Za-z0-9+/]+)\\$([A-Za-z0-9+/]+)");

    private final Cost cost;
    private final Semaphore turns = new Semaphore(AT_ONCE);

    /** What one password costs: memory in KiB, passes over it, lanes. */
    public record Cost(int memoryKib, int passes, int lanes) { }

    public Passwords(Cost cost) {
        this.cost = cost;
    }

    public String hash(String password) {
        byte[] salt = Secret.bytes(SALT_BYTES);
        return "$argon2id$v=19$m=" + cost.memoryKib + ",t=" + cost.passes + ",p=" + cost.lanes + "$" + base64(salt) + "$"
            + base64(inTurn(password, salt, cost, HASH_BYTES));
    }

    /** Whether that is the password; without a hash to hold it against it is not, after the same work. */
    public boolean matches(String password, Optional<String> kept) {
        if (kept.isEmpty()) {
            inTurn(password, Secret.bytes(SALT_BYTES), cost, HASH_BYTES);
            return false;
        }
        Matcher parts = KEPT.matcher(kept.get());
        if (!parts.matches()) {
            throw new IllegalStateException("a password hash of another kind");
        }
        Cost of = new Cost(Integer.parseInt(parts.group(1)), Integer.parseInt(parts.group(2)), Integer.parseInt(parts.group(3)));
        byte[] expected = Base64.getDecoder().decode(parts.group(5));
        byte[] found = inTurn(password, Base64.getDecoder().decode(parts.group(4)), of, expected.length);
        return MessageDigest.isEqual(expected, found);
    }

    private byte[] inTurn(String password, byte[] salt, Cost of, int length) {
        try {
            if (!turns.tryAcquire(WAIT_S, TimeUnit.SECONDS)) {
                throw new TooMany(WAIT_S);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new TooMany(WAIT_S);
        }
        try {
            return argon2id(Normalizer.normalize(password, Normalizer.Form.NFKC).getBytes(StandardCharsets.UTF_8), salt, of, length);
        } finally {
            turns.release();
        }
    }

    static byte[] argon2id(byte[] password, byte[] salt, Cost of, int length) {
        Argon2BytesGenerator generator = new Argon2BytesGenerator();
        generator.init(new Argon2Parameters.Builder(Argon2Parameters.ARGON2_id).withVersion(Argon2Parameters.ARGON2_VERSION_13)
            .withMemoryAsKB(of.memoryKib).withIterations(of.passes).withParallelism(of.lanes).withSalt(salt).build());
        byte[] out = new byte[length];
        generator.generateBytes(password, out);
        return out;
    }

    private static String base64(byte[] bytes) {
        return Base64.getEncoder().withoutPadding().encodeToString(bytes);
    }
}
