/** Kerfbook: forecasts the time and radiation dose of remote dismantling campaigns. */
package kerfbook;
