/** The campaign document and its parts as JSON: strict reading, one way of writing, faults by field. */
package kerfbook.document;
