package kerfbook.exposure;

import java.time.LocalDate;
import java.util.List;
import kerfbook.shielding.Inventory;
import kerfbook.shielding.Source;

/**
 * A source as it is calculated.
 *
 * @param code        of the component, or of the source that is no component
 * @param geometry    shape, place and filling
 * @param inventory   activity on the reference day of what stands here: all of it, or a part while a piece hangs apart
 * @param referenceOn day of that activity
 * @param notes       simplifications and assumptions made for it
 */
public record PlacedSource(String code, SourceState state, Source geometry, Inventory inventory, LocalDate referenceOn, List<String> notes) {
    public PlacedSource {
        notes = List.copyOf(notes);
    }
}
