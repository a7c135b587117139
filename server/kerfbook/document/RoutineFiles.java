package kerfbook.document;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import kerfbook.choice.RoutineLibrary;

/** The library of routines, from {@code db/routines}. */
public final class RoutineFiles {
    private RoutineFiles() { }

    public static RoutineLibrary read() {
        return new RoutineLibrary(file("steps", RoutineLibrary.Steps.class), file("families", RoutineLibrary.Families.class));
    }

    private static <T> T file(String name, Class<T> type) {
        try (InputStream in = RoutineFiles.class.getResourceAsStream("/db/routines/" + name + ".json")) {
            if (in == null) {
                throw new IllegalStateException("db/routines/" + name + ".json is not there");
            }
            return Json.read(in.readAllBytes(), type);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
