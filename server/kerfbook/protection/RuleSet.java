package kerfbook.protection;

import java.util.List;
import kerfbook.quantity.Require;

/**
 * The rules a person is planned under: those of a country, as a site has chosen or changed them.
 *
 * @param code      short name
 * @param name      as people call it
 * @param rules     limits; law
 * @param categoryB doses above which a worker of category B must be reclassified first
 * @param levels    administrative levels, each with who approves going above it
 */
public record RuleSet(String code, String name, List<LimitRule> rules, List<LimitRule> categoryB, List<AdministrativeLevel> levels) {
    public RuleSet {
        Require.code(code, "code");
        Require.name(name, "name");
        rules = Require.atLeastOne(rules, "rules");
        categoryB = Require.list(categoryB, "category_b");
        levels = Require.list(levels, "levels");
        Require.distinct(rules.stream().map(LimitRule::code).toList(), "rules");
    }

    /** Limits only. */
    public static RuleSet of(String code, String name, LimitRule... rules) {
        return new RuleSet(code, name, List.of(rules), List.of(), List.of());
    }
}
