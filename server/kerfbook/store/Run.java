package kerfbook.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import kerfbook.quantity.Words;

/**
 * What was asked of a campaign, and how far it came.
 *
 * @param inputs   digest of the plan it rests on, options left out
 * @param document digest of the whole frozen document
 * @param options  codes of the options that were compared, in their order
 * @param editions JSON of the table editions
 * @param repeats  the run that this one does again
 * @param trouble  why it did not come to its end, in words; empty if it did or still may
 * @param result   digest of its answer; empty while there is none
 * @param pairs    digest of the pairs beside it; empty while there is none, and for answers of the first releases
 * @param draws    digest of the single draws beside it; empty likewise
 * @param kept     whether the answer is still there, or must be worked out again
 */
public record Run(long campaign, long number, Status status, Instant askedAt, String askedBy, Optional<Instant> endedAt, long campaignVersion,
                  String inputs, String document, long seed, int trials, List<String> options, String editions, OptionalLong repeats, String trouble,
                  String result, String pairs, String draws, boolean kept) {

    public enum Status {
        WAITING, RUNNING, DONE, FAILED, CANCELLED,
        /** The service ended while it ran. */
        STOPPED;

        @Override
        public String toString() {
            return Words.of(this);
        }

        public boolean ended() {
            return this != WAITING && this != RUNNING;
        }
    }

    public Run {
        options = List.copyOf(options);
    }

    /** What is asked for. The texts are JSON. */
    public record Asked(long campaign, String by, long campaignVersion, String inputs, byte[] document, byte[] state, long seed, int trials,
                        List<String> options, String editions, OptionalLong repeats) { }

    /** What came out. The texts are JSON; {@code draws} are numbers of single draws. */
    public record Answer(byte[] result, byte[] pairs, byte[] draws) { }
}
