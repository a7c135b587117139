/** Tests of the door, and keys to it for the tests of others. */
package kerfbook.access;
