package kerfbook.trace;

import java.util.List;

/**
 * One row of a shipped table as it is printed.
 *
 * @param row       what it is called; several rows may share a name, as the photon lines of a nuclide do
 * @param cells     what is filled in, in the order of the headings
 * @param status    how its figures are known
 * @param citations the sources it names, in full
 */
public record ShippedRow(String table, String edition, String row, List<Cell> cells, String status, List<Citation> citations) {
    /** One cell under its heading. */
    public record Cell(String column, String text) { }

    public ShippedRow {
        cells = List.copyOf(cells);
        citations = List.copyOf(citations);
    }
}
