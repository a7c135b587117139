/** Reads the parameter tables under {@code db/tables} into domain objects, each row with its source. */
package kerfbook.tables;
