/** Ways of doing the same thing, side by side: how to divide a component, and with which technique to cut it. */
package kerfbook.choice;
