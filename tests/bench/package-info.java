/** How fast the calculations are; run by hand, see DEVELOPERS.md. */
package bench;
