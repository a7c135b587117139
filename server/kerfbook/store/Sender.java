package kerfbook.store;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/**
 * Who hands something in, and when it came here.
 *
 * @param signature as it stands under what was handed in
 * @param account   number of the account, if there is one
 */
public record Sender(String signature, Optional<Long> account, Instant receivedAt) {
    public Sender {
        receivedAt = receivedAt.truncatedTo(ChronoUnit.MICROS);     // as fine as it is stored
    }
}
