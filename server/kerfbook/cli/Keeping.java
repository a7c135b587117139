package kerfbook.cli;

import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import kerfbook.quantity.Invalid;
import kerfbook.store.Backups;
import kerfbook.store.Database;
import kerfbook.store.Trail;
import kerfbook.store.Verification;

/** What keeps the data safe: checked, copied, brought back. */
final class Keeping {
    private final PrintStream out;

    Keeping(PrintStream out) {
        this.out = out;
    }

    /** @return whether nothing is wrong */
    boolean verify(Options.Verify options) {
        try (Database database = Database.open(existing(options.data()))) {
            return tell(new Trail(database).verify(options.noted()));
        }
    }

    /** A backup counts when it was brought back once for trial. */
    void backup(Options.Backup options) {
        if (options.data().isPresent()) {
            try (Database database = Database.open(existing(options.data().get()))) {
                Backups.make(database, options.file());
            }
        } else {
            Path file = Backups.place(options.file());
            boolean done = false;
            try {
                Fetching.backup(options.port(), options.token(), file);
                done = true;
            } finally {
                if (!done) {
                    Backups.forget(file);
                }
            }
        }
        Verification found = Backups.check(options.file());
        out.println("Backed up to " + options.file().toAbsolutePath().normalize() + ", for your eyes only, and tried: it can be brought back.");
        tell(found);
    }

    void restore(Options.Restore options) {
        Backups.Restored restored = Backups.restore(options.file(), options.data());
        out.println("Brought back into " + restored.folder() + ".");
        tell(restored.verification());
    }

    private boolean tell(Verification found) {
        found.faults().forEach(fault -> out.println(fault.text()));
        if (found.faultsInAll() > found.faults().size()) {
            out.println("And " + (found.faultsInAll() - found.faults().size()) + " more.");
        }
        out.println(found.intact() ? "The trail is whole: " + found.rows() + " rows, and the campaigns are what it says."
            : "The trail is NOT whole: " + found.faultsInAll() + (found.faultsInAll() == 1 ? " thing is" : " things are") + " wrong in " + found.rows() + " rows.");
        if (found.rows() > 0) {
            out.println("It ends with " + found.note() + ". Note this on paper: only so a trail that somebody wrote anew in full is found later.");
        }
        return found.intact();
    }

    /** The database file in this folder; a folder without one is refused, so that nothing is made by looking. */
    static Path existing(Path data) {
        Path file = data.resolve(Backups.NAME);
        if (!Files.isRegularFile(data.resolve(Backups.NAME + ".mv.db"))) {
            throw new Invalid("--data", data.toAbsolutePath().normalize() + " holds no campaigns of Kerfbook. Name the folder that the service was started with.");
        }
        return file;
    }
}
