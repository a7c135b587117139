package kerfbook.cutting;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import kerfbook.quantity.Invalid;

/** Techniques and materials that planners start from, by code. */
public record Handbook(Map<String, HandbookTechnique> techniques, Map<String, CutMaterial> materials) {
    public Handbook {
        techniques = Collections.unmodifiableMap(new LinkedHashMap<>(techniques));
        materials = Collections.unmodifiableMap(new LinkedHashMap<>(materials));
    }

    /** @throws Invalid naming the known codes, if there is no such technique */
    public HandbookTechnique technique(String code) {
        HandbookTechnique found = techniques.get(code);
        if (found == null) {
            throw new Invalid("technique_code", "is no technique of the handbook. Known are: " + String.join(", ", techniques.keySet()) + ".");
        }
        return found;
    }
}
