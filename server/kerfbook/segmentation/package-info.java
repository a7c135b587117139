/** From a component, a package and a hoist to cuts, pieces and packages: three plans side by side, or one that a planner sets by hand. */
package kerfbook.segmentation;
