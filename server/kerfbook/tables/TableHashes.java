package kerfbook.tables;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** SHA-256 of every table as it lies here, so that a start can tell which figures are not those of the start before. */
public final class TableHashes {
    private TableHashes() { }

    /** By name. */
    public static Map<String, String> read() {
        Map<String, String> hashes = new TreeMap<>();
        Table.read("editions").rows().forEach(row -> hash(row.text("table")).ifPresent(hash -> hashes.put(row.text("table"), hash)));
        return hashes;
    }

    /** None for an edition that is not of one table, such as the routines. */
    private static Optional<String> hash(String name) {
        try (InputStream in = TableHashes.class.getResourceAsStream("/db/tables/" + name + ".csv")) {
            if (in == null) {
                return Optional.empty();
            }
            return Optional.of(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(in.readAllBytes())));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);     // every Java has it
        }
    }
}
