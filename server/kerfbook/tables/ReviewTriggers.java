package kerfbook.tables;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import kerfbook.protection.ReviewTrigger;
import kerfbook.quantity.Origin;

/** Published triggers of a formal review before work, from {@code review_triggers.csv}; a site chooses a preset and changes it. */
public final class ReviewTriggers {
    private ReviewTriggers() { }

    /** By preset, in the order of the table. */
    public static Map<String, List<ReviewTrigger>> read() {
        Map<String, List<ReviewTrigger>> presets = new LinkedHashMap<>();
        for (Table.Row row : Table.read("review_triggers").rows()) {
            presets.computeIfAbsent(row.text("preset"), preset -> new ArrayList<>()).add(trigger(row));
        }
        presets.replaceAll((preset, triggers) -> List.copyOf(triggers));
        return presets;
    }

    private static ReviewTrigger trigger(Table.Row row) {
        ReviewTrigger.Kind kind = Arrays.stream(ReviewTrigger.Kind.values()).filter(k -> k.toString().equals(row.text("kind"))).findFirst()
            .orElseThrow(() -> new IllegalStateException("table review_triggers: no kind " + row.text("kind")));
        Origin.Status status = Arrays.stream(Origin.Status.values()).filter(s -> s.toString().equals(row.text("status"))).findFirst()
            .orElseThrow(() -> new IllegalStateException("table review_triggers: no status " + row.text("status")));
        return new ReviewTrigger(row.text("code"), kind, row.number("threshold"),
            new Origin(row.text("source") + ", " + row.text("place") + "; " + row.text("note"), status));
    }
}
