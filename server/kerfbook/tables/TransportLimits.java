package kerfbook.tables;

import java.util.Arrays;
import java.util.List;
import kerfbook.exposure.TransportLimit;
import kerfbook.quantity.Origin;

/** What a package may give outside when it is sent, from {@code transport_limits.csv}. */
public final class TransportLimits {
    private TransportLimits() { }

    /** In the order of the table. */
    public static List<TransportLimit> read() {
        return Table.read("transport_limits").rows().stream().map(TransportLimits::limit).toList();
    }

    private static TransportLimit limit(Table.Row row) {
        return new TransportLimit(row.text("limit"), row.text("what"), word(TransportLimit.Quantity.values(), row.text("quantity")), row.number("largest"),
            row.text("unit"), row.text("condition"), new Origin(row.text("source") + ", " + row.text("place"), word(Origin.Status.values(), row.text("status")))
                .from("transport_limits", row.text("limit")));
    }

    private static <E extends Enum<E>> E word(E[] values, String word) {
        return Arrays.stream(values).filter(value -> value.toString().equals(word)).findFirst()
            .orElseThrow(() -> new IllegalStateException("table transport_limits: unknown word " + word));
    }
}
