package kerfbook.document;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.stream.Collectors;
import kerfbook.choice.RoutineLibrary;
import kerfbook.trace.Citation;
import kerfbook.trace.ShippedRow;
import kerfbook.trace.ShippedTables;

/** The library of routines, from {@code db/routines}. */
public final class RoutineFiles {
    private RoutineFiles() { }

    public static RoutineLibrary read() {
        return new RoutineLibrary(file("steps", RoutineLibrary.Steps.class), file("families", RoutineLibrary.Families.class));
    }

    /** The steps of the library as rows of a table. */
    public static ShippedTables.Shipped shipped(RoutineLibrary library, String edition, Citation source) {
        List<ShippedRow> rows = library.steps().stream().map(step -> new ShippedRow(RoutineLibrary.TABLE, edition, step.code(), List.of(
            cell("step", step.code()), cell("name", step.name()), cell("driver", step.driver().toString()),
            cell("hours_each_low", Double.toString(step.hoursEach().low())), cell("hours_each_likely", Double.toString(step.hoursEach().likely())),
            cell("hours_each_high", Double.toString(step.hoursEach().high())), cell("mode", step.mode().toString()), cell("alongside", step.alongside() ? "yes" : "no"),
            cell("factors", String.join(" ", step.factors())), cell("staff", step.staff().stream().map(staff -> staff.people() + " " + staff.role() + " at " + staff.area()
                + " for " + staff.presence()).collect(Collectors.joining("; "))), cell("source", source.source())), step.origin().status().toString(), List.of(source))).toList();
        return new ShippedTables.Shipped(RoutineLibrary.TABLE, "Steps of the library of routines", edition, rows);
    }

    private static ShippedRow.Cell cell(String column, String text) {
        return new ShippedRow.Cell(column, text);
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
