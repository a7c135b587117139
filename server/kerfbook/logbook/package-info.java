/** What was really done and received, entry by entry, and what it teaches. */
package kerfbook.logbook;
