package kerfbook.account;

import java.util.Optional;
import kerfbook.quantity.Words;

/** What an account is for. Each account has one; what a role may do stands with the addresses. */
public enum Role {
    RADIATION_PROTECTION_OFFICER,
    PROJECT_MANAGER,
    TEAM_MEMBER,
    READER,
    ADMINISTRATOR;

    /** As it is written in documents and answers: {@code project-manager}. */
    @Override
    public String toString() {
        return Words.of(this);
    }

    public static Optional<Role> of(String word) {
        for (Role role : values()) {
            if (role.toString().equals(word)) {
                return Optional.of(role);
            }
        }
        return Optional.empty();
    }
}
