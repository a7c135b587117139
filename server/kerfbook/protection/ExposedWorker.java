package kerfbook.protection;

import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import kerfbook.quantity.Require;

/**
 * What must be known of a person before an assignment.
 *
 * @param bornOn   for the least age; empty if not known
 * @param category classification; empty if not known
 * @param records  doses received, by quantity; a quantity that is not there is not known
 */
public record ExposedWorker(Optional<LocalDate> bornOn, Optional<Category> category, Map<DoseQuantity, DoseRecord> records) {
    public ExposedWorker {
        bornOn = Require.optional(bornOn);
        category = Require.optional(category);
        Map<DoseQuantity, DoseRecord> copy = new EnumMap<>(DoseQuantity.class);
        copy.putAll(Require.present(records, "records"));
        copy.forEach((quantity, record) -> Require.present(record, "records." + quantity));
        records = Collections.unmodifiableMap(copy);
    }

    DoseRecord record(DoseQuantity quantity) {
        DoseRecord record = records.get(quantity);
        return record == null ? DoseRecord.notKnown() : record;
    }
}
