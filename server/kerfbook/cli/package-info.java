/** The commands: serve, forecast, help. */
package kerfbook.cli;
