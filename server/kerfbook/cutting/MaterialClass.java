package kerfbook.cutting;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Words;

/** What a technique's limits tell apart. */
public enum MaterialClass {
    /** Carbon and low-alloy steel: burns in oxygen. */
    CARBON_STEEL("carbon-steel", "mild-steel", "low-alloy-steel", "vessel-steel"),
    STAINLESS_STEEL("stainless"),
    TOOL_STEEL("tool-steel"),
    NICKEL_ALLOY("nickel", "inconel"),
    ALUMINIUM("aluminium"),
    TITANIUM("titanium"),
    ZIRCONIUM("zirconium", "zircaloy"),
    COPPER("copper"),
    ZINC("zinc"),
    LEAD("lead"),
    CONCRETE("concrete"),
    GRAPHITE("graphite"),
    /** Stone, glass, ceramic, plastic, wood: no metal, no concrete, no graphite. */
    OTHER("stone", "granite", "marble", "glass", "alumina", "acrylic", "nylon", "wood", "plastic");

    private final List<String> words;

    MaterialClass(String... words) {
        this.words = List.of(words);
    }

    /** The class whose word a material's name begins with, as in {@code stainless-304}; empty if there is none. */
    public static Optional<MaterialClass> of(String material) {
        return Arrays.stream(values()).filter(each -> each.words.stream().anyMatch(word -> begins(material, word))).findFirst();
    }

    /** Beginnings of names that are understood. */
    public List<String> words() {
        return words;
    }

    private static boolean begins(String material, String word) {
        return material.equals(word) || material.startsWith(word + "-") || material.startsWith(word + " ");
    }

    @Override
    public String toString() {
        return Words.of(this);
    }
}
