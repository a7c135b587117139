/** How sure a forecast is: every uncertain input drawn many times, with the same draws for the same seed wherever it runs. */
package kerfbook.outlook;
