package kerfbook.store;

import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;

/** What the trail says of runs: what they rest on when they are asked for, and the digest of the answer. */
final class RunTrail {
    private static final String KIND = "run";

    private RunTrail() { }

    static Telling asked(Run run, byte[] state) {
        String content = Hashes.of(List.of(Long.toString(run.campaignVersion()), String.join(" ", run.options()), run.editions(), text(run.repeats()),
            Hashes.sha256(state)));
        return new Telling(run.askedAt(), run.askedBy(), run.campaign(), KIND, "run " + run.number(), "{\"seed\":" + run.seed() + ",\"trials\":" + run.trials()
            + ",\"inputs\":\"" + run.inputs() + "\",\"document\":\"" + run.document() + "\",\"content\":\"" + content + "\"}");
    }

    static Telling done(Run run) {
        return new Telling(run.endedAt().orElseThrow(), "the service", run.campaign(), KIND, "run " + run.number(), "{\"result\":\"" + run.result() + "\""
            + (run.pairs().isEmpty() ? "" : ",\"pairs\":\"" + run.pairs() + "\",\"draws\":\"" + run.draws() + "\"") + "}");
    }

    /** How a run without an answer ended. */
    static Telling ended(Run run) {
        return new Telling(run.endedAt().orElseThrow(), "the service", run.campaign(), KIND, "run " + run.number(), "{\"ended\":\"" + run.status() + "\",\"content\":\""
            + Hashes.of(run.trouble()) + "\"}");
    }

    /** Some runs after this number, as the trail tells of them; a run is shown only if its texts are those of its digests. */
    static List<Shown> shown(Handle handle, long campaign, long number, int most) {
        List<Shown> all = new ArrayList<>();
        for (Run run : Runs.after(handle, campaign, number, most)) {
            String what = KIND + " " + run.number();
            Optional<byte[]> state = piece(handle, run, Long.toString(run.number()), "state");
            boolean documented = is(piece(handle, run, run.document(), "document"), run.document());
            all.add(new Shown(run.number(), what, state.filter(text -> documented).map(text -> asked(run, text))));
            if (run.status() == Run.Status.DONE) {
                boolean answered = !run.kept() || is(handle, run, "result", run.result()) && is(handle, run, "pairs", run.pairs()) && is(handle, run, "draws", run.draws());
                all.add(new Shown(run.number(), "answer of " + what, answered ? Optional.of(done(run)) : Optional.empty()));
            } else if (run.status().ended()) {
                all.add(new Shown(run.number(), "end of " + what, Optional.of(ended(run))));
            }
        }
        return all;
    }

    /** The piece of an answer has its digest, where it was given one. */
    private static boolean is(Handle handle, Run run, String what, String digest) {
        return digest.isEmpty() || is(piece(handle, run, Long.toString(run.number()), what), digest);
    }

    private static boolean is(Optional<byte[]> text, String digest) {
        return text.filter(bytes -> Hashes.sha256(bytes).equals(digest)).isPresent();
    }

    /** Empty too where it cannot be unpacked. */
    private static Optional<byte[]> piece(Handle handle, Run run, String of, String what) {
        try {
            return Pieces.get(handle, run.campaign(), of, what);
        } catch (UncheckedIOException e) {
            return Optional.empty();
        }
    }

    private static String text(OptionalLong number) {
        return number.isPresent() ? Long.toString(number.getAsLong()) : "";
    }
}
