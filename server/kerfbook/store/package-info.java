/** Keeps campaigns in a database so that what was acknowledged is never lost; the only package that speaks SQL. */
package kerfbook.store;
