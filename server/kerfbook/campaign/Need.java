package kerfbook.campaign;

import java.util.List;
import kerfbook.quantity.Require;

/** How much of a resource a task uses from its start to its finish. */
public record Need(String resource, int amount) {
    public Need {
        Require.code(resource, "resource");
        Require.within(amount, 1, 1_000, "amount");
    }

    static List<Need> list(List<Need> needs) {
        List<Need> copy = Require.list(needs, "needs");
        Require.distinct(copy.stream().map(Need::resource).toList(), "needs");
        return copy;
    }
}
