package kerfbook.tables;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import kerfbook.protection.AdministrativeLevel;
import kerfbook.protection.DoseQuantity;
import kerfbook.protection.LimitRule;
import kerfbook.protection.Period;
import kerfbook.protection.RuleSet;
import kerfbook.quantity.Origin;

/**
 * Rule sets of countries and bodies, from {@code limit_rules.csv}: one row per limit, category B ceiling or administrative level.
 * Status {@code seen-secondary} is a figure read in a text that quotes the original; its origin says so.
 */
public final class LimitRules {
    private LimitRules() { }

    /** By code, in the order of the table. */
    public static Map<String, RuleSet> read() {
        Map<String, List<Table.Row>> rows = new LinkedHashMap<>();
        for (Table.Row row : Table.read("limit_rules").rows()) {
            rows.computeIfAbsent(row.text("rule_set"), code -> new ArrayList<>()).add(row);
        }
        Map<String, RuleSet> sets = new LinkedHashMap<>();
        rows.forEach((code, own) -> sets.put(code, ruleSet(code, own)));
        return sets;
    }

    private static RuleSet ruleSet(String code, List<Table.Row> rows) {
        List<LimitRule> limits = new ArrayList<>();
        List<LimitRule> categoryB = new ArrayList<>();
        List<AdministrativeLevel> levels = new ArrayList<>();
        String name = rows.get(0).text("rule_set_name");
        for (Table.Row row : rows) {
            if (!row.text("rule_set_name").equals(name)) {
                throw new IllegalStateException("table limit_rules: two names for " + code);
            }
            LimitRule rule = rule(row);
            switch (row.text("kind")) {
                case "limit" -> limits.add(rule);
                case "category-b" -> categoryB.add(rule);
                case "administrative-level" -> levels.add(new AdministrativeLevel(rule, row.text("approver")));
                default -> throw new IllegalStateException("table limit_rules: no kind " + row.text("kind"));
            }
        }
        return new RuleSet(code, name, limits, categoryB, levels);
    }

    private static LimitRule rule(Table.Row row) {
        OptionalInt firstBlock = row.has("first_block_year") ? OptionalInt.of((int) row.number("first_block_year")) : OptionalInt.empty();
        return new LimitRule(row.text("code"), word(DoseQuantity.values(), row.text("quantity")), word(Period.values(), row.text("period")),
            row.number("limit_usv"), firstBlock, origin(row));
    }

    private static Origin origin(Table.Row row) {
        String text = row.text("source") + ", " + row.text("place") + (row.has("note") ? "; " + row.text("note") : "");
        return switch (row.text("status")) {
            case "seen" -> new Origin(text, Origin.Status.SEEN);
            case "seen-secondary" -> new Origin(text + " (read in a text that quotes it)", Origin.Status.SEEN);
            case "memory" -> new Origin(text, Origin.Status.MEMORY);
            default -> throw new IllegalStateException("table limit_rules: no status " + row.text("status"));
        };
    }

    private static <E extends Enum<E>> E word(E[] values, String word) {
        return Arrays.stream(values).filter(value -> value.toString().equals(word)).findFirst()
            .orElseThrow(() -> new IllegalStateException("table limit_rules: unknown word " + word));
    }
}
