/** The commands: serve, forecast, verify, help. */
package kerfbook.cli;
