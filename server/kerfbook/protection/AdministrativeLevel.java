package kerfbook.protection;

import kerfbook.quantity.Require;

/**
 * A level below the limit that an employer sets itself; planning above it needs somebody's approval.
 *
 * @param rule     the level and its period
 * @param approver who may let a person go above it
 */
public record AdministrativeLevel(LimitRule rule, String approver) {
    public AdministrativeLevel {
        Require.present(rule, "rule");
        Require.name(approver, "approver");
    }
}
