/** The plan as planners write it: components and cuts, techniques and routines, areas and surveys, people and what bounds them. */
package kerfbook.campaign;
