package kerfbook.http;

import java.util.ArrayList;
import java.util.List;
import kerfbook.choice.RoutineLibrary;
import kerfbook.document.RoutineFiles;
import kerfbook.tables.Shipped;
import kerfbook.trace.ShippedTables;

/** All that ships to be copied from: the tables and the steps of the library of routines. */
public final class Shelf {
    /** Read once; they do not change while the service runs. */
    public static final ShippedTables TABLES = read();

    private Shelf() { }

    private static ShippedTables read() {
        List<ShippedTables.Shipped> all = new ArrayList<>(Shipped.read());
        all.add(RoutineFiles.shipped(RoutineFiles.read(), Shipped.edition(RoutineLibrary.TABLE), Shipped.citation("source", "HOUSE-ROUTINES")));
        return new ShippedTables(all);
    }
}
