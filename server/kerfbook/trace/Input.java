package kerfbook.trace;

import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.TableRow;

/**
 * Something that somebody wrote into a plan.
 *
 * @param id     where it stands, such as routines/cut-jet/cut/run
 * @param kind   kind of object it belongs to, or settings
 * @param code   of that object; absent for the settings
 * @param value  where it is one figure with its range
 * @param unit   of the value, "" for a number
 * @param source what the writer says of where it comes from
 * @param status how the writer says it is known; absent where the plan has no place for that: then it is the plan's own statement
 * @param rows   rows of the shipped tables it was copied from, or that are looked up by its names
 */
public record Input(String id, String kind, Optional<String> code, String name, Optional<Likely> value, String unit, String source,
                    Optional<Origin.Status> status, List<TableRow> rows) {
    public Input {
        rows = rows.stream().distinct().toList();
    }
}
