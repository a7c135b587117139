package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.access.Doors;
import kerfbook.account.Account;
import kerfbook.account.Role;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;

/** Signing in, accounts, and what each role finds on the pages. */
class AccountPagesTest {
    private static Chromium browser;
    private Site site;

    @BeforeAll
    static void open() {
        browser = new Chromium();
    }

    @AfterAll
    static void close() {
        browser.close();
    }

    @BeforeEach
    void start() {
        site = Site.withDemo();
    }

    @AfterEach
    void stop() {
        site.close();
    }

    private void signIn(String name, String password) {
        browser.type("sign-name", name);
        browser.type("sign-password", password);
        browser.one("form button[type=submit]").click();
    }

    /** LAW: who is not signed in sees nothing of a campaign, is told why a try failed, and then lands where they wanted to go. */
    @Test
    void somebody_signs_in_and_out() {
        Doors.account(site.entrance(), Role.PROJECT_MANAGER);
        site.nobody();
        browser.open(site.address() + "/#/c/1/people");
        assertEquals("Sign in", browser.heading());
        assertFalse(browser.one("body").getText().contains("Quelmarra"));
        signIn("project-manager", "not the password");
        browser.waitFor(now -> !now.findElements(By.id("sign-fault")).isEmpty());
        assertTrue(browser.byId("sign-fault").getText().contains("do not go together"));
        signIn("project-manager", Doors.PASSWORD);
        browser.waitFor(now -> now.getTitle().startsWith("People of"));
        assertTrue(browser.one(".bar-who").getText().contains("Project manager"));
        assertTrue(browser.one(".lead").getText().contains("You see role codes."));
        assertFalse(browser.one("main").getText().contains("Brannik"));
        browser.one(".bar-who").click();
        browser.waitForTitle("Your account");
        browser.one(".lead .button.main").click();
        browser.waitForTitle("Sign in");
        browser.requireNoTroubles("signing in and out");
    }

    /** LAW: a session that ends in the middle of a form is opened again in place, and what was typed is sent. */
    @Test
    void a_session_that_ends_does_not_lose_what_was_typed() {
        Account account = Doors.account(site.entrance(), "planner", Role.RADIATION_PROTECTION_OFFICER, Optional.empty());
        site.as(account);
        browser.open(site.address() + "/#/c/1/edit/areas/pool-edge");
        browser.type("f-name", "The edge of the pool");
        site.entrance().sessions().endAll(account.id(), "a test");
        site.entrance().changed();
        browser.one(".form-foot .button.main").click();
        browser.waitFor(now -> now.findElement(By.cssSelector("dialog[open] #sign-password")).isDisplayed());
        assertTrue(browser.one("dialog").getText().contains("What you typed is still there."));
        browser.type("sign-password", Doors.PASSWORD);
        browser.one("dialog button[type=submit]").click();
        browser.waitFor(now -> browser.route().equals("#/c/1/areas"));
        assertEquals("The edge of the pool", site.get("/api/campaigns/1/areas/pool-edge").get("name").asText());
        browser.requireNoTroubles("signing in again");
    }

    /** LAW: the administrator makes an account, its link sets a password, and the new person is let in. */
    @Test
    void an_administrator_makes_an_account() {
        site.as(Role.ADMINISTRATOR);
        browser.open(site.address() + "/");
        browser.waitForTitle("Accounts");
        browser.byId("add-account").click();
        browser.type("name", "Reader of the demo");
        browser.type("sign_in_name", "Reader 1");
        browser.choose("role", "reader");
        browser.one("#account-form button[type=submit]").click();
        browser.waitFor(now -> !now.findElements(By.id("summary")).isEmpty());
        assertTrue(browser.byId("summary").getText().contains("must be 2 to 60 letters"));
        browser.type("sign_in_name", "reader1");
        browser.one("#account-form button[type=submit]").click();
        browser.waitFor(now -> !now.findElements(By.cssSelector("#link-made .secret")).isEmpty());
        String link = browser.one("#link-made .secret").getText();
        site.nobody();
        browser.open(link);
        browser.waitForTitle("Welcome");
        browser.type("password", Doors.PASSWORD);
        browser.type("repeated", Doors.PASSWORD + "!");
        browser.one("form button[type=submit]").click();
        assertTrue(browser.one("#repeated-fault").getText().contains("not the same"));
        browser.type("password", Doors.PASSWORD);
        browser.type("repeated", Doors.PASSWORD);
        browser.one("form button[type=submit]").click();
        browser.waitForTitle("Campaigns");
        assertTrue(browser.one(".bar-who").getText().contains("Reader"));
        browser.requireNoTroubles("a new account");
    }

    /** LAW: what a role may not do is not offered; forms say why they are closed. */
    @Test
    void a_reader_is_offered_nothing_that_is_refused() {
        site.as(Role.READER);
        browser.open(site.address() + "/#/campaigns");
        assertEquals(List.of(), browser.all("main button, #import").stream().filter(each -> each.isDisplayed()).map(each -> each.getText()).toList());
        for (String page : List.of("areas", "people", "cuts", "tasks", "standing")) {
            browser.open(site.address() + "/#/c/1/" + page);
            assertEquals(List.of(), browser.all("main a[href*='/add/'], main a.button[href*='/edit/']").stream().filter(each -> each.isDisplayed())
                .map(each -> page + ": " + each.getText()).toList());
        }
        browser.open(site.address() + "/#/c/1/edit/areas/pool-edge");
        assertTrue(browser.one(".told").getText().contains("Your role looks at this"));
        assertEquals(0, browser.all(".form-foot button").size());
        assertFalse(browser.byId("f-name").isEnabled());
        browser.requireNoTroubles("a reader");
    }

    /** LAW: a member sees the own name and no other. */
    @Test
    void a_member_sees_the_own_name_only() {
        site.as(Doors.account(site.entrance(), "rigger", Role.TEAM_MEMBER, Optional.of("RI1")));
        browser.open(site.address() + "/#/c/1/people/RI1");
        assertTrue(browser.one("main").getText().contains("Brannik"));
        browser.open(site.address() + "/#/c/1/people/RI2");
        assertFalse(browser.one("main").getText().contains("Osha"));
        assertTrue(browser.one("main").getText().contains("Names are shown only to"));
        browser.requireNoTroubles("a member");
    }

    /** LAW: axe finds nothing on the new pages, in either theme, at any width. */
    @Test
    void no_page_of_accounts_shuts_anybody_out() {
        List<String> found = new ArrayList<>();
        String link = site.entrance().passwordLink(Doors.account(site.entrance(), Role.READER).id(), "a test");
        Doors.token(site.entrance(), Doors.account(site.entrance(), Role.ADMINISTRATOR));
        site.nobody();
        found.addAll(look("sign-in", "#/campaigns"));
        found.addAll(look("welcome", "#/welcome/" + link));
        site.as(Role.ADMINISTRATOR);
        found.addAll(look("account", "#/account"));
        browser.open(site.address() + "/#/accounts");
        browser.byId("add-account").click();
        found.addAll(Look.faults(browser, "accounts", Look.USUAL));
        site.as(Role.RADIATION_PROTECTION_OFFICER);
        found.addAll(look("accounts-officer", "#/accounts"));
        site.as(Role.READER);
        found.addAll(look("closed-form", "#/c/1/edit/areas/pool-edge"));
        found.addAll(look("people-masked", "#/c/1/people/RI1"));
        assertEquals(List.of(), found);
    }

    private List<String> look(String name, String page) {
        browser.open(site.address() + "/" + page);
        return Look.faults(browser, name, Look.USUAL);
    }
}
