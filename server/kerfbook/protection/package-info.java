/** What law, site and radiation protection officer allow: limits, constraints, targets, and the checks of a person and a job. */
package kerfbook.protection;
