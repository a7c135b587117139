/** From a campaign to its forecast: tasks, hours, dates, dose rates, lines, totals, verdicts. */
package kerfbook.estimate;
