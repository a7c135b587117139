/** The door: passwords, sessions, tokens and one-time links, and how often somebody may knock. */
package kerfbook.access;
