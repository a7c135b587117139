/** Dose rates that are calculated or calibrated to surveys: which sources stand where and when, what they give at a point, and what follows for a plan. */
package kerfbook.exposure;
