/** When tasks can run: precedence, capacities, the working calendar and the critical path. */
package kerfbook.schedule;
