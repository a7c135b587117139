/** Values with units, the checks that every typed-in figure passes, and sums that do not depend on order. */
package kerfbook.quantity;
