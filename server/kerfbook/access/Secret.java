package kerfbook.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;

/** Random texts that let somebody in, and the hashes they are known by. With 256 random bits a plain hash is enough: none can be guessed. */
public final class Secret {
    private static final int BYTES = 32;
    private static final SecureRandom RANDOM = new SecureRandom();

    private Secret() { }

    /** 43 letters, digits, dashes and underscores. */
    public static String fresh() {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes(BYTES));
    }

    /** A password for the demonstration: 79 random bits as four groups of four letters and digits that are not mistaken for each other. */
    public static String password() {
        String signs = "abcdefghjkmnpqrstuvwxyz23456789";
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 16; i++) {
            text.append(i > 0 && i % 4 == 0 ? "-" : "").append(signs.charAt(RANDOM.nextInt(signs.length())));
        }
        return text.toString();
    }

    public static String hash(String secret) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(secret.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    static byte[] bytes(int count) {
        byte[] bytes = new byte[count];
        RANDOM.nextBytes(bytes);
        return bytes;
    }
}
