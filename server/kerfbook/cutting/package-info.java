/** Techniques for parting metal, the speed each reaches in a thickness, what it wears and what it cannot cut. */
package kerfbook.cutting;
