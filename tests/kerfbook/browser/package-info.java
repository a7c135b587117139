/** What people see: the real pages on a real server with the demo's data, in Debian's Chromium. */
package kerfbook.browser;
