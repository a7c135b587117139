/** The commands: serve, forecast, backup, restore, verify, help. */
package kerfbook.cli;
