package kerfbook.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.Set;

/** Files and folders that belong to nobody else: doses of people are in them. */
final class Folder {
    private static final Set<PosixFilePermission> OTHERS = EnumSet.of(PosixFilePermission.GROUP_READ, PosixFilePermission.GROUP_WRITE,
        PosixFilePermission.GROUP_EXECUTE, PosixFilePermission.OTHERS_READ, PosixFilePermission.OTHERS_WRITE, PosixFilePermission.OTHERS_EXECUTE);

    private Folder() { }

    /** Where the system knows owners, for the owner only. */
    static FileAttribute<?>[] own(Path beside, String permissions) {
        return knowsOwners(beside) ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(permissions))}
            : new FileAttribute<?>[0];
    }

    static boolean knowsOwners(Path path) {
        return path.getFileSystem().supportedFileAttributeViews().contains("posix");
    }

    static Path make(Path folder) {
        try {
            if (folder.getParent() != null) {
                Files.createDirectories(folder.getParent());
            }
            return Files.isDirectory(folder) ? folder : Files.createDirectory(folder, own(folder, "rwx------"));
        } catch (IOException e) {
            throw new StoreUnavailable("The folder " + folder + " cannot be made (" + e.getClass().getSimpleName()
                + "). Make it, or choose another with write permission.", e);
        }
    }

    /** Whether others than the owner may look into it. */
    static boolean open(Path folder) throws IOException {
        return knowsOwners(folder) && Files.getPosixFilePermissions(folder).stream().anyMatch(OTHERS::contains);
    }
}
