package kerfbook.store;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/** SHA-256 (FIPS 180-4) over several texts, each with its length before it, so that no two lists of texts give the same bytes. */
final class Hashes {
    private Hashes() { }

    /** 64 hexadecimal digits. */
    static String of(List<String> texts) {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            for (String text : texts) {
                byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
                sha.update(ByteBuffer.allocate(Integer.BYTES).putInt(bytes.length).flip());
                sha.update(bytes);
            }
            return HexFormat.of().formatHex(sha.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);     // every Java has it
        }
    }

    /** Of the bytes alone, as any tool works it out. */
    static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);     // every Java has it
        }
    }

    static String of(String text) {
        return of(List.of(text));
    }
}
