/** What cutting leaves behind: chips and fines, abrasive, filters, drums, loaded packages with their transport limits, and clouded water. */
package kerfbook.waste;
