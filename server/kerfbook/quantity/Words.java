package kerfbook.quantity;

import java.util.Locale;

/** How a constant is written for people and in documents: {@code HANDS_ON} is "hands-on". */
public final class Words {
    private Words() { }

    public static String of(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
