package kerfbook.cli;

import java.io.PrintStream;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import kerfbook.access.Entrance;
import kerfbook.access.Secret;
import kerfbook.account.Account;
import kerfbook.account.Account.Person;
import kerfbook.account.Role;

/** Accounts to look at the demonstration with: one for each role and some of its crew, with passwords that are printed once. */
final class DemoAccounts {
    private static final String WHO = "this computer";
    private static final Duration TOKEN_LASTS = Duration.ofDays(30);
    private static final List<Person> PEOPLE = List.of(
        new Person("rpo", "Protection officer of the demo", Role.RADIATION_PROTECTION_OFFICER, Optional.empty(), false),
        new Person("manager", "Project manager of the demo", Role.PROJECT_MANAGER, Optional.empty(), false),
        new Person("op1", "Team member OP1 of the demo", Role.TEAM_MEMBER, Optional.of("OP1"), false),
        new Person("ri1", "Team member RI1 of the demo", Role.TEAM_MEMBER, Optional.of("RI1"), false),
        new Person("reader", "Reader of the demo", Role.READER, Optional.empty(), false),
        new Person("admin", "Administrator of the demo", Role.ADMINISTRATOR, Optional.empty(), false));

    private DemoAccounts() { }

    /** Makes them if there is no account yet, and tells how to sign in. */
    static void add(Entrance entrance, PrintStream out) {
        if (!entrance.accounts().none()) {
            return;
        }
        TextTable table = new TextTable("<Sign in as", "<Password", "<Role");
        String token = "";
        for (Person person : PEOPLE) {
            String password = Secret.password();
            Account account = entrance.add(person, password, WHO);
            table.row(person.signInName(), password, person.role().toString().replace('-', ' '));
            if (person.role() == Role.RADIATION_PROTECTION_OFFICER) {
                token = entrance.addToken(account, "Printed at the first start", account.person().role(), entrance.now().plus(TOKEN_LASTS), WHO);
            }
        }
        out.println();
        out.println("Accounts of this demo, shown only now and kept only in this data folder:");
        out.print(table);
        out.println("Token for curl, of rpo, for " + TOKEN_LASTS.toDays() + " days:");
        out.println("Authorization: Bearer " + token);
    }
}
