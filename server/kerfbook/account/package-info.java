/** Who uses Kerfbook: roles, passwords, sessions, tokens, and what each may do and see. */
package kerfbook.account;
