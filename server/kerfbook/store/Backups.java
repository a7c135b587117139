package kerfbook.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import kerfbook.quantity.Invalid;

/** Copies of the whole database, made while it is in use, and the way back. */
public final class Backups {
    /** Name of the database in a data folder, without its ending. */
    public static final String NAME = "kerfbook";
    private static final String INSIDE = NAME + ".mv.db";
    private static final String PART = ".zip.part";
    private static final Pattern OWN_PART = Pattern.compile("backup-[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}\\.zip\\.part");
    private static final long LARGEST = 64L << 30;
    private static final int MOST_PACKED = 1_000;

    private Backups() { }

    /** The backup as it was brought back. */
    public record Restored(Path folder, Verification verification) { }

    /**
     * A backup for somebody who asks over the line: that it was asked for is in the trail before it is made, and so in it.
     *
     * @param data the folder of the database, where it lies until it is sent
     */
    public static Path makeFor(String who, Database database, Path data) {
        database.write(handle -> {
            Trail.append(handle, Instant.now().truncatedTo(ChronoUnit.MICROS), who, OptionalLong.empty(), "backup", "whole database", "{\"what\":\"backup-asked\"}");
            return null;
        });
        Path file = data.resolve("backup-" + UUID.randomUUID() + PART);
        make(database, file);
        return file;
    }

    /** Takes away what a service that was killed left of backups it was making. */
    static void tidy(Path data) throws IOException {
        try (Stream<Path> inside = Files.list(data)) {
            inside.filter(file -> OWN_PART.matcher(file.getFileName().toString()).matches()).forEach(Backups::delete);
        }
    }

    /**
     * Copies the database as it is between two changes; changes wait meanwhile. The file is for its owner only.
     *
     * @param target a file that is not there yet
     */
    public static void make(Database database, Path target) {
        Path file = place(target);
        boolean done = false;
        try {
            database.copyTo(file);
            done = true;
        } finally {
            if (!done) {
                delete(file);
            }
        }
    }

    /** Makes an empty file for its owner only, for a backup that comes from elsewhere. */
    public static Path place(Path target) {
        Path file = target.toAbsolutePath().normalize();
        try {
            return Files.createFile(file, Folder.own(file, "rw-------"));
        } catch (IOException e) {
            throw new Invalid("", file + " cannot be made (" + e.getClass().getSimpleName() + "). Name a file that is not there yet, in a folder that is.");
        }
    }

    /** Takes away a backup that did not come to its end. */
    public static void forget(Path file) {
        delete(file);
    }

    /** Whether a backup can be brought back and is what was written: tried in a folder of its own beside it, which is taken away again. */
    public static Verification check(Path backup) {
        Path trial = backup.toAbsolutePath().normalize().resolveSibling(backup.getFileName() + ".check");
        if (Files.exists(trial, LinkOption.NOFOLLOW_LINKS)) {
            throw new Invalid("", trial + " is in the way: the backup is tried in a folder of that name. Take it away first.");
        }
        try {
            return restore(backup, trial).verification();
        } finally {
            deleteAll(trial);
        }
    }

    /**
     * Brings a backup back into a folder that is empty or not there. It is opened and gone through before it counts; where something is
     * wrong nothing is left behind.
     *
     * @throws Invalid          if the folder holds something, or the file is no backup
     * @throws StoreUnavailable if the database in it is damaged or of a newer release
     */
    public static Restored restore(Path backup, Path folder) {
        Path target = folder.toAbsolutePath().normalize();
        requireEmpty(target);
        Path beside = target.resolveSibling(target.getFileName() + ".restoring");
        if (Files.exists(beside)) {
            throw new Invalid("--data", beside + " is in the way: another restore is under way or was broken off. Take it away first.");
        }
        Folder.make(beside);
        try {
            unpack(backup, beside.resolve(INSIDE));
            Verification found;
            try (Database database = Database.open(beside.resolve(NAME))) {
                found = new Trail(database).verify(Optional.empty());
            }
            if (!found.intact()) {
                throw new Invalid("", "The backup is not as it was written: " + found.faults().get(0).text() + " Nothing was restored.");
            }
            Files.deleteIfExists(target);
            Files.move(beside, target, StandardCopyOption.ATOMIC_MOVE);
            return new Restored(target, found);
        } catch (IOException e) {
            throw new Invalid("", "The backup cannot be brought back into " + target + " (" + e.getClass().getSimpleName() + "). Nothing was restored.");
        } finally {
            deleteAll(beside);
        }
    }

    private static void requireEmpty(Path folder) {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> inside = Files.list(folder)) {
            if (inside.findAny().isPresent()) {
                throw new Invalid("--data", folder + " is not empty. A backup is only brought back into an empty folder: nothing is overwritten.");
            }
        } catch (IOException e) {
            throw new Invalid("--data", folder + " cannot be looked into. Name an empty folder.");
        }
    }

    /** Takes the one file out whatever path its name has: it is written under our own name, and only as large as it may be. */
    private static void unpack(Path backup, Path to) throws IOException {
        try (InputStream file = Files.newInputStream(backup); ZipInputStream zip = new ZipInputStream(file)) {
            ZipEntry entry = zip.getNextEntry();
            if (entry == null || !entry.getName().equals(INSIDE)) {
                throw new Invalid("", backup + " is no backup of Kerfbook: " + (entry == null ? "it is not packed as one." : "there is another file in it."));
            }
            copy(zip, to, Math.min(LARGEST, Math.multiplyExact(Math.max(1, Files.size(backup)), MOST_PACKED)));
            if (zip.getNextEntry() != null) {
                throw new Invalid("", backup + " is no backup of Kerfbook: there is a second file in it.");
            }
        } catch (ZipException e) {
            throw new Invalid("", backup + " is damaged: it cannot be unpacked to its end.");
        } catch (java.nio.file.NoSuchFileException e) {
            throw new Invalid("", backup + " is not there.");
        }
    }

    private static void copy(InputStream from, Path to, long most) throws IOException {
        Files.createFile(to, Folder.own(to, "rw-------"));
        long free = Files.getFileStore(to).getUsableSpace() - Place.SPARE;
        try (OutputStream out = Files.newOutputStream(to)) {
            byte[] some = new byte[1 << 16];
            long all = 0;
            for (int n = from.read(some); n >= 0; n = from.read(some)) {
                all += n;
                if (all > most) {
                    throw new Invalid("", "What is packed in the backup is far larger than a database packs to. Nothing was restored.");
                }
                if (all > free) {
                    throw new Invalid("--data", "The disk has no room for the backup. Make room, then do it again.");
                }
                out.write(some, 0, n);
            }
        }
    }

    private static void delete(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException left) {
            System.getLogger("kerfbook.store").log(System.Logger.Level.WARNING, file + " is left behind and can be deleted.");
        }
    }

    private static void deleteAll(Path folder) {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> all = Files.walk(folder)) {
            List<Path> deepest = all.sorted(Comparator.reverseOrder()).toList();
            deepest.forEach(Backups::delete);
        } catch (IOException e) {
            delete(folder);
        }
    }
}
