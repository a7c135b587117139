package kerfbook.document;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.List;
import kerfbook.logbook.Entry;
import kerfbook.logbook.TaskProgress;
import kerfbook.quantity.Require;

/**
 * The invented log of the invented demonstration.
 *
 * @param note  says that it is invented, and how it was made
 * @param asOf  the day as which the demonstration is shown
 */
public record DemoLog(String note, LocalDate asOf, List<Entry> entries, List<TaskProgress> progress) {
    public DemoLog {
        Require.reason(note, "note");
        Require.day(asOf, "as_of");
        entries = Require.atLeastOne(entries, "entries");
        progress = Require.list(progress, "progress");
    }

    public static DemoLog read() {
        try (InputStream in = DemoLog.class.getResourceAsStream("/demo-data/demo-log.json")) {
            if (in == null) {
                throw new IllegalStateException("demo-data/demo-log.json is not there");
            }
            return Json.read(in.readAllBytes(), DemoLog.class);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
