/** From a figure of a forecast to what somebody wrote down, and from there to the row of a shipped table it was copied from. */
package kerfbook.trace;
