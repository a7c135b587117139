package kerfbook.store;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/** Long texts as rows: compressed, and cut where a column ends. All calls are inside a transaction of the caller. */
final class Pieces {
    private static final int LONGEST = 500_000;

    private Pieces() { }

    static byte[] packed(byte[] text) {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
            out.write(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return packed.toByteArray();
    }

    static void put(Handle handle, long campaign, String of, String what, byte[] packed) {
        PreparedBatch batch = handle.prepareBatch("INSERT INTO run_piece (campaign_id, belongs_to, what, ordinal, body) VALUES (:campaign, :of, :what, :ordinal, :body)");
        for (int from = 0, ordinal = 0; from < packed.length; from += LONGEST, ordinal++) {
            batch.bind("campaign", campaign).bind("of", of).bind("what", what).bind("ordinal", ordinal)
                .bind("body", Arrays.copyOfRange(packed, from, Math.min(packed.length, from + LONGEST))).add();
        }
        batch.execute();
    }

    static boolean has(Handle handle, long campaign, String of, String what) {
        return handle.createQuery("SELECT COUNT(*) FROM run_piece WHERE campaign_id = :campaign AND belongs_to = :of AND what = :what")
            .bind("campaign", campaign).bind("of", of).bind("what", what).mapTo(Long.class).one() > 0;
    }

    static Optional<byte[]> get(Handle handle, long campaign, String of, String what) {
        List<byte[]> pieces = handle.createQuery("SELECT body FROM run_piece WHERE campaign_id = :campaign AND belongs_to = :of AND what = :what ORDER BY ordinal")
            .bind("campaign", campaign).bind("of", of).bind("what", what).mapTo(byte[].class).list();
        return pieces.isEmpty() ? Optional.empty() : Optional.of(unpacked(pieces));
    }

    static void remove(Handle handle, long campaign, String of, String what) {
        handle.createUpdate("DELETE FROM run_piece WHERE campaign_id = :campaign AND belongs_to = :of AND what = :what")
            .bind("campaign", campaign).bind("of", of).bind("what", what).execute();
    }

    private static byte[] unpacked(List<byte[]> pieces) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        pieces.forEach(all::writeBytes);
        try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(all.toByteArray()))) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
